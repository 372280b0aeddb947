import { MIXING_KINDS } from '../document/ends.ts';
import type { FilterLayer } from '../network/compile-devices.ts';
import { FRICTION } from '../network/net.ts';
import type { RunResult, SettingResult } from '../network/solution.ts';
import type { FanSpread } from './fan-spread.ts';
import type { OwnShop } from './own-shop.ts';
import { DEFAULT_RANGES, givenRange, modelSpread, plusMinusOf, spreadOf } from './ranges.ts';
import type { CauseId, RangeId, UsedRange } from './ranges.ts';

/** One thing that may be off, drawn once in each sample. */
export interface Draw {
  readonly key: string;
  readonly cause: CauseId;
  /** Standard deviation of the logarithm of its factor [-]; unused where whole curves are drawn. */
  readonly spread: number;
  /** Element of the fan whose pressure it moves; null where it moves coefficients. */
  readonly fan: number | null;
  /** Curves of that fan to draw from; null where its pressure is multiplied. */
  readonly curves: FanSpread['curves'];
}

/** What a draw does to a segment: it adds this times its factor less one. */
export interface Effect {
  readonly draw: number;
  readonly segment: number;
  readonly forward: number;
  readonly backward: number;
}

export interface DrawList {
  readonly draws: readonly Draw[];
  readonly effects: readonly Effect[];
  readonly ranges: readonly UsedRange[];
}

/**
 * What is drawn in a shop, and what each draw moves.
 *
 * Fittings and wall friction are drawn once for each kind, not for each piece: their figures come from one table or
 * formula each, and where that is off it is off for all of them, so that errors do not cancel along a run. That makes
 * the spread rather too wide than too narrow. Hoods, leaks, readings, separators and filters are each one of its own.
 *
 * @param own - copy of the shop, with the setting applied
 * @param nominal - its result as drawn
 */
export function listDraws(own: OwnShop, nominal: SettingResult, fans: readonly FanSpread[]): DrawList {
  const { shop, junctionEnds } = own;
  const { packed, document } = shop;
  const draws: Draw[] = [];
  const effects: Effect[] = [];
  const ranges: UsedRange[] = [];
  const byKey = new Map<string, number>();

  /** Number of a draw, made where it is new; -1 where nothing is spread. */
  const drawOf = (key: string, id: RangeId, where: string | null, models?: number): number => {
    const before = byKey.get(key);
    if (before !== undefined) return before;
    const row = DEFAULT_RANGES[id];
    const given = givenRange(document, id);
    const spread = given === null ? (models ?? spreadOf(row.plusMinus ?? 0)) : spreadOf(given);
    const { label, cause } = row;
    const used: UsedRange = {
      ...{ id, label, cause, where, plusMinus: given ?? row.plusMinus ?? plusMinusOf(spread) },
      given: given !== null,
      source: given === null ? row.source : 'ranges of the document',
      basis: given === null ? row.basis : 'measured-by-user',
    };
    if (!ranges.some((r) => r.id === id && r.where === where)) ranges.push(used);
    const number = spread > 0 ? draws.push({ key, cause, spread, fan: null, curves: null }) - 1 : -1;
    byKey.set(key, number);
    return number;
  };
  const move = (
    segment: number,
    key: string,
    id: RangeId,
    where: string | null,
    share = 1,
    models?: number,
  ) => {
    const forward = packed.forward[segment]!;
    const backward = packed.backward[segment]!;
    if (share === 0 || (forward === 0 && backward === 0)) return;
    const draw = drawOf(key, id, where, models);
    if (draw >= 0) effects.push({ draw, segment, forward: share * forward, backward: share * backward });
  };

  for (const { fan, element, curves } of fans) {
    if (curves === null) {
      const draw = drawOf(`fan ${fan}`, 'fan', fan);
      if (draw >= 0) draws[draw] = { ...draws[draw]!, fan: element };
      continue;
    }
    const { plusMinus, label, cause, source, basis } = DEFAULT_RANGES['fan-tests'];
    ranges.push({ id: 'fan-tests', label, cause, where: fan, plusMinus, given: false, source, basis });
    draws.push({ key: `fan ${fan}`, cause, spread: 0, fan: element, curves });
  }

  shop.runs.forEach((run, i) => {
    // where nothing moves as drawn, nothing moves in any sample
    if (nominal.runs[i]!.massFlow_kgs === 0) return;
    let segment = packed.segmentStart[run.element]!;
    for (const { id, kind, share, segments } of run.pieces) {
      for (let k = 0; k < segments; k++, segment++) {
        if (packed.type[segment] === FRICTION) {
          const hose = share === 'hose';
          move(segment, hose ? 'hose' : 'duct', hose ? 'hose-friction' : 'duct-friction', null);
        } else if (kind === 'leak') move(segment, `leak ${id}`, 'leaks', id);
        else if (kind === 'hood') move(segment, `hood ${id}`, 'hoods', id);
        else if (kind === 'measured') move(segment, `reading ${id}`, 'reading', id);
        // air that leaves an open end loses just what it carries: nothing there is off
        else if (kind !== 'exhaust' || packed.forward[segment] !== 1)
          move(segment, `kind ${kind}`, 'fittings', null);
      }
    }
  });
  for (const { run, atStart, segment } of junctionEnds) {
    const result = nominal.runs[run]!;
    const loss = junctionLoss(result, atStart);
    const draw = loss === null ? -1 : drawOf('kind junction', 'fittings', null);
    if (loss === null || draw < 0) continue;
    // the loss is that of the flow as drawn, in its direction
    const [forward, backward] = result.massFlow_kgs > 0 ? [loss, 0] : [0, loss];
    effects.push({ draw, segment, forward, backward });
  }
  shop.devices.forEach((device, i) => {
    const result = nominal.devices[i]!;
    if (result.flow_m3s === 0) return;
    const segment = packed.segmentStart[device.element]!;
    const { id } = device.thing;
    const { built } = device;
    if (built.kind === 'filter') {
      const cake = cakeShare(built.layers);
      move(segment, `clean ${id}`, 'filter-clean', id, 1 - cake);
      move(segment, `cake ${id}`, 'filter-cake', id, cake);
    } else if (built.model === 'measured') move(segment, `separator ${id}`, 'separator-reading', id);
    else if (built.kind === 'bin') move(segment, `separator ${id}`, 'bin', id);
    else {
      const { [built.model]: chosen, ...others } = result.lossByModel_Pa ?? {};
      const spread = chosen !== undefined && chosen > 0 ? modelSpread(chosen, Object.values(others)) : 0;
      move(segment, `separator ${id}`, 'cyclone-models', id, 1, spread);
    }
  });
  return { draws, effects, ranges };
}

/** Coefficient of what a run loses to the streams that it meets, on its own velocity; null where it is their main. */
function junctionLoss(run: RunResult, atStart: boolean): number | null {
  const piece = atStart ? run.pieces[0] : run.pieces.at(-1);
  const isJunction = piece !== undefined && (MIXING_KINDS as ReadonlySet<string>).has(piece.kind);
  return isJunction ? piece.coefficient : null;
}

/** Part of a filter's resistance that is its cake [-]. */
function cakeShare(layers: readonly FilterLayer[]): number {
  let clean = 0;
  let cake = 0;
  for (const { medium, area_m2, load_kgm2 } of layers) {
    clean += medium.drag_Pasm / area_m2;
    cake += (medium.cakeResistance_pers * load_kgm2) / area_m2;
  }
  return clean + cake > 0 ? cake / (clean + cake) : 0;
}
