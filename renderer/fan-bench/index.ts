/** The screen and its panels, loaded together when the screen is first shown. */
export { default as BenchSide } from './BenchSide.svelte';
export { default as FanBench } from './FanBench.svelte';
