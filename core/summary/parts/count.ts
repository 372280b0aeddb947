import { findEnd } from '../../document/ends.ts';
import type { ShopDocument } from '../../document/schema.ts';
import type { Thing } from '../../document/schema-things.ts';
import { buildOf } from './built.ts';
import type { Built, BuiltRun } from './built.ts';
import type { PartKind } from './result.ts';

/** A part before it is bought: one of it, or a length. */
export interface Part {
  readonly kind: PartKind;
  readonly of: string | null;
  readonly diameter_m: number | null;
  readonly toDiameter_m?: number;
  /** Size of the straight way in, where it is not that of the way out. */
  readonly mainDiameter_m?: number;
  readonly angle_rad?: number;
  readonly radiusRatio?: number;
  readonly area_m2?: number;
  readonly length_m?: number;
  readonly where: string;
}

/** Things at whose end a run is not fastened to anything. */
const FREE_ENDS: ReadonlySet<string> = new Set(['leak', 'pressure']);

/** Every part that the drawing holds, one by one; joints and clamps last. */
export function countParts(document: ShopDocument): Part[] {
  const things = new Map(document.things.map((thing) => [thing.id, thing]));
  const runs = document.runs.map((run) => buildOf(run, things));
  return [
    ...runs.flatMap(({ built, run }) => built.map((part) => runPart(part, run.id))),
    ...document.things.flatMap((thing) => thingParts(thing, runs, things)),
    ...runs.flatMap((run) => fastenings(run, things)),
  ];
}

function runPart(part: Built, where: string): Part {
  switch (part.kind) {
    case 'duct':
      return { kind: 'duct', of: part.material, diameter_m: part.diameter_m, length_m: part.length_m, where };
    case 'hose':
      return {
        kind: 'hose',
        of: part.material,
        diameter_m: part.diameter_m,
        length_m: part.stretched_m,
        where,
      };
    case 'elbow':
      return {
        kind: 'elbow',
        of: part.style,
        diameter_m: part.diameter_m,
        angle_rad: part.angle_rad,
        ...(part.radiusRatio === null ? {} : { radiusRatio: part.radiusRatio }),
        where,
      };
    case 'reducer': {
      // a reducer is the same part whichever way the air goes
      const [small, large] = [Math.min(part.diameter_m, part.to_m), Math.max(part.diameter_m, part.to_m)];
      return { kind: 'reducer', of: null, diameter_m: large, toDiameter_m: small, where };
    }
    case 'gate':
      return { kind: 'gate', of: null, diameter_m: part.diameter_m, where: part.id };
    case 'other':
      return { kind: 'other', of: part.name, diameter_m: part.diameter_m, where };
  }
}

function thingParts(thing: Thing, runs: readonly BuiltRun[], things: ReadonlyMap<string, Thing>): Part[] {
  const where = thing.id;
  switch (thing.kind) {
    case 'wye':
    case 'tee':
    case 'breeches': {
      const size = (end: string) => endDiameter(thing.id, end, runs, things);
      const branch = thing.kind === 'breeches' ? size('left') : size('branch');
      const out = size('out');
      const main = thing.kind === 'breeches' ? size('right') : size('main');
      const usual = thing.kind === 'breeches' ? branch : out;
      return [
        {
          kind: thing.kind,
          of: null,
          diameter_m: out,
          ...(branch === null ? {} : { toDiameter_m: branch }),
          ...(main === null || usual === null || Math.abs(main - usual) < 1e-6
            ? {}
            : { mainDiameter_m: main }),
          ...(thing.kind === 'tee' ? {} : { angle_rad: thing.angle.si }),
          where,
        },
      ];
    }
    case 'cyclone':
      return [{ kind: 'separator', of: thing.proportions, diameter_m: thing.bodyDiameter.si, where }];
    case 'bin':
      return [
        { kind: 'bin', of: thing.baffle ? 'with baffle' : null, diameter_m: thing.inletDiameter.si, where },
      ];
    case 'filter':
      return thing.layers.map((layer) => ({
        kind: 'filter-medium',
        of: layer.medium,
        diameter_m: null,
        area_m2: layer.area.si,
        where,
      }));
    case 'fan':
      return [
        {
          kind: 'fan',
          of: thing.design ?? thing.name ?? thing.id,
          diameter_m: thing.outletDiameter.si,
          where,
        },
      ];
    case 'exhaust':
      return thing.outlet.kind === 'cap'
        ? [{ kind: 'cap', of: null, diameter_m: endDiameter(thing.id, '', runs, things), where }]
        : [];
    default:
      return [];
  }
}

/** Size of the run at one end of a thing; null where nothing is joined there or it has none. */
function endDiameter(
  id: string,
  end: string,
  runs: readonly BuiltRun[],
  things: ReadonlyMap<string, Thing>,
): number | null {
  for (const { run, startDiameter_m, endDiameter_m } of runs) {
    for (const side of ['from', 'to'] as const) {
      const found = findEnd(things, run[side], side);
      if (typeof found === 'string' || found.thing.id !== id || found.end !== end) continue;
      return side === 'from' ? startDiameter_m : endDiameter_m;
    }
  }
  return null;
}

/**
 * Clamps and joints of a run: one place between each two parts that follow each other, and one at each end that is
 * fastened to something. Where hose meets anything it takes a clamp, else two rigid parts take a joint. A plain joint
 * of two runs is one place, counted with the run that ends there.
 */
function fastenings(
  { run, built, startDiameter_m, endDiameter_m }: BuiltRun,
  things: ReadonlyMap<string, Thing>,
): Part[] {
  const parts = built.filter(({ kind }) => kind !== 'other');
  const at = (hose: boolean, diameter_m: number | null): Part => ({
    kind: hose ? 'clamp' : 'joint',
    of: null,
    diameter_m,
    where: run.id,
  });
  const fastened = (side: 'from' | 'to'): boolean => {
    const end = findEnd(things, run[side], side);
    if (typeof end === 'string' || FREE_ENDS.has(end.thing.kind)) return false;
    if (end.thing.kind === 'joint') return side === 'to';
    return end.thing.kind !== 'exhaust' || end.thing.outlet.kind === 'cap';
  };
  const found: Part[] = [];
  const first = parts[0];
  const last = parts.at(-1);
  if (first === undefined || last === undefined) {
    // two things with nothing between them are fastened to each other
    return fastened('from') && fastened('to') ? [at(false, startDiameter_m)] : [];
  }
  if (fastened('from')) found.push(at(first.kind === 'hose', startDiameter_m));
  for (let i = 1; i < parts.length; i++) {
    const [before, after] = [parts[i - 1]!, parts[i]!];
    const diameter_m = before.kind === 'reducer' ? before.to_m : before.diameter_m;
    found.push(at(before.kind === 'hose' || after.kind === 'hose', diameter_m));
  }
  if (fastened('to')) found.push(at(last.kind === 'hose', endDiameter_m));
  return found;
}
