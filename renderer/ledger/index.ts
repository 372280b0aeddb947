export { default as Ledger } from './Ledger.svelte';
