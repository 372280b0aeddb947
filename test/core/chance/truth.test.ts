import { describe, expect, it } from 'vitest';
import { howLikely } from '../../../core/chance/holds.ts';
import type { RunChance } from '../../../core/chance/chance.ts';
import * as s from '../network/shop.ts';

/*
 * One run of corrugated hose from a hood to a vessel that is held at a suction. By Darcy and Weisbach, with constant
 * density and a friction factor that does not hang on flow, suction = (K + F) rho v^2 / 2 with F = f L / D, so
 *
 *   v = sqrt(2 suction / (rho (K + F)))
 *
 * in closed form. K and F are multiplied by exp(a z) and exp(b w), z and w normal and independent, so that every figure
 * of the chance is an integral over the plane, done here by the trapezoid rule, which for smooth functions under a
 * normal density is good to many digits.
 */
const SUCTION_Pa = 2000;
const DENSITY_kgm3 = 1.2;
const K = 0.8;
const OFF_K = 0.6;
const OFF_F = 0.4;

const shop = (requiredVelocity: number) =>
  s.shopOf(
    [
      s.port('hood', { hood: { kind: 'given', coefficient: K } }),
      { id: 'vessel', kind: 'pressure', pressure: -SUCTION_Pa },
    ],
    [s.run('R1', 'hood', 'vessel', [s.straight(2)], { material: 'hose-corrugated', requiredVelocity })],
    { ranges: { coefficients: OFF_K, friction: OFF_F } },
  );

const nominal = s.runOf(s.resultOf(shop(1)), 'R1');
/** Friction factor times length over diameter, from the ledger. */
const F = (nominal.pieces.find((piece) => piece.kind === 'straight')!.frictionFactor! * 2) / 0.1;

/** Plus or minus a share holds nineteen times in twenty: two standard deviations reach it. */
const [A, B] = [Math.log(1 + OFF_K) / 2, Math.log(1 + OFF_F) / 2];
const velocity = (z: number, w: number) =>
  Math.sqrt((2 * SUCTION_Pa) / (DENSITY_kgm3 * (K * Math.exp(A * z) + F * Math.exp(B * w))));

const STEP = 0.02;
const NODES = Array.from({ length: 701 }, (_, i) => -7 + STEP * i);
const WEIGHTS = NODES.map((x) => (STEP * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI));
const mean = (of: (x: number) => number) => NODES.reduce((sum, x, i) => sum + WEIGHTS[i]! * of(x), 0);

/** Everything at once: means over the plane, and the mean of the velocity given one of the two. */
const givenZ = NODES.map((z) => mean((w) => velocity(z, w)));
const givenW = NODES.map((w) => mean((z) => velocity(z, w)));
const over = (values: readonly number[], of: (value: number, x: number) => number) =>
  values.reduce((sum, value, i) => sum + WEIGHTS[i]! * of(value, NODES[i]!), 0);
const MEAN = over(givenZ, (v) => v);
const VARIANCE = mean((z) => mean((w) => (velocity(z, w) - MEAN) ** 2));
/** First-order shares V(E(v | x)) / V(v): Saltelli and others, Global Sensitivity Analysis, 2008 (from memory). */
const FIRST_ORDER = {
  hoods: over(givenZ, (v) => (v - MEAN) ** 2) / VARIANCE,
  friction: over(givenW, (v) => (v - MEAN) ** 2) / VARIANCE,
};
/** The part of them that is straight: squared correlation of the velocity with the draw. */
const STRAIGHT = {
  hoods: over(givenZ, (v, z) => v * z) ** 2 / VARIANCE,
  friction: over(givenW, (v, w) => v * w) ** 2 / VARIANCE,
};

/** Share of the plane where the velocity is at least `v`: for each z the friction that just allows it. */
function shareAbove(v: number): number {
  const room = (2 * SUCTION_Pa) / (DENSITY_kgm3 * v * v);
  return mean((z) => {
    const left = room - K * Math.exp(A * z);
    return left <= 0 ? 0 : below(Math.log(left / F) / B);
  });
}

/** Normal distribution function, by the trapezoid rule from far below. */
function below(x: number): number {
  if (x < -8) return 0;
  if (x > 8) return 1;
  const h = x / 400;
  let sum = 0;
  for (let i = 0; i <= 400; i++) sum += Math.exp(-((h * i) ** 2) / 2) * (i === 0 || i === 400 ? 0.5 : 1);
  return 0.5 + (h * sum) / Math.sqrt(2 * Math.PI);
}

function quantile(share: number): number {
  let [low, high] = [1, 200];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (1 - shareAbove(middle) < share) low = middle;
    else high = middle;
  }
  return low;
}

const SAMPLES = 4000;
const runOf = (required: number, seed: number): RunChance =>
  howLikely(shop(required), { samples: SAMPLES, seed }).runs[0]!;

describe('a run whose velocity has a closed form', () => {
  it('has that velocity as drawn', () => {
    expect(nominal.velocity_ms).toBeCloseTo(velocity(0, 0), 9);
    expect(F).toBeGreaterThan(0.5);
  });

  it.each([0.85, 0.95, 1, 1.05, 1.2])('holds %s of it as often as the integral says', (share) => {
    const required = share * velocity(0, 0);
    const truth = shareAbove(required);
    const error = Math.sqrt((truth * (1 - truth)) / SAMPLES);
    for (const seed of [1, 2, 3]) {
      const run = runOf(required, seed);
      // three standard errors of plain draws; the hypercube does better
      expect(Math.abs(run.probability! - truth)).toBeLessThan(3 * error);
      expect(run.probabilityError! / error).toBeGreaterThan(0.9);
      expect(run.probabilityError! / error).toBeLessThan(1.1);
    }
  });

  it('has the band of the integral', () => {
    for (const [key, share] of [
      ['low', 0.05],
      ['middle', 0.5],
      ['high', 0.95],
    ] as const) {
      const truth = quantile(share);
      const slope = (shareAbove(truth - 0.01) - shareAbove(truth + 0.01)) / 0.02;
      const error = Math.sqrt((share * (1 - share)) / SAMPLES) / slope;
      expect(Math.abs(runOf(20, 4).velocity_ms![key] - truth)).toBeLessThan(3 * error);
    }
  });

  it('is shared out as the integral says', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const run = runOf(20, seed);
      for (const cause of ['hoods', 'friction'] as const) {
        const { share, error } = run.causes.find((c) => c.cause === cause)!;
        expect(Math.abs(share - STRAIGHT[cause])).toBeLessThan(4 * error);
        // what is curved is left out, and said to be
        const missing = FIRST_ORDER[cause] - share;
        expect(missing).toBeGreaterThan(-4 * error);
        expect(missing).toBeLessThan(1 - run.explained! + 4 * error);
      }
      expect(run.explained).toBeGreaterThan(0.97);
    }
  });

  it('states errors of its shares that are those from seed to seed, within a factor of two', () => {
    const runs = Array.from(
      { length: 40 },
      (_, seed) => howLikely(shop(20), { samples: 200, seed }).runs[0]!,
    );
    const shares = runs.map((run) => run.causes.find((c) => c.cause === 'hoods')!);
    const middle = shares.reduce((sum, c) => sum + c.share / shares.length, 0);
    const scatter = Math.sqrt(shares.reduce((sum, c) => sum + (c.share - middle) ** 2 / shares.length, 0));
    const stated = shares.reduce((sum, c) => sum + c.error / shares.length, 0);
    expect(scatter / stated).toBeGreaterThan(0.5);
    expect(scatter / stated).toBeLessThan(2);
  });
});
