import { ENTRIES, TAPERED_HOODS } from '../catalogue/entries.ts';
import { WEATHER_CAP } from '../catalogue/gates.ts';
import type { Hood, ThingOf } from '../document/schema-things.ts';
import {
  brushShoeCoefficient,
  entryCoefficient,
  slotHoodCoefficient,
  taperedHoodCoefficient,
  TAPERED_HOOD_RANGE,
} from '../fittings/entry.ts';
import { BRUSH_SHOE_RANGE } from '../fittings/brush-shoe.ts';
import {
  orificeLeakCoefficient,
  stackExit,
  weatherCapCoefficient,
  WEATHER_CAP_RANGE,
} from '../fittings/exit.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { findOutside } from '../quantities/range.ts';
import type { Outside } from '../quantities/range.ts';
import type { Basis, Sourced } from '../quantities/sourced.ts';
import { measuredSegment } from './measured-segment.ts';
import { localSegment } from './net.ts';
import type { Segment } from './net.ts';
import { roundArea } from './round-area.ts';
import type { BuiltPiece } from './piece-record.ts';

/** Kinetic loss where air blows out of a duct against the drawn direction [-]. */
export const BLOWN_OUT = {
  value: 1,
  source: 'momentum: what blows out of an open end loses its velocity pressure',
  basis: 'from-memory' as Basis,
};
/** Discharge coefficient of a sharp hole in a thin wall, where the document gives none. */
export const HOLE_DISCHARGE = {
  value: 0.6,
  source: 'ISO 5167-2, limit of a small hole in a thin plate, 0.596, as quoted in an open library',
  basis: 'published' as Basis,
};
/** Entry loss where air comes in backwards through an exhaust: a plain duct end [-]. */
export const DRAWN_IN = {
  value: ENTRIES.plain.k,
  source: ENTRIES.plain.source,
  basis: ENTRIES.plain.basis as Basis,
};

/** What the coefficient of each outlet rests on. */
const OUTLET_SOURCES: Readonly<Record<ThingOf<'exhaust'>['outlet']['kind'], Sourced>> = {
  given: { source: 'given in the document', basis: 'measured-by-user' },
  cap: { source: WEATHER_CAP.source, basis: WEATHER_CAP.basis },
  open: {
    source: 'Rennels and Hudson, Pipe Flow, 2012, exits, as quoted in an open library',
    basis: 'published',
  },
};

interface HoodLoss {
  readonly k: number;
  readonly source: string;
  readonly basis: Basis;
  readonly outside?: readonly Outside[];
}

const HOODS: {
  readonly [K in Hood['kind']]: (hood: Extract<Hood, { kind: K }>, area_m2: number) => HoodLoss | null;
} = {
  entry: (hood) => {
    if (!Object.hasOwn(ENTRIES, hood.entry)) {
      throw new ImpossibleInput('entry', hood.entry, `one of ${Object.keys(ENTRIES).join(', ')}`);
    }
    const row = ENTRIES[hood.entry as keyof typeof ENTRIES];
    return {
      k: entryCoefficient(hood.entry as keyof typeof ENTRIES).k,
      source: row.source,
      basis: row.basis,
    };
  },
  tapered: (hood) => ({
    k: taperedHoodCoefficient(hood.angle.si, hood.shape).k,
    source: TAPERED_HOODS.source,
    basis: TAPERED_HOODS.basis,
    outside: findOutside(TAPERED_HOOD_RANGE, { 'included angle': hood.angle.si }),
  }),
  slot: (hood, area_m2) => ({
    k: slotHoodCoefficient({ slotArea_m2: hood.slotArea.si, ductArea_m2: area_m2 }).k,
    source: 'ACGIH Industrial Ventilation, compound slot hood',
    basis: 'from-memory',
  }),
  'brush-shoe': (hood, area_m2) => ({
    k: brushShoeCoefficient({
      ductArea_m2: area_m2,
      gapArea_m2: hood.gapArea.si,
      throatCoefficient: hood.throat?.si ?? BRUSH_SHOE_THROAT.value,
      bristleCoefficient: hood.bristle?.si ?? BRUSH_SHOE_BRISTLE.value,
    }).k,
    source: 'enclosure with a gap, as a sharp-edged slot and a take-off; no published value for a brush shoe',
    basis: 'assumed',
    outside: findOutside(BRUSH_SHOE_RANGE, {
      'throat coefficient': hood.throat?.si ?? BRUSH_SHOE_THROAT.value,
      'bristle coefficient': hood.bristle?.si ?? BRUSH_SHOE_BRISTLE.value,
    }),
  }),
  given: (hood) => ({ k: hood.coefficient.si, source: 'given in the document', basis: 'measured-by-user' }),
  measured: () => null,
};

