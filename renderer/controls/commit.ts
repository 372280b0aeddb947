import type { Command } from '../../core/document/commands/index.ts';
import type { Workbook } from '../state/workbook.svelte.ts';

/** Remedies that only say that something is wrong. */
const EMPTY_REMEDIES: ReadonlySet<string> = new Set([
  'correct the entry',
  'correct the value',
  'correct the named value',
]);

/** What a refusal says at its field, which needs no path to be found. */
export function refusalText({
  message,
  remedy,
}: {
  readonly message: string;
  readonly remedy: string;
}): string {
  const plain = message.replace(/^(?:[A-Za-z]\w*(?:\[\d+\](?:\([^)]*\))?)*\.?)+: /, '');
  return EMPTY_REMEDIES.has(remedy) ? plain : `${plain}; ${remedy}`;
}

/** Does one edit; answers with what is wrong, or null. */
export function commit(workbook: Workbook, command: Command): string | null {
  const done = workbook.run(command);
  return done.ok ? null : refusalText(done);
}

/** Does several edits as one step, or none of them. */
export function commitAll(workbook: Workbook, label: string, commands: readonly Command[]): string | null {
  const [only] = commands;
  if (only !== undefined && commands.length === 1) return commit(workbook, only);
  workbook.begin(label);
  for (const command of commands) {
    const wrong = commit(workbook, command);
    if (wrong === null) continue;
    workbook.cancel();
    return wrong;
  }
  workbook.end();
  return null;
}
