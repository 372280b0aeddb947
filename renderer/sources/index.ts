export { default as SourceRows } from './SourceRows.svelte';
