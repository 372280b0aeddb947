import type { ShopDocument } from '../document/schema.ts';
import { compareShops } from '../summary/compare.ts';
import { compareText } from '../summary/compare-text.ts';
import { badDocument, done } from './outcome.ts';
import type { Options, Outcome } from './outcome.ts';

/** Two documents side by side; both in the units of the first. */
export function compareCommand(
  before: ShopDocument,
  after: ShopDocument,
  { json, file }: Options,
  otherFile: string,
): Outcome {
  const compared = compareShops(before, { ...after, units: before.units }, before.units);
  if (!compared.ok) return badDocument(compared.which === 'before' ? file : otherFile, compared.problems);
  const { comparison } = compared;
  return done(json ? `${JSON.stringify(comparison, null, 2)}\n` : compareText(comparison, before.units));
}
