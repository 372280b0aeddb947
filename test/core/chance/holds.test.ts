import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chanceSteps, howLikely } from '../../../core/chance/holds.ts';
import { DEFAULT_RANGES } from '../../../core/chance/ranges.ts';
import { readDocument } from '../../../core/document/read.ts';
import { solve, solveSetting } from '../../../core/network/solve.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import * as s from '../network/shop.ts';

const NO_RANGES = { fan: 0, friction: 0, coefficients: 0, separator: 0, filter: 0 };

/** One run from a hood through a cyclone and a filter to a fan; the air in it is asked for a velocity. */
function shop(ranges: s.Part | undefined, requiredVelocity: number, more: s.Part = {}): ShopDocument {
  return s.shopOf(
    [s.port('saw'), s.cyclone('sep', { bodyDiameter: 0.3 }), s.filter('bag'), s.STEADY_FAN, s.exhaust()],
    [
      s.run('R1', 'saw', 'sep', [s.straight(4)], { requiredVelocity }),
      s.run('R2', 'sep', 'bag', [s.straight(1)]),
      s.run('R3', 'bag', 'fan', [s.straight(1)]),
      s.run('R4', 'fan', 'out', [s.straight(1)]),
    ],
    { ...(ranges ? { ranges } : {}), ...more },
  );
}

const example = (id: string): ShopDocument => {
  const read = readDocument(readFileSync(`core/examples/${id}.json`, 'utf8'));
  if (!read.ok) throw new Error('an example cannot be read');
  return read.document;
};

const nominalVelocity = s.runOf(s.resultOf(shop(undefined, 1)), 'R1').velocity_ms!;

