import { settingNames } from '../network/apply-setting.ts';
import { openShop, solve } from '../network/solve.ts';
import { ledgerText } from '../summary/ledger-text.ts';
import { badDocument, fail, NO_SOLUTION, SOLVED, unknownSetting } from './outcome.ts';
import type { Command } from './outcome.ts';

/** Flows, losses and whether chips will move. */
export const solveCommand: Command = (document, { setting, json, file }) => {
  const unknown = unknownSetting('solve', document, setting);
  if (unknown !== null) return unknown;
  const solved = solve(document, setting ?? null);
  if (!solved.ok) return badDocument(file, solved.problems);
  const { solution } = solved;
  const out = json ? `${JSON.stringify(solution, null, 2)}\n` : ledgerText(solution, document.units);
  const unsolved = solution.settings.filter((s) => !s.converged);
  if (unsolved.length === 0) return { out, err: '', code: SOLVED };
  const err = unsolved
    .map(
      (s) =>
        `${file}: no solution in setting "${s.name}": ${s.reasonText ?? ''}\n  remedy: ${s.findings[0]?.remedy ?? ''}`,
    )
    .join('\n');
  return fail(NO_SOLUTION, err, out);
};

/** Whether a document is in order. */
export const checkCommand: Command = (document, { file }) => {
  const opened = openShop(document);
  if (!opened.ok) return badDocument(file, opened.problems);
  const names = settingNames(document).map((name) => `"${name}"`);
  const out = `"${document.name}" is in order: ${document.things.length} things, ${document.runs.length} runs, settings ${names.join(', ')}\n`;
  return { out, err: '', code: SOLVED };
};
