import type { DocumentProblem } from '../document/problem.ts';
import type { ShopDocument } from '../document/schema.ts';
import { impossibleField } from '../network/impossible-field.ts';
import { openShop } from '../network/solve.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { runMargin } from './conditions.ts';
import type { Watch } from './conditions.ts';
import { MOST_HOURS } from './hours.ts';
import { startState, stateLayout } from './layout.ts';
import type { StateLayout } from './layout.ts';
import { HOUR_s, marchHours } from './march.ts';
import type { Marched, Reached } from './march.ts';
import { NoFlow, Rates } from './rates.ts';
import type { SettingMoment } from './rates.ts';
import type { BinFull, SettingState, UpkeepPoint, UpkeepResult, UpkeepTotals } from './result.ts';
import { upkeepSentences } from './sentences.ts';
import { usageOf } from './usage.ts';
import type { Usage } from './usage.ts';

export type UpkeepOutcome =
  | { readonly ok: true; readonly result: UpkeepResult }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

const KWH_J = 3.6e6;

/**
 * Follows a shop through its running hours: dust is made, caught, and reaches the filter, whose cake slows the air, so
 * that the separator catches less; what comes due is cleaned or emptied.
 *
 * @param hours - running hours from now, with the cakes that the document gives [h]
 */
export function upkeep(document: ShopDocument, hours: number): UpkeepOutcome {
  if (!(hours > 0 && hours <= MOST_HOURS)) {
    const message = `hours: ${hours} is not a time that can be followed`;
    return { ok: false, problems: [{ path: 'hours', message, remedy: `give 1 to ${MOST_HOURS} hours` }] };
  }
  const opened = openShop(document);
  if (!opened.ok) return opened;
  let usage: Usage;
  try {
    usage = usageOf(document);
  } catch (error) {
    if (!(error instanceof ImpossibleInput)) throw error;
    return { ok: false, problems: [impossibleField(document, [], error)] };
  }
  const layout = stateLayout(opened.bench.shop);
  const rates = new Rates(opened.bench, layout, usage);
  try {
    const marched = marchHours(hours, startState(layout), { rates, layout, usage });
    return { ok: true, result: resultOf(document, hours, { marched, layout, usage, solves: rates.solves }) };
  } catch (error) {
    if (!(error instanceof NoFlow)) throw error;
    return { ok: false, problems: [{ path: '', message: error.message, remedy: error.remedy }] };
  }
}

interface Parts {
  readonly marched: Marched;
  readonly layout: StateLayout;
  readonly usage: Usage;
  readonly solves: number;
}

function resultOf(document: ShopDocument, asked_h: number, parts: Parts): UpkeepResult {
  const { marched, layout, usage, solves } = parts;
  const last = marched.points.at(-1)!;
  const { events } = marched;
  const result: Omit<UpkeepResult, 'sentences'> = {
    document: document.name,
    asked_h,
    reached_h: last.time_s / HOUR_s,
    stopped: marched.stopped,
    duty: usage.duty.map(({ setting, share }) => ({ setting: setting.name, share })),
    assumptions: usage.assumptions,
    timeline: marched.points.map((point) => pointOf(point, { layout, usage, watch: marched.watch })),
    events,
    firstClean: events.find(({ kind }) => kind === 'run-lost' || kind === 'filter-limit') ?? null,
    binsFull: binsFull(marched.points, layout, usage),
    totals: totalsOf(last, layout, usage),
    solves,
  };
  return { ...result, sentences: upkeepSentences(result, document.units) };
}

function pointOf(
  { time_s, state, moment }: Reached,
  { layout, usage, watch }: { layout: StateLayout; usage: Usage; watch: Watch },
): UpkeepPoint {
  return {
    time_h: time_s / HOUR_s,
    settings: moment.settings.map((setting) => settingState(setting, watch)),
    cake: layout.layers.map(({ device, layer, area_m2, cake }) => ({
      filter: device.thing.id,
      layer,
      load_kgm2: state[cake]! / area_m2,
    })),
    drops: layout.filters.map(({ device }, f) => ({
      filter: device.thing.id,
      drop_Pa: Math.max(...moment.settings.map(({ drops_Pa }) => drops_Pa[f]!)),
    })),
    bins: layout.separators.map(({ device, volume_m3, caught, heap }) => ({
      id: device.thing.id,
      filled: volume_m3 === null ? null : (state[heap]! / volume_m3) % usage.binFull,
      mass_kg: state[caught]!,
    })),
  };
}

/** When bins are full: the heap grows whatever is emptied, so a line between two states finds the time. */
function binsFull(points: readonly Reached[], layout: StateLayout, usage: Usage): BinFull[] {
  return layout.separators.flatMap(({ device, volume_m3, heap }) => {
    if (volume_m3 === null) return [];
    const full_m3 = usage.binFull * volume_m3;
    const after = points.findIndex(({ state }) => state[heap]! >= full_m3);
    if (after <= 0) return [];
    const [a, b] = [points[after - 1]!, points[after]!];
    const share = (full_m3 - a.state[heap]!) / (b.state[heap]! - a.state[heap]!);
    const first_h = (a.time_s + share * (b.time_s - a.time_s)) / HOUR_s;
    return [{ id: device.thing.id, first_h, times: Math.floor(points.at(-1)!.state[heap]! / full_m3) }];
  });
}

function settingState(moment: SettingMoment, watch: Watch): SettingState {
  const { name, flow_m3s, suction_Pa, power_W, runs } = moment;
  const asked = runs.filter((run) => run.holds !== null);
  let tightest: SettingState['tightest'] = null;
  for (const run of runs) {
    const margin = runMargin(run);
    if (margin === null || !watch.heldAtStart(run.id, name)) continue;
    if (tightest === null || margin < tightest.margin) tightest = { run: run.id, margin };
  }
  const held = asked.filter((run) => run.holds).length;
  return { name, flow_m3s, suction_Pa, power_W, tightest, held, asked: asked.length };
}

function totalsOf({ state, moment }: Reached, layout: StateLayout, usage: Usage): UpkeepTotals {
  const caught = layout.separators.map((slot) => ({
    id: slot.device.thing.id,
    mass_kg: state[slot.caught]!,
  }));
  const filtered = layout.filters.map((slot) => ({ id: slot.device.thing.id, mass_kg: state[slot.held]! }));
  const made_kg = state[layout.made]!;
  const passed_kg = state[layout.passed]!;
  const found = [...caught, ...filtered].reduce((sum, { mass_kg }) => sum + mass_kg, passed_kg);
  const energy_J = moment.settings.some(({ power_W }) => power_W === null) ? null : state[layout.energy]!;
  const price = usage.electricityPrice;
  return {
    made_kg,
    caught,
    filtered,
    passed_kg,
    imbalance: made_kg > 0 ? (made_kg - found) / made_kg : 0,
    energy_J,
    cost: energy_J === null || price === null ? null : (energy_J / KWH_J) * price,
  };
}
