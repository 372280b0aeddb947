import { MATERIALS } from '../catalogue/materials.ts';
import { SOLIDS_LOADING_RANGE } from '../conveying/solids-loss.ts';
import type { CompiledRun } from '../network/compile.ts';
import type { Finding, RunResult } from '../network/solution.ts';
import type { Bounds } from '../quantities/range.ts';
import { finding } from './finding.ts';
import type { Printer } from './finding.ts';
import type { Check } from './findings.ts';

/** A run that holds by less than this share is close. */
const CLOSE_MARGIN = 0.05;
/** Velocity above which the relations for still density near their end [m/s]; a Mach number of 0.3. */
const VERY_FAST_ms = 100;

/** Velocity, flow, direction, suction and ranges of every run. */
export const checkRuns: Check = ({ shop, result, dust }, print) => {
  const found: Finding[] = [];
  for (const compiled of shop.runs) {
    const run = result.runs.find((r) => r.id === compiled.run.id)!;
    const load = dust.loads[compiled.element]!;
    found.push(...checkTransport(run, load.highVelocity_ms, print));
    if (run.requiredFlow_m3s !== null && run.massFlow_kgs > 0 && run.flow_m3s < run.requiredFlow_m3s) {
      found.push(
        finding('flow-low', run.id, print(run.flow_m3s, 'flow'), print(run.requiredFlow_m3s, 'flow')),
      );
    }
    if (run.massFlow_kgs < 0) found.push(finding('air-reversed', run.id, print(-run.flow_m3s, 'flow')));
    found.push(...checkSuction(compiled, run, print));
    for (const record of compiled.pieces) {
      for (const { quantity, value, bounds } of record.outside) {
        found.push(
          finding('outside-range', record.id, record.relation, quantity, shown(value, bounds), span(bounds)),
        );
      }
    }
    const fastest = Math.max(0, ...run.pieces.map((piece) => piece.velocity_ms ?? 0));
    if (fastest > VERY_FAST_ms) found.push(finding('air-very-fast', run.id, print(fastest, 'velocity')));
    const loading = run.massFlow_kgs > 0 ? run.dust_kgs / run.massFlow_kgs : 0;
    if (loading > SOLIDS_LOADING_RANGE['loading ratio']!.high!) {
      found.push(finding('dust-load-high', run.id, loading.toPrecision(2)));
    }
  }
  return found;
};

function checkTransport(run: RunResult, high_ms: number | null, print: Printer): Finding[] {
  const { velocity_ms: v, requiredVelocity_ms: need } = run;
  if (v === null || need === null || run.massFlow_kgs <= 0) return [];
  const margin = v / need - 1;
  const percent = (share: number) => (100 * share).toPrecision(2);
  if (margin < 0) {
    return [finding('velocity-low', run.id, print(v, 'velocity'), print(need, 'velocity'), percent(-margin))];
  }
  if (margin < CLOSE_MARGIN) {
    return [
      finding('velocity-close', run.id, percent(margin), print(v, 'velocity'), print(need, 'velocity')),
    ];
  }
  if (high_ms !== null && v > high_ms) {
    return [finding('velocity-high', run.id, print(v, 'velocity'), print(need, 'velocity'))];
  }
  return [];
}

function checkSuction(compiled: CompiledRun, run: RunResult, print: Printer): Finding[] {
  const ratings = compiled.run.pieces.flatMap((piece) => {
    const id = ('material' in piece ? piece.material : undefined) ?? compiled.run.material;
    const row = MATERIALS.find((material) => material.id === id);
    return row && 'maxSuction_Pa' in row ? [row.maxSuction_Pa as number] : [];
  });
  const rating = compiled.run.maxSuction?.si ?? (ratings.length > 0 ? Math.min(...ratings) : null);
  if (rating === null) return [];
  const lowest = Math.min(0, ...run.pieces.map((piece) => piece.staticPressureAfter_Pa ?? 0));
  if (-lowest <= rating) return [];
  return [finding('suction-over-rating', run.id, print(-lowest, 'pressure'), print(rating, 'pressure'))];
}

/** A figure of a range finding, in the unit of its bounds. */
export function shown(value: number, bounds: Bounds): string {
  if (bounds.unit === 'rad') return `${((value * 180) / Math.PI).toPrecision(3)} deg`;
  return `${value.toPrecision(3)}${bounds.unit === '-' ? '' : ` ${bounds.unit}`}`;
}

/** Bounds in words. */
export function span(bounds: Bounds): string {
  if (bounds.low === undefined) return `up to ${shown(bounds.high ?? 0, bounds)}`;
  if (bounds.high === undefined) return `${shown(bounds.low, bounds)} and above`;
  return `${shown(bounds.low, bounds)} to ${shown(bounds.high, bounds)}`;
}
