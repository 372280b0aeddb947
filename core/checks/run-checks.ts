import { SLIDE_GATE_RANGE, SLIDE_GATE_SHUT_BELOW } from '../fittings/gate.ts';
import { CAPTURE_RANGE } from '../fittings/capture.ts';
import { SOLIDS_LOADING_RANGE } from '../conveying/solids-loss.ts';
import { LAMINAR_BELOW, TURBULENT_ABOVE } from '../duct/friction.ts';
import { keptRoute } from '../document/kept-route.ts';
import { isDrawn } from '../document/route.ts';
import { openings } from '../network/apply-setting.ts';
import type { CompiledRun } from '../network/compile.ts';
import { WASTEFUL_RATIO } from '../network/port-dust.ts';
import { runsWrongWay } from '../network/run-results.ts';
import type { Finding, RunResult } from '../network/solution.ts';
import { findOutside } from '../quantities/range.ts';
import { finding, printApart } from './finding.ts';
import type { Printer } from './finding.ts';
import type { Check, CheckInput } from './check.ts';
import { percent, shown, span } from './range-text.ts';
import { keptRating } from './suction.ts';

/** A run that holds by less than this share is close [-]. */
export const CLOSE_MARGIN = {
  value: 0.05,
  source: 'no source; a filter that fills takes that away',
  basis: 'assumed',
} as const;
/** Velocity above which the relations for still density near their end [m/s]. */
export const VERY_FAST = {
  value: 100,
  source: 'encyclopedia of engineering, incompressible flow: air below a Mach number of 0.3, up to 102 m/s',
  basis: 'published',
} as const;

/** Velocity, flow, direction, suction and ranges of every run. */
export const checkRuns: Check = (input, print) => {
  const open = openings(input.shop, input.setting);
  return input.shop.runs.flatMap((compiled, i) => {
    const run = input.result.runs[i]!;
    const load = input.dust.loads[compiled.element]!;
    const found: Finding[] = [];
    if (run.massFlow_kgs !== 0) {
      const wrongWay = runsWrongWay(compiled, run.massFlow_kgs);
      if (wrongWay) found.push(finding('air-reversed', run.id, print(-run.flow_m3s, 'flow')));
      else found.push(...checkTransport(run, load.highVelocity_ms, print), ...checkFlow(run, print));
      if (compiled.from.thing.kind === 'leak' && run.massFlow_kgs < 0 && load.dusts.length > 0) {
        found.push(finding('leak-blows-dust', compiled.from.thing.id, print(-run.flow_m3s, 'flow')));
      }
      found.push(...checkSpeed(input, compiled, run, print));
    }
    found.push(
      ...checkSuction(compiled, run, print),
      ...checkRanges(compiled, open),
      ...checkBends(input, compiled, print),
    );
    return found;
  });
};

/** Bends of a drawn run that do not fit between its corners. */
function checkBends(input: CheckInput, { run }: CompiledRun, print: Printer): Finding[] {
  if (!isDrawn(run)) return [];
  return keptRoute(run, input.shop.things).bends.flatMap((bend) =>
    bend.tight
      ? [
          finding(
            'bend-tight',
            run.id,
            String(bend.corner + 1),
            print(bend.radius_m, 'length'),
            print(bend.wanted_m, 'length'),
          ),
        ]
      : [],
  );
}

function checkTransport(run: RunResult, high_ms: number | null, print: Printer): Finding[] {
  const { velocity_ms: v, requiredVelocity_ms: need } = run;
  if (v === null || need === null || need === 0) return [];
  const margin = v / need - 1;
  if (margin < 0) {
    return [finding('velocity-low', run.id, ...printApart(print, v, need, 'velocity'), percent(-margin))];
  }
  if (margin < CLOSE_MARGIN.value) {
    return [finding('velocity-close', run.id, percent(margin), ...printApart(print, v, need, 'velocity'))];
  }
  // a typed need may ask for more than the dust would
  if (high_ms !== null && v > Math.max(high_ms, WASTEFUL_RATIO * need)) {
    return [finding('velocity-high', run.id, ...printApart(print, v, need, 'velocity'))];
  }
  return [];
}

