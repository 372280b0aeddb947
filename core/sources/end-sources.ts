import { ENTRIES, SLOT_HOOD } from '../catalogue/entries.ts';
import type { Hood, ThingOf } from '../document/schema-things.ts';
import type { CompiledRun } from '../network/compile.ts';
import {
  BLOWN_OUT,
  BRUSH_SHOE_BRISTLE,
  BRUSH_SHOE_THROAT,
  DRAWN_IN,
  HOLE_DISCHARGE,
} from '../network/compile-ends.ts';
import type { Basis } from '../quantities/sourced.ts';
import type { SourceContext } from './context.ts';
import { builtPieces, sourced } from './piece-sources.ts';
import { READ } from './source-list.ts';
import type { SourceList } from './source-list.ts';

type Where = readonly [string];
const number = (si: number) => ({ si, dimension: 'coefficient' }) as const;

const HOODS: {
  readonly [K in Hood['kind']]: (
    hood: Extract<Hood, { kind: K }>,
    at: { readonly list: SourceList; readonly where: Where; readonly loss: Loss },
  ) => void;
} = {
  entry: (hood, { list, where, loss }) => {
    const label = Object.hasOwn(ENTRIES, hood.entry)
      ? ENTRIES[hood.entry as keyof typeof ENTRIES].label
      : hood.entry;
    list.add({ kind: 'coefficient', what: `entry, ${label}`, field: 'hood.entry', ...loss }, where);
  },
  tapered: (hood, { list, where, loss }) => {
    list.use(where, 'taperedHood');
    const angle = list.print({ si: hood.angle.si, dimension: 'angle' });
    list.add({ kind: 'coefficient', what: `tapered hood, ${hood.shape}, ${angle} in all`, ...loss }, where);
  },
  slot: (_hood, { list, where, loss }) => {
    list.use(where, 'slotHood');
    const row = sourced(SLOT_HOOD);
    list.add({ kind: 'coefficient', what: 'sharp slot', value: number(SLOT_HOOD.slot), ...row }, where);
    const turn = 'turn from a plenum into the duct';
    list.add({ kind: 'coefficient', what: turn, value: number(SLOT_HOOD.duct), ...row }, where);
    list.add({ kind: 'coefficient', what: 'slot hood, on the duct', ...loss }, where);
  },
  'brush-shoe': (hood, { list, where, loss }) => {
    list.use(where, 'brushShoe');
    list.add({ kind: 'coefficient', what: 'shoe with a brush skirt, on the duct', ...loss }, where);
    const figures = { throat: BRUSH_SHOE_THROAT, bristle: BRUSH_SHOE_BRISTLE } as const;
    const words = { throat: 'take-off of a shoe', bristle: 'gap under the bristles' } as const;
    for (const key of ['throat', 'bristle'] as const) {
      const { value, source, basis } = figures[key];
      const row = { kind: 'default', si: value, dimension: 'coefficient', source, basis } as const;
      list.either(hood[key], words[key], `hood.${key}`, row, where);
    }
  },
  given: (hood, { list, where }) =>
    list.given(hood.coefficient, 'loss coefficient of a hood', 'hood.coefficient', where),
  measured: (hood, { list, where }) => {
    const loss = list.print({ si: hood.loss.si, dimension: 'pressure' });
    const flow = list.print({ si: hood.flow.si, dimension: 'flow' });
    list.use(where, 'readLoss');
    const value = `${loss} at ${flow}`;
    list.add({ kind: 'reading', what: 'loss of a hood', value, field: 'hood.loss', ...READ }, where);
  },
};

interface Loss {
  readonly value: { readonly si: number; readonly dimension: 'coefficient' };
  readonly source: string;
  readonly basis: Basis;
}

