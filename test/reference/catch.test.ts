import { describe, it } from 'vitest';
import { lognormalCatch } from '../../core/separator/catch.ts';
import { barthGrade, theodoreDePaolaGrade } from '../../core/separator/efficiency.ts';
import { against } from './ledger.ts';

describe('catch of a lognormal feed', () => {
  const twoNormals = against({
    relation: 'lognormalCatch',
    source: 'closed form of a lognormal feed on a lognormal grade curve, a sum of two normals',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const secondMoment = against({
    relation: 'lognormalCatch',
    source: 'closed form of the mean square of a lognormal size, median^2 exp(2 sigma^2)',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const panels = against({
    relation: 'lognormalCatch',
    source: 'Gauss-Legendre panels over the curves of Lapple and Barth',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const size = { median_m: 50e-6, geometricDeviation: 3 };
  const sigma = Math.log(3);

  it('has the closed form of a grade curve that is itself a lognormal cumulative', () => {
    // eta(d) = P(ln d50 + s Z < ln d): the average over a lognormal feed is P of a sum of two normals.
    const [d50, s] = [10e-6, 0.5];
    const average = phi(Math.log(size.median_m / d50) / Math.hypot(sigma, s));
    twoNormals.withinAbsolute(
      lognormalCatch((d) => phi(Math.log(d / d50) / s), size),
      average,
      1e-6,
    );
  });

  it('has the closed form of a feed of fine dust on the tail of the curve', () => {
    // eta proportional to d^2 (d far below the cut): mean of d^2 is median^2 exp(2 sigma^2).
    const caught = lognormalCatch((d) => (d / 1) ** 2, { median_m: 1e-6, geometricDeviation: 2 });
    secondMoment.within(caught, 1e-12 * Math.exp(2 * Math.log(2) ** 2), 5e-10);
  });

  it.each([
    ['round Lapple curve', (d: number) => theodoreDePaolaGrade(d, 3.8e-6)],
    ['steep Barth curve', (d: number) => barthGrade(d, 4.82e-6)],
  ])('agrees with Gauss-Legendre panels on the %s to 1e-6', (_, grade) => {
    panels.withinAbsolute(lognormalCatch(grade, size), byPanels(grade, size.median_m, sigma), 1e-6);
  });
});

/** Normal cumulative by the series of erf (all terms of one sign), good to 1e-14 for |z| below 8. */
function phi(z: number): number {
  if (z < -8) return 0;
  if (z > 8) return 1;
  let term = z;
  let sum = z;
  for (let n = 1; n < 400; n++) sum += term *= (z * z) / (2 * n + 1);
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

/** The same integral by three-point Gauss-Legendre on 4000 panels over 9 deviations to each side. */
function byPanels(grade: (d: number) => number, median_m: number, sigma: number): number {
  const nodes = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
  const weights = [5 / 9, 8 / 9, 5 / 9];
  const half = 9 / 4000;
  let sum = 0;
  for (let panel = 0; panel < 4000; panel++) {
    const middle = -9 + (2 * panel + 1) * half;
    nodes.forEach((node, i) => {
      const z = middle + half * node;
      sum += weights[i]! * half * grade(median_m * Math.exp(sigma * z)) * Math.exp((-z * z) / 2);
    });
  }
  return sum / Math.sqrt(2 * Math.PI);
}
