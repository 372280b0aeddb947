import type { RunResult } from '../network/solution.ts';
import { bandOf, shareError } from './bands.ts';
import type { CauseShare, Chance, FanChance, RunChance } from './chance.ts';
import type { CauseId } from './ranges.ts';
import { CAUSE_LABELS, sentenceOf } from './sentence.ts';
import { Planes } from './shares.ts';
import type { Shares } from './shares.ts';
import type { FanTally, RunTally, Tally } from './tally.ts';

/** Points of a fan's cloud at most; more are a blot on a chart. */
const CLOUD = 200;
/** Causes that are said of the worst run. */
const NAMED = 2;

/** Makes of what was tallied what is said of a setting. */
export function gather(
  tally: Tally,
): Pick<Chance, 'failures' | 'runs' | 'fans' | 'worstRun' | 'causes' | 'sentence'> {
  const { samples, used } = tally;
  const planes = new Planes(tally.reach, used);
  const moving = new Map(tally.runs.map((run) => [run.compiled.run.id, run]));
  const runs = tally.nominal.runs.map((nominal): RunChance => {
    const run = moving.get(nominal.id);
    const asked = nominal.holds !== null && run !== undefined;
    const margin = asked ? tighter(nominal) : null;
    const shares =
      margin === null ? null : planes.of(margin === 'velocity' ? run!.velocity_ms : run!.flow_m3s);
    return {
      id: nominal.id,
      name: nominal.name,
      from: nominal.from,
      to: nominal.to,
      requiredVelocity_ms: nominal.requiredVelocity_ms,
      requiredFlow_m3s: nominal.requiredFlow_m3s,
      holds: nominal.holds,
      nominalVelocity_ms: nominal.velocity_ms,
      nominalFlow_m3s: nominal.flow_m3s,
      probability: asked ? run.held / samples : null,
      probabilityError: asked ? (tally.list.draws.length === 0 ? 0 : shareError(run.held, samples)) : null,
      velocity_ms: run && nominal.velocity_ms !== null ? bandOf(run.velocity_ms, used) : null,
      flow_m3s: run ? bandOf(run.flow_m3s, used) : null,
      margin,
      causes: shares === null ? [] : causesOf(tally, shares),
      explained: shares?.explained ?? null,
    };
  });
  const asked = runs.filter((run) => run.probability !== null);
  const worst = asked.reduce<RunChance | null>(
    (least, run) => (least === null || isWorse(run, least) ? run : least),
    null,
  );
  const byReason = Object.fromEntries([...tally.failed].sort());
  const failures = { count: samples - used.length, byReason };
  const name = worst === null ? '' : nameOf(moving.get(worst.id)!);
  return {
    failures,
    runs,
    fans: tally.fans.flatMap((fan) => fanOf(fan, used)),
    worstRun: worst?.id ?? null,
    causes: worst?.causes.slice(0, NAMED) ?? [],
    sentence: sentenceOf(worst, name, asked.length, failures, samples),
  };
}

/** Shares of the draws of each cause together, largest first. */
function causesOf(tally: Tally, { share, error }: Shares): CauseShare[] {
  const sums = new Map<CauseId, { share: number; variance: number }>();
  tally.list.draws.forEach(({ cause }, d) => {
    const sum = sums.get(cause) ?? { share: 0, variance: 0 };
    sums.set(cause, { share: sum.share + share[d]!, variance: sum.variance + error[d]! ** 2 });
  });
  return [...sums]
    .map(([cause, sum]) => ({
      cause,
      label: CAUSE_LABELS[cause],
      share: sum.share,
      error: Math.sqrt(sum.variance),
    }))
    .sort((a, b) => b.share - a.share);
}

/** What a run reaches as drawn, over what is asked [-]; infinite where nothing of the kind is. */
function reached(
  run: Pick<RunResult, 'requiredVelocity_ms' | 'requiredFlow_m3s' | 'velocity_ms' | 'flow_m3s'>,
) {
  const { requiredVelocity_ms, requiredFlow_m3s, velocity_ms, flow_m3s } = run;
  return {
    velocity: requiredVelocity_ms === null ? Infinity : (velocity_ms ?? 0) / requiredVelocity_ms,
    flow: requiredFlow_m3s === null ? Infinity : flow_m3s / requiredFlow_m3s,
  };
}

/** Which of the two that a run is asked for has less to spare. */
function tighter(run: RunResult): 'velocity' | 'flow' {
  const { velocity, flow } = reached(run);
  return velocity <= flow ? 'velocity' : 'flow';
}

function marginOf(run: RunChance): number {
  const { nominalVelocity_ms: velocity_ms, nominalFlow_m3s: flow_m3s } = run;
  const { velocity, flow } = reached({ ...run, velocity_ms, flow_m3s });
  return Math.min(velocity, flow);
}

const isWorse = (a: RunChance, b: RunChance): boolean =>
  a.probability === b.probability ? marginOf(a) < marginOf(b) : a.probability! < b.probability!;

/** What a person calls a run: by its own name, or by that of what it comes from. */
function nameOf({ compiled }: RunTally): string {
  const { run, from } = compiled;
  if (run.name !== undefined) return `the run "${run.name}" (${run.id})`;
  return `the run from ${from.thing.name ?? from.thing.id} (${run.id})`;
}

function fanOf(fan: FanTally, used: Int32Array): FanChance[] {
  const flow_m3s = bandOf(fan.flow_m3s, used);
  const staticPressure_Pa = bandOf(fan.staticPressure_Pa, used);
  const totalPressure_Pa = bandOf(fan.totalPressure_Pa, used);
  if (flow_m3s === null || staticPressure_Pa === null || totalPressure_Pa === null) return [];
  const step = Math.max(1, Math.ceil(used.length / CLOUD));
  const cloud = [];
  for (let i = 0; i < used.length; i += step) {
    const k = used[i]!;
    cloud.push({
      flow_m3s: fan.flow_m3s[k]!,
      staticPressure_Pa: fan.staticPressure_Pa[k]!,
      totalPressure_Pa: fan.totalPressure_Pa[k]!,
    });
  }
  return [{ id: fan.nominal.id, flow_m3s, staticPressure_Pa, totalPressure_Pa, cloud }];
}
