import { filterDrop } from '../filter/media.ts';
import { applySetting } from '../network/apply-setting.ts';
import type { NetState } from '../network/balance.ts';
import type { CompiledDevice } from '../network/compile.ts';
import { fanResult } from '../network/device-results.ts';
import { densityAt } from '../network/march.ts';
import { runResult } from '../network/run-results.ts';
import { settleFlow } from '../network/settle-flow.ts';
import type { SettledFlow } from '../network/settle-flow.ts';
import { solvedNet } from '../network/solved-net.ts';
import type { RunResult } from '../network/solution.ts';
import { REASONS } from '../network/reasons.ts';
import type { Workbench } from '../network/solve.ts';
import type { StateLayout } from './layout.ts';
import type { Usage } from './usage.ts';

/** One setting at one state of filters and bins. */
export interface SettingMoment {
  readonly name: string;
  readonly flow_m3s: number;
  readonly suction_Pa: number;
  readonly power_W: number | null;
  readonly runs: readonly RunResult[];
  /** Drop of each filter device, in the order of the layout [Pa]. */
  readonly drops_Pa: readonly number[];
  /** Of its layers, the largest drop over the one at which to clean [-]. */
  readonly limitShares: readonly number[];
}

/** Rates of change of a state [per s], with what the shop does at it. */
export interface Moment {
  readonly rates: Float64Array;
  readonly settings: readonly SettingMoment[];
}

/** Raised where the shop has no solution at a state; carries the reason in words. */
export class NoFlow extends Error {
  override readonly name = 'NoFlow';

  constructor(
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}

/** Things at which air leaves the shop, and dust with it. */
const OPEN_ENDS: ReadonlySet<string> = new Set(['exhaust', 'port', 'leak', 'pressure']);

/**
 * Solves the whole shop again and again at states of its filters: every setting in use, each started from its last
 * solution, weighted by its share of the running hours.
 */
export class Rates {
  /** Solutions of single settings so far. */
  solves = 0;
  private readonly warm = new Map<string, NetState>();

  constructor(
    private readonly bench: Workbench,
    private readonly layout: StateLayout,
    private readonly usage: Usage,
  ) {}

  /** @param withRuns - whether what each run does is wanted; inside a step it is not */
  at(state: Float64Array, withRuns = true): Moment {
    const rates = new Float64Array(this.layout.size);
    this.putCakes(state);
    const settings = this.usage.duty.map(({ setting, share }): SettingMoment => {
      const { shop, plans } = this.bench;
      applySetting(shop, setting);
      this.solves++;
      const settled = settleFlow(shop, plans, this.warm.get(setting.name) ?? null);
      if (!settled.converged) {
        const row = REASONS[settled.reason];
        throw new NoFlow(`no solution in setting "${setting.name}": ${row.text}`, row.remedy);
      }
      const { flow_kgs, pressure_Pa } = settled.outcome.state;
      this.warm.set(setting.name, { flow_kgs: flow_kgs.slice(), pressure_Pa: pressure_Pa.slice() });
      const moment = this.momentOf(setting.name, settled, withRuns);
      this.addRates(rates, share, settled, moment);
      return moment;
    });
    return { rates, settings };
  }

  /** Writes the resistance of each layer with its cake into the net; the law is linear in face velocity. */
  private putCakes(state: Float64Array): void {
    const { packed } = this.bench.shop;
    for (const { device, layer, segment, area_m2, cake } of this.layout.layers) {
      if (device.built.kind !== 'filter') continue;
      const { medium } = device.built.layers[layer]!;
      const load_kgm2 = Math.max(0, state[cake]!) / area_m2;
      const resistance = filterDrop({ ...medium, load_kgm2, faceVelocity_ms: 1 }) / area_m2;
      packed.forward[segment] = resistance;
      packed.backward[segment] = resistance;
    }
  }

  private momentOf(name: string, { outcome, dust }: SettledFlow, withRuns: boolean): SettingMoment {
    const { shop } = this.bench;
    const net = solvedNet(shop, outcome.state, outcome.balance);
    const fans = shop.fans.map((fan) => fanResult(net, fan, null));
    const powers = fans.map((fan) =>
      fan.drive
        ? fan.drive.inputPower_W
        : fan.power_W === null
          ? null
          : fan.power_W / this.usage.motorEfficiency,
    );
    const first = shop.fans[0];
    return {
      name,
      flow_m3s: fans[0]?.flow_m3s ?? 0,
      suction_Pa: first ? -outcome.balance.endPressure(outcome.state, first.element, true) : 0,
      power_W: powers.some((power) => power === null) ? null : powers.reduce<number>((sum, p) => sum + p!, 0),
      runs: withRuns ? shop.runs.map((run) => runResult(net, run, dust.loads[run.element]!)) : [],
      drops_Pa: this.layout.filters.map(({ device: { element } }) =>
        Math.abs(
          outcome.balance.endPressure(outcome.state, element, true) -
            outcome.balance.endPressure(outcome.state, element, false),
        ),
      ),
      limitShares: this.layout.filters.map(({ device }) => this.limitShare(device, outcome)),
    };
  }

  private limitShare(device: CompiledDevice, { state, balance }: SettledFlow['outcome']): number {
    const { packed } = this.bench.shop;
    const flow_m3s =
      Math.abs(state.flow_kgs[device.element]!) /
      densityAt(packed, balance.endPressure(state, device.element, true));
    return Math.max(
      0,
      ...this.layout.layers.flatMap((slot) =>
        slot.device === device && device.built.kind === 'filter'
          ? [
              (packed.forward[slot.segment]! * flow_m3s) /
                device.built.layers[slot.layer]!.medium.changeAtPressure_Pa,
            ]
          : [],
      ),
    );
  }

  private addRates(rates: Float64Array, share: number, settled: SettledFlow, moment: SettingMoment): void {
    const { shop } = this.bench;
    const { dust, outcome } = settled;
    const add = (place: number, rate: number, during = share * this.usage.cuttingShare) =>
      (rates[place] = rates[place]! + during * rate);
    for (const { device, caught, heap } of this.layout.separators) {
      const got = dust.catches[device.element];
      if (!got) continue;
      add(caught, got.dustIn_kgs * (got.catchShare ?? 0));
      add(heap, got.heap_m3s);
    }
    for (const { device, held } of this.layout.filters) {
      let left = dust.catches[device.element]?.dustIn_kgs ?? 0;
      const arriving = left;
      for (const slot of this.layout.layers) {
        if (slot.device !== device || device.built.kind !== 'filter') continue;
        const passing = left * device.built.layers[slot.layer]!.medium.passedShare;
        add(slot.cake, left - passing);
        left = passing;
      }
      add(held, arriving - left);
    }
    for (const { element, from, to } of shop.runs) {
      const m = outcome.state.flow_kgs[element]!;
      if (m === 0) continue;
      const { dust_kgs, filtered_kgs } = dust.loads[element]!;
      const rate = dust_kgs + filtered_kgs;
      if ((m > 0 ? from : to).thing.kind === 'port') add(this.layout.made, rate);
      if (OPEN_ENDS.has((m > 0 ? to : from).thing.kind)) add(this.layout.passed, rate);
    }
    if (moment.power_W !== null) add(this.layout.energy, moment.power_W, share);
  }
}
