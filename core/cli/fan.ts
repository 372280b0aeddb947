import { benchFan } from '../fan-bench/bench.ts';
import { compareFans } from '../fan-bench/compare.ts';
import { settingNames } from '../network/apply-setting.ts';
import { openShop } from '../network/solve.ts';
import { fanText } from '../summary/fan-text.ts';
import { testSheet } from '../summary/test-sheet.ts';
import { fail, NO_SOLUTION, SOLVED, USAGE } from './outcome.ts';
import type { Command } from './outcome.ts';

/** Fans from their tests, side by side, or a sheet to test one by. */
export const fanCommand: Command = (document, { fan, json, sheet, file }) => {
  const ids = document.fans.map(({ id }) => id);
  if (ids.length === 0)
    return fail(NO_SOLUTION, `${file}: the document has no fans to test\n  remedy: add one to "fans"`);
  if (fan !== undefined && !ids.includes(fan))
    return fail(USAGE, `fan: no fan of the list is called "${fan}"; there are ${ids.join(', ')}`);
  const { units } = document;
  if (sheet) {
    if (fan === undefined) return fail(USAGE, 'fan: name the fan of the sheet with --fan ID');
    const paper = units === 'us' ? 'letter' : 'a4';
    return { out: testSheet(document, fan, { units, paper }), err: '', code: SOLVED };
  }
  const results = (fan === undefined ? ids : [fan]).map((id) => benchFan(document, id));
  const solvable = document.things.length > 0 && openShop(document).ok;
  const comparison = compareFans(document, settingNames(document)[0]!, solvable);
  const out = json
    ? `${JSON.stringify({ document: document.name, fans: results, comparison }, null, 2)}\n`
    : fanText(document.name, results, comparison, units);
  const without = results.filter(({ curve }) => curve === null);
  if (without.length === 0) return { out, err: '', code: SOLVED };
  const err = without.map(({ id, findings }) => {
    const why = findings.find(({ code }) => code === 'fan-no-curve');
    return `${file}: fan "${id}": ${why?.message ?? 'no curve'}\n  remedy: ${why?.remedy ?? 'correct its readings'}`;
  });
  return fail(NO_SOLUTION, err.join('\n'), out);
};
