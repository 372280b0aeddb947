import type { FanDesign } from '../document/schema-fans.ts';
import type { ThingOf } from '../document/schema-things.ts';
import { EXTRAPOLATION_MARGIN } from '../fan/fan-curve.ts';
import { HUMP_SHARE } from '../fan/curve-shape.ts';
import type { CompiledFan } from '../network/compile.ts';
import { designSources } from './bench-sources.ts';
import type { SourceContext } from './context.ts';
import { GIVEN } from './source-list.ts';

/** Fans of the shop and of the list of fans. */
export function fanSources(context: SourceContext): void {
  const { shop } = context;
  for (const fan of shop.fans) inShop(context, fan);
  for (const design of shop.document.fans) designSources(context, design, placesOf(shop.fans, design));
}

/** A fan of the list, and the fans of the shop that stand for it. */
const placesOf = (fans: readonly CompiledFan[], design: FanDesign): readonly string[] => [
  design.id,
  ...fans.flatMap((fan) => (fan.design?.id === design.id ? [fan.thing.id] : [])),
];

function inShop({ list }: SourceContext, { thing, design }: CompiledFan): void {
  const where = [thing.id];
  list.use(where, 'fanPoints', 'interpolation', 'fanLaws', 'airPower', 'stability', 'hump', 'beyondCurve');
  list.given(thing.speed, 'speed that a fan is held at', 'speed', where);
  list.add(
    {
      kind: 'default',
      what: 'how far beyond its points a fan curve is used, over their span',
      value: { si: EXTRAPOLATION_MARGIN, dimension: 'fraction' },
      source: 'no source; a habit of the trade',
      basis: 'common-practice',
    },
    where,
  );
  list.add(
    {
      kind: 'default',
      what: 'rise that makes a hump, over the largest pressure of a fan',
      value: { si: HUMP_SHARE, dimension: 'fraction' },
      source: 'no source; less is the reading of a gauge',
      basis: 'common-practice',
    },
    where,
  );
  if (design === null) ownPoints(list, thing);
}

function ownPoints(list: SourceContext['list'], thing: ThingOf<'fan'>): void {
  const where = [thing.id];
  const { points, source, density, speed } = thing.curve;
  const what = 'curve of a fan, as points in the document';
  const field = 'curve.source';
  list.add(
    {
      kind: 'reading',
      what,
      value: `${points.length} points`,
      field,
      ...GIVEN,
      source: source ?? GIVEN.source,
    },
    where,
  );
  list.given(density, 'density that a curve holds at', 'curve.density', where);
  list.given(speed, 'speed that a curve holds at', 'curve.speed', where);
  if (points.some(({ power }) => power)) list.use(where, 'fanPower');
  if (points.some(({ current }) => current)) list.use(where, 'fanCurrent');
}