describe('how likely a shop holds', () => {
  it('is the same with the same seed, also from a bench that was used, and leaves that bench alone', () => {
    const document = example('one-router');
    const bench = s.benchOf(document);
    const before = solveSetting(bench, 'router');
    const first = howLikely(bench, { setting: 'router', samples: 200, seed: 5 });
    expect(howLikely(document, { setting: 'router', samples: 200, seed: 5 })).toEqual(first);
    expect(howLikely(document, { setting: 'router', samples: 200, seed: 6 })).not.toEqual(first);
    // the bench would come out otherwise in its last digits, had anything in it been moved
    const untouched = s.benchOf(document);
    solveSetting(untouched, 'router');
    expect(solveSetting(bench, 'router')).toEqual(solveSetting(untouched, 'router'));
    expect(before.converged).toBe(true);
  });

  it('is the same in pieces', () => {
    const document = shop(undefined, nominalVelocity);
    const steps = chanceSteps(document, { samples: 50 }, 20);
    const done = [];
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        expect(step.value).toEqual(howLikely(document, { samples: 50 }));
        break;
      }
      done.push(step.value);
    }
    expect(done).toEqual([20, 40]);
  });

  it('is 1 far below and 0 far above what the run reaches', () => {
    for (const [share, probability] of [
      [0.5, 1],
      [2, 0],
    ] as const) {
      const chance = howLikely(shop(undefined, share * nominalVelocity));
      const run = chance.runs.find((r) => r.id === 'R1')!;
      expect(run.probability).toBe(probability);
      // of 1000 cases without exception the rule of three allows 3 in 1000
      expect(run.probabilityError).toBeGreaterThan(0.0005);
      expect(run.probabilityError).toBeLessThan(0.003);
    }
  });

  it.each(['one-router', 'five-machines', 'bench-line'])(
    'is exactly the result as drawn where nothing may be off: %s',
    (id) => {
      const document = example(id);
      const solved = solve({ ...document, ranges: undefined });
      if (!solved.ok) throw new Error('not solved');
      const ranges = shop(NO_RANGES, 1).ranges!;
      for (const result of solved.solution.settings) {
        const chance = howLikely({ ...document, ranges }, { setting: result.name, samples: 20 });
        expect(chance.failures.count).toBe(0);
        result.runs.forEach((run, i) => {
          const own = chance.runs[i]!;
          expect(own.probability).toBe(run.holds === null ? null : run.holds ? 1 : 0);
          if (run.massFlow_kgs === 0) {
            expect(own.velocity_ms).toBeNull();
            return;
          }
          expect(own.velocity_ms).toEqual({
            low: run.velocity_ms,
            middle: run.velocity_ms,
            high: run.velocity_ms,
          });
          expect(own.flow_m3s!.middle).toBe(run.flow_m3s);
          expect(own.causes).toEqual([]);
          if (run.holds !== null) expect(own.probabilityError).toBe(0);
        });
        result.fans.forEach((fan, i) => {
          expect(chance.fans[i]!.flow_m3s.low).toBe(fan.flow_m3s);
          expect(chance.fans[i]!.totalPressure_Pa.high).toBe(fan.totalPressure_Pa);
        });
      }
    },
  );

  it('goes towards one in two as ranges widen, from either side', () => {
    for (const share of [0.97, 1.03]) {
      let before = share < 1 ? 1 : 0;
      for (const range of [0.01, 0.03, 0.06, 0.12, 0.25, 0.5, 1]) {
        const document = shop({ ...NO_RANGES, separator: range }, share * nominalVelocity);
        const { probability } = howLikely(document).runs.find((r) => r.id === 'R1')!;
        if (share < 1) {
          expect(probability).toBeLessThanOrEqual(before);
          expect(probability).toBeGreaterThan(0.5);
        } else {
          expect(probability).toBeGreaterThanOrEqual(before);
          expect(probability).toBeLessThan(0.5);
        }
        before = probability!;
      }
      expect(Math.abs(before - 0.5)).toBeLessThan(0.25);
    }
  });

  it('gives all of the spread to a single cause', () => {
    for (const [field, cause] of [
      ['fan', 'fan'],
      ['friction', 'friction'],
      ['coefficients', 'hoods'],
      ['separator', 'separator'],
      ['filter', 'filter'],
    ] as const) {
      const chance = howLikely(shop({ ...NO_RANGES, [field]: 0.1 }, nominalVelocity));
      const run = chance.runs.find((r) => r.id === 'R1')!;
      const share = run.causes.find((c) => c.cause === cause)!;
      expect(share.share).toBeGreaterThan(0.995);
      expect(share.share).toBeLessThanOrEqual(1);
      expect(run.explained).toBeGreaterThan(0.995);
      expect(chance.causes[0]!.cause).toBe(cause);
    }
  });

  it.each(['one-router', 'five-machines', 'bench-line'])('shares no more than there is: %s', (id) => {
    const chance = howLikely(example(id), { samples: 300 });
    const asked = chance.runs.filter((run) => run.probability !== null);
    expect(asked.length).toBeGreaterThan(0);
    for (const run of asked) {
      const sum = run.causes.reduce((all, cause) => all + cause.share, 0);
      expect(sum).toBeLessThanOrEqual(1 + 1e-12);
      expect(sum).toBeCloseTo(run.explained!, 12);
      expect(run.causes.map((c) => c.share)).toEqual(
        [...run.causes.map((c) => c.share)].sort((a, b) => b - a),
      );
    }
    expect(JSON.parse(JSON.stringify(chance))).toEqual(chance);
  });

  it('counts samples without a result as not held, and says so', () => {
    // a straight curve, cut off at a flow: where the shop runs it is the same curve
    const cutAt = (flow: number): ShopDocument => {
      const cut = s.fan([0, flow / 2, flow].map((q) => [q, 3000 - 8000 * q] as const));
      return s.shopOf(
        [s.port('saw', { hood: { kind: 'given', coefficient: 5 } }), cut, s.exhaust()],
        [s.run('R1', 'saw', 'fan', [s.straight(1)], { requiredVelocity: 1 }), s.run('R2', 'fan', 'out', [])],
        { ranges: { fan: 0.2, coefficients: 0.5 } },
      );
    };
    const flow = s.resultOf(cutAt(0.3)).fans[0]!.flow_m3s;
    // points may be left by a twentieth of their span; so this ends 1 % above where the fan runs
    const document = cutAt((1.01 * flow) / 1.05);
    const chance = howLikely(document);
    const { count, byReason } = chance.failures;
    expect(count).toBeGreaterThan(50);
    expect(byReason).toEqual({ 'beyond-fan-curve': count });
    // every other sample holds a velocity of 1 m/s
    expect(chance.runs[0]!.probability).toBe((1000 - count) / 1000);
    expect(chance.sentence).toContain(`In ${count} of 1000 cases there is no result`);
  });

  it('says nothing where the shop as drawn has no result', () => {
    const document = s.shopOf(
      [s.port('saw'), s.STEADY_FAN, s.exhaust()],
      [s.run('R1', 'saw', 'fan', [s.gate('G1', { opening: 0 })]), s.run('R2', 'fan', 'out', [s.straight(1)])],
    );
    const chance = howLikely(document);
    expect(chance.converged).toBe(false);
    expect(chance.reason).toBe('no-open-path');
    expect(chance.runs).toEqual([]);
    expect(chance.sentence).toContain('no open path');
  });

  it('takes what the document says before its own ranges, and names the basis of each', () => {
    const own = howLikely(shop(undefined, 20), { samples: 50 });
    expect(own.ranges.map((r) => r.cause)).toEqual(['fan', 'hoods', 'friction', 'separator', 'filter']);
    for (const range of own.ranges) {
      expect(range.given).toBe(false);
      expect(range.source).toBe(DEFAULT_RANGES[range.id].source);
    }
    const given = howLikely(shop({ filter: 0.07 }, 20), { samples: 50 }).ranges.filter(
      (r) => r.cause === 'filter',
    );
    expect(given.map((r) => [r.plusMinus, r.given])).toEqual([[0.07, true]]);
  });

  it.each([
    [{ samples: 9 }, /samples/],
    [{ samples: 1e6 }, /samples/],
    [{ samples: 20.5 }, /samples/],
    [{ samples: NaN }, /samples/],
    [{ seed: -1 }, /seed/],
    [{ setting: 'none' }, /none/],
  ])('refuses %o by name', (options, message) => {
    expect(() => howLikely(shop(undefined, 20), options)).toThrow(message);
  });
});
