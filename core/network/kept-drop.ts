import { TURBULENT_ABOVE } from '../duct/friction.ts';
import { KEPT, NEAR } from './kept-friction.ts';
import { marchSegment } from './march.ts';
import type { March } from './march.ts';
import { FRICTION } from './net.ts';
import { KEPT_DROP } from './packed.ts';
import type { PackedNet } from './packed.ts';

/** Forgets the drops of elements whose coefficients or dust were changed since, and names those elements. */
export function forgetChanged(packed: PackedNet): number[] {
  const { segmentStart, forward, backward, solids_kgs, elementCount, keptDrops: kept } = packed;
  const changedElements: number[] = [];
  let s = 0;
  for (let e = 0; e < elementCount; e++) {
    let changed = false;
    if (solids_kgs[e] !== kept.solids_kgs[e]) {
      kept.solids_kgs[e] = solids_kgs[e]!;
      changed = true;
    }
    for (const last = segmentStart[e + 1]!; s < last; s++) {
      if (forward[s] === kept.forward[s] && backward[s] === kept.backward[s]) continue;
      kept.forward[s] = forward[s]!;
      kept.backward[s] = backward[s]!;
      changed = true;
    }
    if (!changed) continue;
    kept.values[KEPT_DROP * e] = 0;
    changedElements.push(e);
  }
  return changedElements;
}

/**
 * Keeps the drop of total pressure along an element near one flow, so that the solver needs no march there. For air of
 * constant density only; an element that carries dust, or whose friction is not turbulent, keeps nothing.
 *
 * The drop of a segment goes with `m^a`, its exponent `a = d ln D / du` changing by `a'` and `a''` with `u = ln m`. The
 * march gives `a`; only Colebrook-White has the others, which `keptFriction` knows. The derivatives by `u` are
 * `d1 = a D`, `d2 = (a^2 + a') D`, `d3 = (a^3 + 3 a a' + a'') D`, `d4 = (a^4 + 6 a^2 a' + 3 a'^2 + 4 a a'') D`, those by
 * `x = m/m0 - 1` are `d1`, `d2 - d1`, `d3 - 3 d2 + 2 d1`, `d4 - 6 d3 + 11 d2 - 6 d1`; good to 1e-13 within `NEAR`.
 *
 * @param packed - network
 * @param e - element
 * @param flow_kgs - signed mass flow to keep it at [kg/s]
 * @param march - work space
 */
export function keepDrop(packed: PackedNet, e: number, flow_kgs: number, march: March): void {
  const { values } = packed.keptDrops;
  const own = KEPT_DROP * e;
  values[own] = 0;
  const m = Math.abs(flow_kgs);
  if (m === 0 || packed.solids_kgs[e]! > 0) return;
  march.total_Pa = 0;
  march.byFlow = 0;
  march.byInlet = 1;
  let first = 0;
  let second = 0;
  let third = 0;
  let fourth = 0;
  for (let s = packed.segmentStart[e]!; s < packed.segmentStart[e + 1]!; s++) {
    const totalBefore_Pa = march.total_Pa;
    const slopeBefore = march.byFlow;
    const at = KEPT * s;
    packed.keptFriction[at] = 0; // friction is solved anew, so that its derivatives stand at this flow
    marchSegment(packed, s, m, flow_kgs < 0, march);
    const drop = totalBefore_Pa - march.total_Pa;
    if (drop === 0) continue;
    let bend = 0;
    let twist = 0;
    if (packed.type[s] === FRICTION && packed.fixedFriction[s]! < 0) {
      if (packed.keptFriction[at]! * (1 - NEAR) <= TURBULENT_ABOVE) return;
      bend = packed.keptFriction[at + 3]!;
      twist = packed.keptFriction[at + 4]!;
    }
    const byFlow = (slopeBefore - march.byFlow) * m;
    const a = byFlow / drop;
    const d2 = (a * a + bend) * drop;
    const d3 = (a * (a * a + 3 * bend) + twist) * drop;
    const d4 = (a * (a * (a * a + 6 * bend) + 4 * twist) + 3 * bend * bend) * drop;
    first += byFlow;
    second += d2 - byFlow;
    third += d3 - 3 * d2 + 2 * byFlow;
    fourth += d4 - 6 * d3 + 11 * d2 - 6 * byFlow;
  }
  const sign = flow_kgs < 0 ? -1 : 1;
  values[own + 1] = -sign * march.total_Pa;
  values[own + 2] = sign * first;
  values[own + 3] = (sign * second) / 2;
  values[own + 4] = (sign * third) / 6;
  values[own + 5] = (sign * fourth) / 24;
  values[own] = 1 / flow_kgs;
}
