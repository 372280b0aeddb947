import type { CompiledRun, CompiledShop } from './compile.ts';
import type { Load } from './dust.ts';
import { densityAt, LOADING_CAP, marchSegment, newMarch, staticAt } from './march.ts';
import { junctionPiece } from './junction-piece.ts';
import { FRICTION, LOCAL_DOWNSTREAM, LOCAL_UPSTREAM } from './net.ts';
import type { PieceRecord } from './piece-record.ts';
import { portFlowNeed } from './port-dust.ts';
import type { PieceResult, RunResult } from './solution.ts';
import type { SolvedNet } from './solved-net.ts';

const march = newMarch();

/** Everything that is said of one run, piece by piece in the order in which it is drawn. */
export function runResult(net: SolvedNet, compiled: CompiledRun, load: Load): RunResult {
  const { shop, state, balance } = net;
  const { packed } = shop;
  const e = compiled.element;
  const m = state.flow_kgs[e]!;
  const start = finite(balance.endPressure(state, e, true));
  const end = finite(balance.endPressure(state, e, false));
  const shut = packed.shut[e] === 1;
  const pieces = shut
    ? shutPieces(shop, compiled, start, end)
    : marchPieces(shop, compiled, m, m >= 0 ? start : end);

  const carrying = pieces.filter((_, i) => compiled.pieces[i]!.carries);
  const velocities = (carrying.length > 0 ? carrying : pieces).flatMap((p) =>
    p.velocity_ms === null ? [] : [p.velocity_ms],
  );
  const velocity_ms = velocities.length > 0 ? Math.min(...velocities) : null;
  const density = densityAt(packed, (m >= 0 ? start : end) ?? 0);
  const flow_m3s = m / density;

  const port = compiled.from.thing.kind === 'port' ? compiled.from.thing : null;
  const requiredFlow_m3s = port ? portFlowNeed(port) : null;
  const requiredVelocity_ms = compiled.run.requiredVelocity?.si ?? load.requiredVelocity_ms;
  let holds: boolean | null = null;
  // a run that is cut off elsewhere stands as still as one with a shut gate of its own
  if (!shut && m !== 0 && (requiredVelocity_ms !== null || requiredFlow_m3s !== null)) {
    const required = { velocity_ms: requiredVelocity_ms, flow_m3s: requiredFlow_m3s };
    holds = !runsWrongWay(compiled, m) && reaches(required, velocity_ms ?? 0, flow_m3s);
  }
  const before = junctionPiece(net, compiled, true);
  const after = junctionPiece(net, compiled, false);
  const along = shut || start === null || end === null ? 0 : m >= 0 ? start - end : end - start;
  return {
    id: compiled.run.id,
    name: compiled.run.name ?? null,
    from: compiled.run.from,
    to: compiled.run.to,
    massFlow_kgs: m,
    flow_m3s,
    velocity_ms,
    requiredVelocity_ms,
    requiredFlow_m3s,
    holds,
    lossTotal_Pa: along + (before?.loss_Pa ?? 0) + (after?.loss_Pa ?? 0),
    dust_kgs: load.dust_kgs,
    pieces: [...(before ? [before] : []), ...pieces, ...(after ? [after] : [])],
  };
}

/** What a run asks of its air; null where it asks nothing of the kind. */
export interface Required {
  readonly velocity_ms: number | null;
  readonly flow_m3s: number | null;
}

/** Whether a velocity and a flow are what a run asks, both. */
export const reaches = (required: Required, velocity_ms: number, flow_m3s: number): boolean =>
  (required.velocity_ms === null || velocity_ms >= required.velocity_ms) &&
  (required.flow_m3s === null || flow_m3s >= required.flow_m3s);

