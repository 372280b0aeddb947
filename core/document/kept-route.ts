import { findEnd } from './ends.ts';
import { measureRoute } from './route.ts';
import type { DrawnRun, RouteMeasure, Things } from './route.ts';
import type { Thing } from './schema-things.ts';

interface Kept {
  readonly ends: readonly (Thing | null)[];
  readonly measure: RouteMeasure;
}
const measured = new WeakMap<DrawnRun, Kept>();

/**
 * The measure of a drawn run, or what was measured of it before. Documents are never changed in place and share what an
 * edit left alone; a run is measured from itself and the things at its ends.
 */
export function keptRoute(run: DrawnRun, things: Things): RouteMeasure {
  const ends = (['from', 'to'] as const).map((side) => {
    const end = findEnd(things, run[side], side);
    return typeof end === 'string' ? null : end.thing;
  });
  const old = measured.get(run);
  if (old !== undefined && old.ends.every((thing, i) => thing === ends[i])) return old.measure;
  const measure = measureRoute(run, things);
  measured.set(run, { ends, measure });
  return measure;
}
