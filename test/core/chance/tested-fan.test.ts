import { describe, expect, it } from 'vitest';
import { howLikely } from '../../../core/chance/holds.ts';
import type { Chance } from '../../../core/chance/chance.ts';
import { benchFan } from '../../../core/fan-bench/bench.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { behindPlate, design, KNOWN_FAN } from '../fan-bench/synthetic.ts';
import * as s from '../network/shop.ts';

const SEALED: s.Part = { id: 'S', kind: 'sealed-suction', suction: 3000, speed: 6500 };
const plate = (hole: number): s.Part => ({
  id: `P${Math.round(1000 * hole)}`,
  kind: 'hole-plate',
  hole,
  suction: behindPlate(KNOWN_FAN, hole, 0.6).suction_Pa,
  speed: 6500,
});
const PLATES = [0.03, 0.045, 0.06, 0.08].map(plate);
const NO_MORE = { friction: 0, coefficients: 0, separator: 0, filter: 0 };

const MOTOR: s.Part = {
  kind: 'brushless',
  speedConstant: 250,
  resistance: 0.08,
  noLoadCurrent: 1.5,
  supply: 36,
};

/** A duct on a fan that stands for a tested one. */
function shop(readings: readonly s.Part[], ranges: s.Part, more: s.Part = {}): ShopDocument {
  return s.shopOf(
    [s.port('saw'), { ...s.STEADY_FAN, design: 'F1' }, s.exhaust()],
    [
      s.run('R1', 'saw', 'fan', [s.straight(4)], { requiredVelocity: 20 }),
      s.run('R2', 'fan', 'out', [s.straight(1)]),
    ],
    { fans: [design(readings, more)], ranges },
  );
}

const width = (chance: Chance) => {
  const { low, high } = chance.runs[0]!.velocity_ms!;
  return high - low;
};

describe('a fan with tests', () => {
  it('brings the spread of its tests, and no range of its own', () => {
    const document = shop([SEALED, ...PLATES], NO_MORE);
    const chance = howLikely(document);
    expect(
      chance.ranges.map((r) => [r.id, r.plusMinus]).filter(([id]) => String(id).startsWith('fan')),
    ).toEqual([['fan-tests', null]]);
    expect(chance.causes.map((c) => c.cause)).toEqual(['fan']);
    expect(chance.causes[0]!.share).toBeGreaterThan(0.8);
    // the range of fans without tests is none of its business
    expect(howLikely(shop([SEALED, ...PLATES], { ...NO_MORE, fan: 0.5 })).runs).toEqual(chance.runs);
  });

  it('runs on curves that lie in the band of its bench', () => {
    const document = shop([SEALED, ...PLATES], NO_MORE);
    const chance = howLikely(document);
    const { curve } = benchFan(document, 'F1');
    const points = curve!.points;
    let outside = 0;
    const { cloud } = chance.fans[0]!;
    for (const { flow_m3s, staticPressure_Pa } of cloud) {
      const i = Math.max(
        1,
        points.findIndex((point) => point.flow_m3s > flow_m3s),
      );
      const [a, b] = [points[i - 1]!, points[i]!];
      const t = (flow_m3s - a.flow_m3s) / (b.flow_m3s - a.flow_m3s);
      const low = a.low_Pa + t * (b.low_Pa - a.low_Pa);
      const high = a.high_Pa + t * (b.high_Pa - a.high_Pa);
      if (staticPressure_Pa < low || staticPressure_Pa > high) outside++;
    }
    // nine in ten lie in it; of 200 cases fewer than 24 are outside but once in a thousand times, and it is not wider
    expect(cloud.length).toBe(200);
    expect(outside).toBeLessThan(35);
    expect(outside).toBeGreaterThan(5);
  });

  it('is surer with plates of about the flow at which it runs', () => {
    // the widest pass about what the duct passes; a small one tells of flows near none, which is of no use here
    const nearest = [...PLATES].reverse();
    const widths = [0, 2, 4].map((n) => width(howLikely(shop([SEALED, ...nearest.slice(0, n)], NO_MORE))));
    expect(widths[1]).toBeLessThan(widths[0]!);
    expect(widths[2]).toBeLessThan(widths[1]!);
  });

  it('runs on a motor whose speed gives way, in every sample', () => {
    const power = PLATES.map((reading) => ({ ...reading, voltage: 36, current: 18 }));
    const document = shop(
      [{ ...SEALED, voltage: 36, current: 12 }, ...power],
      { ...NO_MORE, coefficients: 0.5 },
      {
        motor: MOTOR,
      },
    );
    const nominal = s.resultOf(document);
    const chance = howLikely(document, { samples: 200 });
    expect(nominal.fans[0]!.drive).not.toBeNull();
    expect(chance.failures.count).toBe(0);
    expect(chance.causes.map((c) => c.cause)).toEqual(expect.arrayContaining(['fan', 'hoods']));
    const { low, middle, high } = chance.fans[0]!.flow_m3s;
    expect(low).toBeLessThan(nominal.fans[0]!.flow_m3s);
    expect(high).toBeGreaterThan(nominal.fans[0]!.flow_m3s);
    expect(middle / nominal.fans[0]!.flow_m3s).toBeGreaterThan(0.97);
    expect(middle / nominal.fans[0]!.flow_m3s).toBeLessThan(1.03);
    expect(howLikely(document, { samples: 200 })).toEqual(chance);
  });
});
