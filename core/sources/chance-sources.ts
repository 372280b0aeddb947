import { DEFAULT_RANGES, givenRange } from '../chance/ranges.ts';
import type { RangeId } from '../chance/ranges.ts';
import { MIXING_KINDS } from '../document/ends.ts';
import type { SourceContext } from './context.ts';
import { GIVEN } from './source-list.ts';

/** How far each figure may be off, on which the chances rest: at the pieces and devices that it moves. */
export function chanceSources({ shop, list }: SourceContext): void {
  const { document } = shop;
  const places = new Map<RangeId, string[]>();
  const at = (id: RangeId, place: string) => {
    const known = places.get(id);
    if (known) known.push(place);
    else places.set(id, [place]);
  };
  for (const { pieces, from, to } of shop.runs) {
    for (const { id, kind, share } of pieces) {
      // air that leaves an open end loses just what it carries: nothing there is off
      if (kind === 'exhaust' && to.thing.kind === 'exhaust' && to.thing.outlet.kind === 'open') continue;
      if (kind === 'leak') at('leaks', id);
      else if (kind === 'hood') at('hoods', id);
      else if (kind === 'measured') at('reading', id);
      else if (share === 'hose') at('hose-friction', id);
      else if (share === 'duct') at('duct-friction', id);
      else at('fittings', id);
    }
    for (const { thing, end } of [from, to]) {
      if (MIXING_KINDS.has(thing.kind)) at('fittings', `${thing.id}.${end}`);
    }
  }
  for (const { thing, built } of shop.devices) {
    if (built.kind === 'filter') {
      at('filter-clean', thing.id);
      at('filter-cake', thing.id);
    } else if (built.model === 'measured') at('separator-reading', thing.id);
    else at(built.kind === 'bin' ? 'bin' : 'cyclone-models', thing.id);
  }
  for (const { thing, design } of shop.fans) {
    at(design === null || design.readings.length === 0 ? 'fan' : 'fan-tests', thing.id);
  }
  for (const [id, where] of places) {
    const { label, plusMinus, source, basis } = DEFAULT_RANGES[id];
    const given = givenRange(document, id);
    const what = `${label}: what it may be off by, nineteen times in twenty`;
    const print = (share: number) => `± ${list.print({ si: share, dimension: 'fraction' })}`;
    if (given !== null) {
      list.add({ kind: 'reading', what, value: print(given), ...GIVEN }, where);
    } else {
      const value = plusMinus === null ? {} : { value: print(plusMinus) };
      list.add({ kind: 'default', what, ...value, source, basis }, where);
    }
  }
}
