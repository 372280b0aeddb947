/** The screen and its fields, loaded together when the screen is first shown. */
export { default as Sheets } from './Sheets.svelte';
export { default as SheetsSide } from './SheetsSide.svelte';
