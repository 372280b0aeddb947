import { CYCLONE_PROPORTIONS } from '../../core/catalogue/cyclones.ts';
import type { CycloneProportions } from '../../core/catalogue/cyclones.ts';
import { DUST_CLASSES } from '../../core/catalogue/dusts.ts';
import { FILTER_MEDIA } from '../../core/catalogue/filter-media.ts';
import { thingsOf } from '../../core/document/commands/items.ts';
import type { Item } from '../../core/document/commands/items.ts';
import { isDrawn, measureRoute } from '../../core/document/route.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { SettingResult } from '../../core/network/solution.ts';

/** What stands in a field where nothing is typed, and in a word where it comes from. */
export interface Standing {
  readonly si: number;
  readonly says: string;
}

type Path = readonly (string | number)[];

function ofPiece(
  document: ShopDocument,
  item: Extract<Item, { kind: 'piece' }>,
  key: string,
): Standing | null {
  const { piece, run } = item;
  if (piece.derived && isDrawn(run)) {
    const measure = measureRoute(run, thingsOf(document));
    const leg = piece.corner === undefined ? measure.legs[piece.leg ?? 0] : undefined;
    const bend = measure.bends.find(({ corner }) => corner === piece.corner);
    if (key === 'length' && leg) return { si: leg.drawn_m, says: 'drawn' };
    if (key === 'diameter' && leg && leg.startDiameter_m !== null) {
      return { si: leg.startDiameter_m, says: 'as before' };
    }
    if (key === 'angle' && bend) return { si: bend.drawn_rad, says: 'drawn' };
    const point = piece.corner === undefined ? undefined : measure.points[piece.corner + 1];
    if (key === 'z' && point) return { si: point.z, says: 'as before' };
    if (key === 'radiusRatio' && bend) return { si: run.route.bend.radiusRatio.si, says: 'run' };
  }
  return null;
}

function ofResult(item: Item, key: string, result: SettingResult | null): Standing | null {
  const id = item.kind === 'thing' ? item.thing.id : item.run.id;
  if (item.kind === 'piece' && key === 'diameter') {
    const piece = result?.runs.find((run) => run.id === id)?.pieces.find((p) => p.id === item.piece.key);
    return piece?.diameter_m ? { si: piece.diameter_m, says: 'as before' } : null;
  }
  if (item.kind !== 'run') return null;
  const run = result?.runs.find((r) => r.id === id);
  if (key === 'requiredVelocity' && run?.requiredVelocity_ms) {
    return { si: run.requiredVelocity_ms, says: 'from the dust' };
  }
  return null;
}

function ofThing(
  document: ShopDocument,
  item: Extract<Item, { kind: 'thing' }>,
  path: Path,
): Standing | null {
  const { thing } = item;
  const key = path.join('.');
  if (thing.kind === 'port' && key === 'needs.velocity') {
    const own = document.dusts.find(({ id }) => id === thing.dust)?.requiredVelocity.si;
    const si = own ?? DUST_CLASSES[thing.dust as keyof typeof DUST_CLASSES]?.requiredVelocity_ms;
    return si === undefined ? null : { si, says: 'from the dust' };
  }
  if (thing.kind === 'fan' && key === 'speed' && thing.curve.speed) {
    return { si: thing.curve.speed.si, says: 'of the curve' };
  }
  if (thing.kind === 'cyclone' && path[0] === 'dimensions' && typeof path[1] === 'string') {
    const row: CycloneProportions | undefined =
      CYCLONE_PROPORTIONS[thing.proportions as keyof typeof CYCLONE_PROPORTIONS];
    const ratio = row?.[path[1] as keyof CycloneProportions];
    return typeof ratio === 'number' ? { si: ratio * thing.bodyDiameter.si, says: 'standard' } : null;
  }
  if (thing.kind === 'filter' && path[0] === 'layers' && typeof path[1] === 'number') {
    const medium = FILTER_MEDIA[thing.layers[path[1]]?.medium as keyof typeof FILTER_MEDIA];
    if (medium === undefined) return null;
    if (path[2] === 'drag') return { si: medium.drag_Pasm, says: 'of the medium' };
    if (path[2] === 'cakeResistance') return { si: medium.cakeResistance_pers, says: 'of the medium' };
    if (path[2] === 'load') return { si: 0, says: 'clean' };
  }
  return null;
}

/** What stands in a field of an item where nothing is typed; null where nothing does. */
export function standingOf(
  document: ShopDocument,
  item: Item,
  path: Path,
  result: SettingResult | null,
): Standing | null {
  const key = path.join('.');
  if (item.kind === 'piece') {
    // fields of a drawn piece start at its run
    const last = String(path.at(-1));
    return ofPiece(document, item, last) ?? ofResult(item, last, result);
  }
  return item.kind === 'thing' ? ofThing(document, item, path) : ofResult(item, key, result);
}