function checkFlow(run: RunResult, print: Printer): Finding[] {
  const { flow_m3s, requiredFlow_m3s: need } = run;
  if (need === null || flow_m3s >= need) return [];
  return [finding('flow-low', run.id, ...printApart(print, flow_m3s, need, 'flow'))];
}

/** What the speed of the air and the load of dust do to the relations. */
function checkSpeed({ shop }: CheckInput, compiled: CompiledRun, run: RunResult, print: Printer): Finding[] {
  const found: Finding[] = [];
  const flow = Math.abs(run.massFlow_kgs);
  const fastest = Math.max(0, ...run.pieces.map((piece) => piece.velocity_ms ?? 0));
  if (fastest > VERY_FAST.value) found.push(finding('air-very-fast', run.id, print(fastest, 'velocity')));
  const limit = SOLIDS_LOADING_RANGE['loading ratio']!.high!;
  if (run.dust_kgs / flow > limit) {
    found.push(finding('dust-load-high', run.id, (run.dust_kgs / flow).toPrecision(2), String(limit)));
  }
  const between = compiled.pieces
    .filter((record) => record.carries && record.diameter_m !== null)
    .map((record) => (4 * flow) / (Math.PI * record.diameter_m! * shop.air.viscosity_Pas))
    .find((reynolds) => reynolds > LAMINAR_BELOW && reynolds < TURBULENT_ABOVE);
  if (between !== undefined) found.push(finding('flow-unsettled', run.id, between.toFixed(0)));
  return found;
}

function checkSuction(compiled: CompiledRun, run: RunResult, print: Printer): Finding[] {
  const rating = keptRating(compiled.run);
  if (rating === null) return [];
  const lowest = deepest(run);
  if (lowest <= rating) return [];
  return [finding('suction-over-rating', run.id, ...printApart(print, lowest, rating, 'pressure'))];
}

/** Greatest suction along a run [Pa]. */
export const deepest = (run: RunResult): number =>
  Math.max(0, ...run.pieces.map((piece) => -(piece.staticPressureAfter_Pa ?? 0)));

/** Relations that are used outside the sizes and openings for which they were found. */
function checkRanges(compiled: CompiledRun, open: ReadonlyMap<string, number>): Finding[] {
  const { run, from } = compiled;
  const own = new Set([from.thing.id, compiled.to.thing.id, ...run.pieces.map((piece) => piece.id ?? '')]);
  const found = compiled.pieces.flatMap((record) => {
    const opening = record.kind === 'gate' ? open.get(record.id)! : 1;
    const gate = opening < SLIDE_GATE_SHUT_BELOW ? [] : findOutside(SLIDE_GATE_RANGE, { opening });
    const relation = record.kind === 'gate' ? 'loss of the gate' : record.relation;
    // a piece without a name of its own is named by its run and its number
    const [where, label] = own.has(record.id) ? [record.id, relation] : [run.id, `${record.id}, ${relation}`];
    return [...record.outside, ...gate].map(({ quantity, value, bounds }) =>
      finding('outside-range', where, label, quantity, shown(value, bounds), span(bounds)),
    );
  });
  const capture = from.thing.kind === 'port' ? from.thing.needs?.capture : undefined;
  if (capture) {
    const ratio = capture.distance.si / Math.sqrt(capture.faceArea.si);
    for (const { quantity, value, bounds } of findOutside(CAPTURE_RANGE, {
      'distance over root of area': ratio,
    })) {
      found.push(
        finding(
          'outside-range',
          from.thing.id,
          'capture at a distance',
          quantity,
          shown(value, bounds),
          span(bounds),
        ),
      );
    }
  }
  return found;
}
