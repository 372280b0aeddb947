import { DEVICE_KINDS, findEnd } from '../document/ends.ts';
import type { RunEnd } from '../document/ends.ts';
import { pathText } from '../document/problem.ts';
import type { DocumentProblem } from '../document/problem.ts';
import type { ShopDocument } from '../document/schema.ts';
import type { FanDesign } from '../document/schema-fans.ts';
import type { Run } from '../document/schema-pieces.ts';
import type { Thing, ThingOf } from '../document/schema-things.ts';
import { ImpossibleInput, requireBetween } from '../quantities/impossible-input.ts';
import { buildBin, buildCyclone, buildFilter } from './compile-devices.ts';
import type { BuiltDevice } from './compile-devices.ts';
import { buildFan, UnusableDesign } from './compile-fan.ts';
import { settleMeasured } from './measured-segment.ts';
import { checkHood } from './compile-ends.ts';
import type { BuiltRun } from './compile-run.ts';
import { impossibleField } from './impossible-field.ts';
import { keptRun } from './kept-run.ts';
import { FAN, PASSIVE } from './net.ts';
import type { Element, Leg, NetAir, Node } from './net.ts';
import { packNet } from './packed.ts';
import type { PackedNet } from './packed.ts';
import { roundArea } from './round-area.ts';
import type { GateRecord } from './piece-record.ts';
import { dustOf, portDustRate, portFlowNeed } from './port-dust.ts';
import { roomAir } from './room-air.ts';
import type { AirResult } from './solution.ts';

/** A document turned into a network, with what results need to speak of it again. */
export interface CompiledShop {
  readonly document: ShopDocument;
  readonly air: AirResult;
  readonly packed: PackedNet;
  readonly things: ReadonlyMap<string, Thing>;
  /** In the order of the document; element `i` of the net is run `i`. */
  readonly runs: readonly CompiledRun[];
  readonly devices: readonly CompiledDevice[];
  readonly fans: readonly CompiledFan[];
  readonly gates: readonly GateRecord[];
  /** Node index by id: a thing's, or `S1.in` and `S1.out` of a device. */
  readonly nodeIndex: ReadonlyMap<string, number>;
}

export interface CompiledRun extends BuiltRun {
  readonly run: Run;
  readonly element: number;
  readonly from: RunEnd;
  readonly to: RunEnd;
}

export interface CompiledDevice {
  readonly thing: ThingOf<'cyclone' | 'bin' | 'filter'>;
  readonly element: number;
  readonly built: BuiltDevice;
}

export interface CompiledFan {
  readonly thing: ThingOf<'fan'>;
  readonly element: number;
  /** Its entry in the list of fans, where it stands for one. */
  readonly design: FanDesign | null;
}

export type CompileResult =
  | { readonly ok: true; readonly shop: CompiledShop }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

/** Geometric deviation beyond which no dust is; 1 is dust of one size [-]. */
const MOST_SPREAD = 100;

const BUILD_DEVICE = { cyclone: buildCyclone, bin: buildBin, filter: buildFilter } as const;

