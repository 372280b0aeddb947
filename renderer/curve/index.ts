export { default as Curve } from './Curve.svelte';
