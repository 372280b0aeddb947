import { findingsOf } from '../checks/findings.ts';
import type { DocumentProblem } from '../document/problem.ts';
import type { Setting, ShopDocument } from '../document/schema.ts';
import { applySetting, findSetting, settingNames } from './apply-setting.ts';
import type { NetState } from './balance.ts';
import { compileShop } from './compile.ts';
import type { CompiledShop } from './compile.ts';
import { deviceResult, fanResult, nodeResults } from './device-results.ts';
import { carryDust } from './dust.ts';
import type { DustResult } from './dust.ts';
import { densityAt, marchElement, newMarch } from './march.ts';
import type { NetOutcome, PlanCache } from './newton.ts';
import { allOperatingPoints, fanReach, humpedFans } from './operating-points.ts';
import { REASONS } from './reasons.ts';
import type { Reason } from './reasons.ts';
import { runResult } from './run-results.ts';
import { settleFlow, solveStill } from './settle-flow.ts';
import type { OperatingPoint, SettingResult, Solution } from './solution.ts';
import { solvedNet } from './solved-net.ts';

/** A compiled document that can be solved again and again; each solve of a setting starts from its last. */
export interface Workbench {
  readonly shop: CompiledShop;
  readonly plans: PlanCache;
  /** Last state of each setting, by name. */
  readonly states: Map<string, NetState>;
}

export type Opened =
  | { readonly ok: true; readonly bench: Workbench }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

/**
 * Makes a document ready to be solved.
 *
 * @param before - the bench of the document before an edit; where the shop still hangs together the same way, its
 *   factor plans and last states are taken over, so that the next solve starts warm
 */
export function openShop(document: ShopDocument, before: Workbench | null = null): Opened {
  const compiled = compileShop(document);
  if (!compiled.ok) return compiled;
  const { shop } = compiled;
  if (before !== null && sameTopology(before.shop, shop)) {
    return { ok: true, bench: { shop, plans: before.plans, states: before.states } };
  }
  return { ok: true, bench: { shop, plans: new Map(), states: new Map() } };
}

/** Whether two shops join the same elements at the same nodes and junction legs, whatever their sizes. */
function sameTopology(a: CompiledShop, b: CompiledShop): boolean {
  const same = (p: ArrayLike<number>, q: ArrayLike<number>) =>
    p.length === q.length &&
    Array.prototype.every.call(p, (value: number, i: number) => Object.is(value, q[i]));
  const p = a.packed;
  const q = b.packed;
  return (
    p.nodeCount === q.nodeCount &&
    same(p.from, q.from) &&
    same(p.to, q.to) &&
    same(p.junctionFrom, q.junctionFrom) &&
    same(p.junctionTo, q.junctionTo) &&
    same(p.legFrom, q.legFrom) &&
    same(p.legTo, q.legTo) &&
    p.given_Pa.every((value, v) => Number.isNaN(value) === Number.isNaN(q.given_Pa[v]))
  );
}

export type Solved =
  | { readonly ok: true; readonly solution: Solution }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

/**
 * The heart: a document, and one of its settings or all of them, to the one result that everything reads.
 *
 * @param document - a shop that was read without problems
 * @param setting - name of a setting; null solves every setting
 */
export function solve(document: ShopDocument, setting: string | null = null): Solved {
  const opened = openShop(document);
  if (!opened.ok) return opened;
  if (setting !== null && findSetting(document, setting) === null) {
    const names = settingNames(document)
      .map((name) => `"${name}"`)
      .join(', ');
    return {
      ok: false,
      problems: [
        { path: 'settings', message: `no setting is named "${setting}"`, remedy: `name one of ${names}` },
      ],
    };
  }
  const names = setting === null ? settingNames(document) : [setting];
  const settings = names.map((name) => solveSetting(opened.bench, name));
  return { ok: true, solution: { document: document.name, air: opened.bench.shop.air, settings } };
}

