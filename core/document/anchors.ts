import type { Basis } from '../quantities/sourced.ts';
import type { Thing, ThingKind } from './schema-things.ts';

/** A point of the shop [m]; `z` is the height above the floor. */
export interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Where a run meets a thing, and the direction in which the duct leaves it, on the plan [rad]. */
export interface Anchor extends Point3 {
  readonly heading_rad: number;
}

/** Sizes of bodies that the document does not give, for where their ends lie on the plan; a typed length overrules. */
export const NOMINAL_BODY = {
  bin_m: 0.6,
  filter_m: 0.6,
  fanPerOutlet: 3,
  source: 'a 200 litre drum, a cartridge housing and a radial casing of three outlets across, no source',
  basis: 'assumed' as Basis,
};

/** Distance across the body of a thing, from its inlet to its outlet on the plan [m]; zero where runs meet in a point. */
export function bodyLength(thing: Thing): number {
  if (thing.kind === 'cyclone') return thing.bodyDiameter.si;
  if (thing.kind === 'bin') return NOMINAL_BODY.bin_m;
  if (thing.kind === 'filter') return NOMINAL_BODY.filter_m;
  if (thing.kind === 'fan') return NOMINAL_BODY.fanPerOutlet * thing.outletDiameter.si;
  return 0;
}

/** Direction of the duct at each end of a thing that is not turned, for a branch at angle `a` [rad]. */
const HEADINGS: Readonly<Record<string, (a: number) => number>> = {
  in: () => Math.PI,
  out: () => 0,
  main: () => Math.PI,
  branch: (a) => Math.PI - a,
  left: (a) => Math.PI - a,
  right: (a) => Math.PI + a,
};
const SQUARE: ReadonlySet<ThingKind> = new Set<ThingKind>(['tee']);
/** Kinds with one end, which the duct reaches from behind: they blow the way they are turned. */
const FROM_BEHIND: ReadonlySet<ThingKind> = new Set<ThingKind>(['exhaust']);

/**
 * Where a run meets an end of a thing, in metres; null where the thing has no place on the plan.
 *
 * The inlet of a device lies half its body behind its place and the outlet half before, along the way it is turned;
 * everything else is met at its place. `heading_rad` 0 points along x, a quarter turn along y.
 */
export function anchorOf(thing: Thing, end: string): Anchor | null {
  if (thing.at === undefined) return null;
  const { x, y, z } = thing.at;
  const turn = thing.turn?.si ?? 0;
  const branch = 'angle' in thing ? thing.angle.si : Math.PI / 2;
  const single = FROM_BEHIND.has(thing.kind) ? Math.PI : 0;
  const relative = HEADINGS[end]?.(SQUARE.has(thing.kind) ? Math.PI / 2 : branch) ?? single;
  // a branch on the other side leaves at the same angle to the main
  const mirrored = thing.kind === 'wye' && thing.mirrored === true;
  const heading_rad = turn + (mirrored ? -relative : relative);
  const half = bodyLength(thing) / 2;
  return {
    x: x.si + half * Math.cos(heading_rad),
    y: y.si + half * Math.sin(heading_rad),
    z: z?.si ?? 0,
    heading_rad,
  };
}
