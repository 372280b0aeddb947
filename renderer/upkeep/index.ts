/** The screen and its fields, loaded together when the screen is first shown. */
export { default as Upkeep } from './Upkeep.svelte';
export { default as UpkeepSide } from './UpkeepSide.svelte';