/** Turns a document into a network; what no shop can have comes back as problems with paths. */
export function compileShop(document: ShopDocument): CompileResult {
  const problems: DocumentProblem[] = [];
  /** Runs a step, and turns what it refuses into a problem at a path. */
  const attempt = <T>(path: (string | number)[], step: () => T): T | null => {
    try {
      return step();
    } catch (error) {
      if (error instanceof UnusableDesign) {
        const place = pathText(document, [...path, 'design']);
        problems.push({ path: place, message: `${place}: ${error.message}`, remedy: error.remedy });
        return null;
      }
      if (!(error instanceof ImpossibleInput)) throw error;
      problems.push(impossibleField(document, path, error));
      return null;
    }
  };

  const air = attempt(['air'], () => roomAir(document));
  if (air === null) return { ok: false, problems };
  document.dusts.forEach((dust, d) =>
    attempt(['dusts', d], () =>
      requireBetween('geometricDeviation', dust.geometricDeviation.si, 1, MOST_SPREAD),
    ),
  );
  const things = new Map(document.things.map((thing) => [thing.id, thing]));
  const nodes: { id: string; pressure_Pa: number | null; legs: Leg[] | null }[] = [];
  const nodeIndex = new Map<string, number>();
  const addNode = (id: string, pressure_Pa: number | null, mixing = false) => {
    nodeIndex.set(id, nodes.length);
    nodes.push({ id, pressure_Pa, legs: mixing ? [] : null });
  };
  for (const thing of document.things) {
    if (DEVICE_KINDS.has(thing.kind)) {
      addNode(`${thing.id}.in`, null);
      addNode(`${thing.id}.out`, null);
    } else if (thing.kind === 'port' || thing.kind === 'leak') addNode(thing.id, 0);
    else if (thing.kind === 'exhaust') addNode(thing.id, thing.pressure?.si ?? 0);
    else if (thing.kind === 'pressure') addNode(thing.id, thing.pressure.si);
    else addNode(thing.id, null, thing.kind !== 'joint');
  }
  const nodeOf = (end: RunEnd) =>
    nodeIndex.get(DEVICE_KINDS.has(end.thing.kind) ? `${end.thing.id}.${end.end}` : end.thing.id)!;

  /** Ports whose hood cannot be, so that their runs do not say so again. */
  const broken = new Set<Thing>();
  document.things.forEach((thing, i) => {
    if (thing.kind !== 'port') return;
    attempt(['things', i], () => [portDustRate(thing), thing.dust && dustOf(document, thing.dust)]);
    attempt(['things', i, 'needs', 'capture'], () => portFlowNeed(thing));
    if (attempt(['things', i, 'hood'], () => checkHood(thing)) === null) broken.add(thing);
  });

  const density = air.density_kgm3;
  const elements: Element[] = [];
  const runs: CompiledRun[] = [];
  document.runs.forEach((run, r) => {
    // ends were checked when the document was read
    const from = findEnd(things, run.from, 'from') as RunEnd;
    const to = findEnd(things, run.to, 'to') as RunEnd;
    const built = broken.has(from.thing) ? null : attempt(['runs', r], () => keptRun(run, from, to, things));
    const segments = (built?.segments ?? []).map((segment) => settleMeasured(segment, density));
    elements.push({ id: run.id, from: nodeOf(from), to: nodeOf(to), kind: PASSIVE, segments, fan: null });
    if (built) runs.push({ ...built, run, element: r, from, to });
  });
  for (const { element, from, to, startDiameter_m, endDiameter_m } of runs) {
    addLeg(nodes[nodeOf(from)]!.legs, from, element, false, startDiameter_m);
    addLeg(nodes[nodeOf(to)]!.legs, to, element, true, endDiameter_m);
  }

  const devices: CompiledDevice[] = [];
  const fans: CompiledFan[] = [];
  document.things.forEach((thing, i) => {
    const ends = { from: nodeIndex.get(`${thing.id}.in`)!, to: nodeIndex.get(`${thing.id}.out`)! };
    if (thing.kind === 'fan') {
      const fan = attempt(['things', i], () => buildFan(thing, document.fans, air));
      if (fan === null) return;
      fans.push({ thing, element: elements.length, design: fan.design });
      elements.push({ id: thing.id, ...ends, kind: FAN, segments: [], fan: fan.drive });
    } else if (thing.kind === 'cyclone' || thing.kind === 'bin' || thing.kind === 'filter') {
      const build = BUILD_DEVICE[thing.kind] as (thing: Thing) => BuiltDevice;
      const built = attempt(['things', i], () => build(thing));
      if (built === null) return;
      const segments = built.segments.map((segment) => settleMeasured(segment, density));
      devices.push({ thing, element: elements.length, built });
      elements.push({ id: thing.id, ...ends, kind: PASSIVE, segments, fan: null });
    }
  });
  if (problems.length > 0) return { ok: false, problems };

  const netAir: NetAir = {
    density_kgm3: density,
    viscosity_Pas: air.viscosity_Pas,
    roomPressure_Pa: document.options.compressible ? air.pressure_Pa : null,
  };
  const packed = packNet({ air: netAir, nodes: nodes as Node[], elements });
  const gates = runs.flatMap((run) =>
    run.gates.map(({ id, segment, opening }) => ({
      id,
      element: run.element,
      segment: packed.segmentStart[run.element]! + segment,
      opening,
    })),
  );
  return { ok: true, shop: { document, air, packed, things, runs, devices, fans, gates, nodeIndex } };
}

/** Direction in which air leaves a mixing junction through each of its ends, for a branch at angle `a` [rad]. */
const LEG_DIRECTION: Readonly<Record<string, (a: number) => number>> = {
  out: () => 0,
  main: () => Math.PI,
  branch: (a) => Math.PI + a,
  left: (a) => Math.PI + a,
  right: (a) => Math.PI - a,
};

function addLeg(
  legs: Leg[] | null,
  end: RunEnd,
  element: number,
  ends: boolean,
  diameter_m: number | null,
): void {
  if (legs === null || diameter_m === null) return;
  const { thing } = end;
  const angle = thing.kind === 'wye' || thing.kind === 'breeches' ? thing.angle.si : Math.PI / 2;
  const leg = {
    element,
    ends,
    area_m2: roundArea(diameter_m),
    direction_rad: LEG_DIRECTION[end.end]!(angle),
  };
  if (thing.kind === 'breeches') legs.push(leg);
  else legs.push({ ...leg, role: end.end === 'branch' ? 'branch' : 'through' });
}
