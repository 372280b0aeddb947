import { MOST } from '../schema.ts';
import type { ShopDocument } from '../schema.ts';
import { MOST_PIECES } from '../schema-pieces.ts';
import { MOST_CORNERS } from '../schema-route.ts';
import { Refused } from './command.ts';

const tooMany = (where: string, count: number, most: number): Refused =>
  new Refused(
    `${where} would have ${count} entries, at most ${most} can be saved`,
    'divide the shop, or remove some',
  );

/** Throws where an edit made a list longer than a file may hold: such a shop could be saved, and never opened again. */
export function refuseTooMany(before: ShopDocument, after: ShopDocument): void {
  for (const [list, most] of Object.entries(MOST) as [keyof typeof MOST, number][]) {
    const { length } = after[list];
    if (length > most && length > before[list].length) throw tooMany(list, length, most);
  }
  if (after.runs === before.runs) return;
  for (const { id, pieces, route } of after.runs) {
    if (pieces.length > MOST_PIECES) throw tooMany(`pieces of ${id}`, pieces.length, MOST_PIECES);
    const corners = route?.corners.length ?? 0;
    if (corners > MOST_CORNERS) throw tooMany(`corners of ${id}`, corners, MOST_CORNERS);
  }
}