/** Solves one setting of an opened shop. */
export function solveSetting(bench: Workbench, name: string): SettingResult {
  const { shop } = bench;
  const setting = findSetting(shop.document, name);
  if (setting === null) throw new RangeError(`no setting is named "${name}"`);
  applySetting(shop, setting);
  const solved = settle(bench, bench.states.get(name) ?? null);
  if ('reason' in solved) return refused(setting, solved);

  const { outcome, dust, points } = solved;
  const { state, balance } = outcome;
  bench.states.set(name, { flow_kgs: state.flow_kgs.slice(), pressure_Pa: state.pressure_Pa.slice() });
  const net = solvedNet(shop, state, balance);
  const result: SettingResult = {
    name,
    converged: true,
    reason: null,
    reasonText: null,
    iterations: outcome.iterations,
    massResidual: outcome.massResidual,
    pressureResidual_Pa: outcome.pressureResidual_Pa,
    fans: shop.fans.map((fan) => fanResult(net, fan, points.get(fan.element) ?? null)),
    runs: shop.runs.map((run) => runResult(net, run, dust.loads[run.element]!)),
    nodes: nodeResults(net),
    devices: shop.devices.map((device) => deviceResult(net, device, dust.catches[device.element] ?? null)),
    findings: [],
  };
  return { ...result, findings: findingsOf({ shop, setting, result, dust }) };
}

interface Settled {
  readonly outcome: Extract<NetOutcome, { converged: true }>;
  readonly dust: DustResult;
  readonly points: ReadonlyMap<number, readonly OperatingPoint[]>;
}

interface Refusal {
  readonly reason: Reason;
  /** Id of the element that the reason is about; null where it is the whole. */
  readonly where: string | null;
  readonly outcome: NetOutcome;
}

/** Flows closer than this are one operating point [-]. */
const SAME_POINT = 1e-6;

/** Flow, dust and operating points of the setting that was applied. */
function settle(bench: Workbench, warm: NetState | null): Settled | Refusal {
  const { shop, plans } = bench;
  const { packed } = shop;
  const flowing = settleFlow(shop, plans, warm);
  if (!flowing.converged) return failed(shop, flowing);
  let { outcome } = flowing;

  const points = new Map<number, readonly OperatingPoint[]>();
  // a hump lets a fan run at more than one flow; it starts from rest, so it stays at the first that holds
  for (const element of humpedFans(packed)) {
    if (outcome.state.flow_kgs[element] === 0) continue;
    const found = allOperatingPoints(packed, element, plans);
    if (found.length === 0) continue;
    points.set(
      element,
      found.map((f) => f.point),
    );
    const first = found.find((f) => f.point.stable);
    const now = outcome.state.flow_kgs[element]!;
    if (first === undefined || Math.abs(now - first.point.massFlow_kgs) <= SAME_POINT * Math.abs(now))
      continue;
    // air that pushes the fan back from rest keeps it there, whatever it could do once it ran
    if (now < 0 && !found[0]!.point.stable) continue;
    const again = solveStill(packed, { warm: first.state, plans });
    if (again.converged) outcome = again;
  }

  for (const { element, thing } of shop.fans) {
    const flow = outcome.state.flow_kgs[element]!;
    if (!outcome.activity.elements.includes(element)) continue;
    if (flow < 0) return { reason: 'fan-cannot-overcome', where: thing.id, outcome };
    const inlet = outcome.balance.endPressure(outcome.state, element, true);
    const density_kgm3 = densityAt(packed, inlet);
    if (fanReach(packed, element, flow / density_kgm3, density_kgm3) === 'beyond') {
      return { reason: 'beyond-fan-curve', where: thing.id, outcome };
    }
  }
  const march = newMarch();
  for (const e of outcome.activity.elements) {
    const m = outcome.state.flow_kgs[e]!;
    marchElement(packed, e, m, outcome.balance.endPressure(outcome.state, e, m >= 0), march);
    if (march.choked) return { reason: 'too-fast', where: packed.net.elements[e]!.id, outcome };
  }
  return { outcome, dust: carryDust(shop, outcome.state, outcome.activity.elements, true), points };
}

function failed(shop: CompiledShop, outcome: Extract<NetOutcome, { converged: false }>): Refusal {
  const element = shop.packed.net.elements[outcome.worstElement];
  return { reason: outcome.reason, where: element?.id ?? null, outcome };
}

function refused(setting: Setting, refusal: Refusal): SettingResult {
  const { reason, where, outcome } = refusal;
  const row = REASONS[reason];
  const place = where ?? 'shop';
  const reasonText = where === null ? row.text : `${where}: ${row.text}`;
  return {
    name: setting.name,
    converged: false,
    reason,
    reasonText,
    iterations: outcome.iterations,
    massResidual: outcome.massResidual,
    pressureResidual_Pa: outcome.pressureResidual_Pa,
    fans: [],
    runs: [],
    nodes: [],
    devices: [],
    findings: [{ severity: 'fault', code: reason, where: place, message: row.text, remedy: row.remedy }],
  };
}