/** Hood, hole or outlet at the ends of a run. */
export function endSources(context: SourceContext, compiled: CompiledRun): void {
  const { list, flows } = context;
  const pieces = new Map(builtPieces(compiled).map((built) => [built.record.id, built]));
  const lossOf = (id: string): Loss => {
    const built = pieces.get(id)!;
    const { source, basis } = built.record;
    return { value: number(built.k ?? NaN), source: source ?? '', basis: (basis ?? 'assumed') as Basis };
  };
  const backwards = (flows.get(compiled.run.id) ?? []).some((flow) => flow < 0);
  const from = compiled.from.thing;
  const to = compiled.to.thing;
  if (from.kind === 'port') {
    const where: Where = [from.id];
    (HOODS[from.hood.kind] as (hood: Hood, at: object) => void)(from.hood, {
      list,
      where,
      loss: from.hood.kind === 'measured' ? null : lossOf(from.id),
    });
    if (backwards) {
      const what = 'what blows out of a port, on its velocity pressure';
      list.add({ kind: 'default', what, ...BLOWN_OUT, value: number(BLOWN_OUT.value) }, where);
    }
  }
  if (from.kind === 'leak') {
    list.use([from.id], 'leak');
    const { value, source, basis } = HOLE_DISCHARGE;
    list.either(
      from.dischargeCoefficient,
      'discharge coefficient of a hole',
      'dischargeCoefficient',
      { kind: 'default', si: value, dimension: 'coefficient', source, basis },
      [from.id],
    );
  }
  if (to.kind === 'exhaust') exhaust(context, to, lossOf(to.id), backwards);
}

function exhaust({ list }: SourceContext, thing: ThingOf<'exhaust'>, loss: Loss, backwards: boolean): void {
  const where: Where = [thing.id];
  const { outlet } = thing;
  if (outlet.kind === 'given') {
    list.given(outlet.coefficient, 'loss coefficient of an outlet', 'outlet.coefficient', where);
  } else {
    list.use(where, 'stackExit');
    if (outlet.kind === 'cap') list.use(where, 'weatherCap');
    const what =
      outlet.kind === 'cap'
        ? `outlet under a cap, gap over diameter ${list.print(number(outlet.gapRatio.si))}`
        : 'free outlet';
    list.add({ kind: 'coefficient', what, ...loss }, where);
  }
  if (backwards) {
    const what = 'outlet that air comes in by';
    list.add({ kind: 'default', what, ...DRAWN_IN, value: number(DRAWN_IN.value) }, where);
  }
}

/** Pressures that the ends of the net are held at, and junctions. */
export function nodeSources({ shop, list }: SourceContext): void {
  for (const thing of shop.things.values()) {
    if (thing.kind === 'exhaust' && thing.to === 'outside') {
      list.either(
        thing.pressure,
        'pressure outside, over the room',
        'pressure',
        {
          kind: 'default',
          si: 0,
          dimension: 'pressure',
          source: 'no source; still air outside, and a room that is open to it',
          basis: 'assumed',
        },
        [thing.id],
      );
    } else if (thing.kind === 'exhaust')
      list.given(thing.pressure, 'pressure at an outlet', 'pressure', [thing.id]);
    if (thing.kind === 'pressure')
      list.given(thing.pressure, 'pressure that is held', 'pressure', [thing.id]);
    if (thing.kind === 'joint') {
      list.add(
        {
          kind: 'default',
          what: 'loss where runs are joined end to end',
          value: number(0),
          source: 'no source; a smooth joint of one size',
          basis: 'assumed',
        },
        [thing.id],
      );
    }
  }
  for (const { run, from, to } of shop.runs) {
    for (const { thing, end } of [from, to]) {
      if (thing.kind !== 'wye' && thing.kind !== 'tee' && thing.kind !== 'breeches') continue;
      const where = [thing.id, `${thing.id}.${end}`, run.id];
      list.use(where, 'junction');
      if (thing.kind !== 'breeches') list.use(where, 'branchFactor', 'branchBlend');
    }
  }
}
