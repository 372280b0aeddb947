import { partsCsv } from '../summary/parts/parts-csv.ts';
import { partsList } from '../summary/parts/parts-list.ts';
import { partsText } from '../summary/parts-text.ts';
import { done, fail, USAGE } from './outcome.ts';
import type { Command } from './outcome.ts';

/** What to buy and how to cut it. */
export const partsCommand: Command = (document, { csv, json }) => {
  if (csv && json) return fail(USAGE, 'parts: --csv or --json, not both');
  const list = partsList(document);
  if (csv) return done(partsCsv(list));
  return done(json ? `${JSON.stringify(list, null, 2)}\n` : partsText(list, document.units));
};