/** Whether air goes against a run that has a direction: one that starts at a port or ends at an exhaust. */
export function runsWrongWay(compiled: CompiledRun, flow_kgs: number): boolean {
  return flow_kgs < 0 && (compiled.from.thing.kind === 'port' || compiled.to.thing.kind === 'exhaust');
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Pieces of a run through which air moves. */
function marchPieces(
  shop: CompiledShop,
  compiled: CompiledRun,
  m: number,
  inlet: number | null,
): PieceResult[] {
  const { packed } = shop;
  const e = compiled.element;
  const flow = Math.abs(m);
  const reversed = m < 0;
  const solids = packed.solids_kgs[e]!;
  const loading = solids > 0 ? Math.min(solids / Math.max(flow, 1e-12), LOADING_CAP) : 0;
  const results: PieceResult[] = [];
  Object.assign(march, newMarch());
  march.total_Pa = inlet ?? 0;
  // the solver adds the dust's part to the whole run at once; so do the running totals
  const first = inlet ?? 0;
  const withSolids = (total: number) => first - (first - total) * (1 + loading);

  const records = compiled.pieces;
  const firstSegment: number[] = [];
  let at = packed.segmentStart[e]!;
  for (const record of records) {
    firstSegment.push(at);
    at += record.segments;
  }
  for (let step = 0; step < records.length; step++) {
    const i = reversed ? records.length - 1 - step : step;
    const record = records[i]!;
    const from = firstSegment[i]!;
    const before = march.total_Pa;
    let friction: number | null = null;
    for (let k = 0; k < record.segments; k++) {
      const s = reversed ? from + record.segments - 1 - k : from + k;
      marchSegment(packed, s, flow, reversed, march);
      if (packed.type[s] === FRICTION) friction = march.friction;
    }
    const after = march.total_Pa;
    const drop = before - after;
    // the side of the loss on which the coefficient's area lies, in the direction of flow
    const type = record.segments > 0 ? packed.type[from] : undefined;
    const ownSide = type === (reversed ? LOCAL_UPSTREAM : LOCAL_DOWNSTREAM) ? after : before;
    const { velocity_ms, pressure_Pa } = velocityAt(shop, record.area_m2, flow, ownSide);
    const total = withSolids(reversed ? before : after);
    const known = inlet !== null;
    // written out: spreading the record's part into each of so many pieces costs more than the march
    results[i] = {
      id: record.id,
      kind: record.kind,
      share: record.share,
      diameter_m: record.diameter_m,
      length_m: record.length_m,
      velocity_ms,
      velocityPressure_Pa: pressure_Pa,
      coefficient: pressure_Pa !== null && pressure_Pa > 0 ? drop / pressure_Pa : null,
      frictionFactor: flow > 0 ? friction : null,
      loss_Pa: drop * (1 + loading),
      solidsLoss_Pa: drop * loading,
      totalPressureAfter_Pa: known ? total : null,
      staticPressureAfter_Pa:
        known && record.areaAfter_m2 !== null ? staticAt(packed, total, flow, record.areaAfter_m2) : null,
      source: record.source,
      basis: record.basis,
    };
  }
  return results;
}

/** Pieces of a run with a shut gate: still air, at the pressure of whichever end each of them is open to. */
function shutPieces(
  shop: CompiledShop,
  compiled: CompiledRun,
  start: number | null,
  end: number | null,
): PieceResult[] {
  const shutAt = compiled.pieces.flatMap((record, i) =>
    record.kind === 'gate' && isShut(shop, record.id) ? [i] : [],
  );
  const firstShut = shutAt[0] ?? 0;
  const lastShut = shutAt.at(-1) ?? 0;
  return compiled.pieces.map((record, i) => {
    // between two shut gates nothing says what the pressure is
    const pressure = i < firstShut ? start : i >= lastShut ? end : null;
    return {
      ...describe(record),
      velocity_ms: record.area_m2 === null ? null : 0,
      velocityPressure_Pa: record.area_m2 === null ? null : 0,
      coefficient: null,
      frictionFactor: null,
      loss_Pa: 0,
      solidsLoss_Pa: 0,
      totalPressureAfter_Pa: pressure,
      staticPressureAfter_Pa: record.areaAfter_m2 === null ? null : pressure,
    };
  });
}

function isShut(shop: CompiledShop, id: string): boolean {
  const gate = shop.gates.find((g) => g.id === id);
  return gate !== undefined && shop.packed.forward[gate.segment] === Infinity;
}

function describe(record: PieceRecord) {
  return {
    id: record.id,
    kind: record.kind,
    share: record.share,
    diameter_m: record.diameter_m,
    length_m: record.length_m,
    source: record.source,
    basis: record.basis,
  };
}

/** Velocity and velocity pressure in an area where the total pressure is known. */
function velocityAt(
  shop: CompiledShop,
  area_m2: number | null,
  flow_kgs: number,
  total_Pa: number,
): { velocity_ms: number | null; pressure_Pa: number | null } {
  if (area_m2 === null) return { velocity_ms: null, pressure_Pa: null };
  const density = densityAt(shop.packed, staticAt(shop.packed, total_Pa, flow_kgs, area_m2));
  const velocity_ms = flow_kgs / (density * area_m2);
  return { velocity_ms, pressure_Pa: (density * velocity_ms * velocity_ms) / 2 };
}