/** Take-off of a spindle shoe, where the document gives none [-]. */
export const BRUSH_SHOE_THROAT = {
  value: 0.5,
  source: 'no source; as a sharp edge flush with a wall',
  basis: 'assumed' as Basis,
};
/** Its bristle gap, where the document gives none [-]. */
export const BRUSH_SHOE_BRISTLE = {
  value: 1.8,
  source: 'no source; about the sharp-edged slot of the handbooks, 1.78',
  basis: 'assumed' as Basis,
};

const END = { outside: [], relation: '', length_m: null, carries: false } as const;

/** Refuses a hood that cannot be, whatever the duct behind it; names its field. */
export function checkHood(port: ThingOf<'port'>): true {
  buildHood(port, CHECK_DIAMETER_m);
  return true;
}

/** Any duct: what is wrong with a hood does not hang on it [m]. */
const CHECK_DIAMETER_m = 0.1;

/** The hood at the start of a run, on the velocity of the run's first duct. */
export function buildHood(port: ThingOf<'port'>, diameter_m: number): BuiltPiece {
  const area_m2 = roundArea(diameter_m);
  const { hood } = port;
  const pick = HOODS[hood.kind] as (hood: Hood, area_m2: number) => HoodLoss | null;
  const loss = pick(hood, area_m2);
  let segment: Segment;
  if (loss !== null) segment = localSegment(area_m2, loss.k, BLOWN_OUT.value, 'downstream');
  else if (hood.kind === 'measured') segment = measuredSegment(area_m2, hood.loss.si, hood.flow.si);
  else throw new ImpossibleInput('hood', hood.kind, 'a kind with a loss');
  return {
    segments: [segment],
    record: {
      ...END,
      kind: 'hood',
      share: 'hood',
      area_m2,
      areaAfter_m2: area_m2,
      diameter_m,
      source: loss?.source ?? 'reading in the document',
      basis: loss?.basis ?? 'measured-by-user',
      outside: loss?.outside ?? [],
      relation: 'loss of the hood',
    },
    diameterAfter_m: diameter_m,
  };
}

/** The exhaust at the end of a run, on the velocity of the run's last duct. */
export function buildExhaust(exhaust: ThingOf<'exhaust'>, diameter_m: number): BuiltPiece {
  const area_m2 = roundArea(diameter_m);
  const { outlet } = exhaust;
  const k =
    outlet.kind === 'given'
      ? outlet.coefficient.si
      : outlet.kind === 'cap'
        ? weatherCapCoefficient(outlet.gapRatio.si).k
        : stackExit().k;
  return {
    segments: [localSegment(area_m2, k, DRAWN_IN.value)],
    record: {
      ...END,
      kind: 'exhaust',
      share: 'fittings',
      area_m2,
      areaAfter_m2: null,
      diameter_m,
      ...OUTLET_SOURCES[outlet.kind],
      outside:
        outlet.kind === 'cap'
          ? findOutside(WEATHER_CAP_RANGE, { 'gap over diameter': outlet.gapRatio.si })
          : [],
      relation: 'loss of the weather cap',
    },
    diameterAfter_m: diameter_m,
  };
}

/** The hole at the start of a leak's run. */
export function buildLeak(leak: ThingOf<'leak'>): BuiltPiece {
  const discharge = leak.dischargeCoefficient?.si ?? HOLE_DISCHARGE.value;
  const area_m2 = leak.area.si;
  return {
    segments: [localSegment(area_m2, orificeLeakCoefficient(discharge).k)],
    record: {
      ...END,
      kind: 'leak',
      share: 'hood',
      area_m2,
      areaAfter_m2: null,
      diameter_m: null,
      source: leak.dischargeCoefficient ? 'given in the document' : HOLE_DISCHARGE.source,
      basis: leak.dischargeCoefficient ? 'measured-by-user' : HOLE_DISCHARGE.basis,
    },
    diameterAfter_m: Math.sqrt((4 * area_m2) / Math.PI),
  };
}
