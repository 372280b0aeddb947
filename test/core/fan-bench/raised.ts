import type { BENCH_MESSAGES } from '../../../core/checks/bench-messages.ts';
import { benchFan } from '../../../core/fan-bench/bench.ts';
import type { Finding } from '../../../core/network/solution.ts';
import { behindPlate, design, KNOWN_FAN, shopWith } from './synthetic.ts';
import type { Part } from './synthetic.ts';

export const SEALED: Part = { id: 'S', kind: 'sealed-suction', suction: 3000, speed: 6500 };

/** A plate that reads what the known fan gives, or a share of it. */
export function plate(id: string, hole: number, more: Part = {}, share = 1): Part {
  const { suction_Pa } = behindPlate(KNOWN_FAN, hole, 0.6);
  return { id, kind: 'hole-plate', hole, suction: share * suction_Pa, speed: 6500, ...more };
}

export const PLATES = [0.03, 0.045, 0.06, 0.08].map((hole, i) => plate(`P${i}`, hole));

const raise =
  (readings: readonly Part[], more: Part = {}) =>
  () =>
    benchFan(shopWith([design(readings, more)]), 'F1', { samples: 20 });

/** A fan for every finding of the bench's table, and the place that it must name. */
export const BENCH_RAISED: Readonly<
  Record<keyof typeof BENCH_MESSAGES, readonly [() => { readonly findings: readonly Finding[] }, string]>
> = {
  'reading-left-out': [raise([SEALED, plate('P', 0.05, { box: 0.04 })]), 'F1'],
  'reading-astray': [raise([SEALED, ...PLATES, plate('P', 0.05, {}, 0.6)]), 'F1'],
  'fan-no-curve': [raise([]), 'F1'],
  'fan-shape-assumed': [raise([SEALED]), 'F1'],
  'fan-motor-impossible': [
    raise([SEALED], {
      motor: {
        kind: 'induction',
        frequency: 50,
        poles: 2,
        ratedPower: 750,
        ratedSpeed: 3600,
        ratedCurrent: 3,
        supply: 230,
        phases: 'single',
      },
    }),
    'F1',
  ],
  'caution-fan-tests': [raise([SEALED]), 'F1'],
};
