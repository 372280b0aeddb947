import { settingNames } from '../network/apply-setting.ts';
import { openShop, solveSetting } from '../network/solve.ts';
import { countByBasis, rowsAbout } from '../sources/about.ts';
import { WHOLE_SHOP } from '../sources/source-row.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import { sourcesText } from '../summary/sources-text.ts';
import { badDocument, done, fail, USAGE } from './outcome.ts';
import type { Command } from './outcome.ts';

/** What results rest on: of the whole document, or of one thing, run or piece. */
export const sourcesCommand: Command = (document, { id, json, file }) => {
  const opened = openShop(document);
  if (!opened.ok) return badDocument(file, opened.problems);
  const { bench } = opened;
  const settings = settingNames(document).map((name) => solveSetting(bench, name));
  const all = sourcesOf({ shop: bench.shop, settings, units: document.units, hours: true });
  const about = id === undefined ? null : rowsAbout(document, all, id);
  if (id !== undefined && about === null) {
    const remedy = 'name a thing, a run, a piece or a fan of the list; solve --json names them all';
    return fail(USAGE, `sources: nothing is named "${id}"\n  remedy: ${remedy}`);
  }
  const rows = about === null ? all : [...about.own, ...about.shop];
  if (json) {
    const result = { document: document.name, id: id ?? null, counts: countByBasis(rows), rows };
    return done(`${JSON.stringify(result, null, 2)}\n`);
  }
  const name = id === undefined || id === WHOLE_SHOP ? document.name : id;
  return done(sourcesText(rows, name));
};
