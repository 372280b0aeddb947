import type { ShellResult } from '../../core/document/shell.ts';
import type { SheetDesk } from '../state/sheet-desk.svelte.ts';

/** Says that something was written or printed, or why not; what was cancelled needs no word. */
export function sayDone(
  desk: SheetDesk,
  done: string,
  result: ShellResult<{ readonly name?: string }>,
): void {
  if (result.ok) desk.tell(result.name === undefined ? `${done}.` : `${done}: ${result.name}.`);
  else if (result.reason !== 'cancelled') desk.tell(`${result.message}; ${result.remedy}.`, true);
}
