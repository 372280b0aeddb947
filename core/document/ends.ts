import type { Thing, ThingKind } from './schema-things.ts';

/** Ends of each kind of thing, and the one meant where a run names the thing alone. */
export const ENDS: Readonly<
  Record<ThingKind, { readonly all: readonly string[]; readonly from: string; readonly to: string }>
> = {
  port: { all: [''], from: '', to: '' },
  leak: { all: [''], from: '', to: '' },
  exhaust: { all: [''], from: '', to: '' },
  pressure: { all: [''], from: '', to: '' },
  joint: { all: [''], from: '', to: '' },
  wye: { all: ['main', 'branch', 'out'], from: 'out', to: '' },
  tee: { all: ['main', 'branch', 'out'], from: 'out', to: '' },
  breeches: { all: ['left', 'right', 'out'], from: 'out', to: '' },
  cyclone: { all: ['in', 'out'], from: 'out', to: 'in' },
  bin: { all: ['in', 'out'], from: 'out', to: 'in' },
  filter: { all: ['in', 'out'], from: 'out', to: 'in' },
  fan: { all: ['in', 'out'], from: 'out', to: 'in' },
};

/** Kinds whose ends are separate nodes, with the device between them. */
export const DEVICE_KINDS: ReadonlySet<ThingKind> = new Set<ThingKind>(['cyclone', 'bin', 'filter', 'fan']);
/** Kinds where streams meet. */
export const MIXING_KINDS: ReadonlySet<ThingKind> = new Set<ThingKind>(['wye', 'tee', 'breeches']);

export interface RunEnd {
  readonly thing: Thing;
  /** Empty where the thing has one end only. */
  readonly end: string;
}

/** Reads `S1`, `S1.out` or `W1.branch`; a sentence where it names nothing. */
export function findEnd(
  things: ReadonlyMap<string, Thing>,
  text: string,
  side: 'from' | 'to',
): RunEnd | string {
  const point = text.indexOf('.');
  const id = point < 0 ? text : text.slice(0, point);
  const thing = things.get(id);
  if (thing === undefined) return `nothing is named "${id.slice(0, 40)}"`;
  const ends = ENDS[thing.kind];
  const end = point < 0 ? ends[side] : text.slice(point + 1);
  if (ends.all.includes(end)) return { thing, end };
  const choice = ends.all.map((name) => (name === '' ? id : `${id}.${name}`)).join(', ');
  return `a ${thing.kind} is reached as ${choice}`;
}
