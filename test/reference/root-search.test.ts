import { describe, it } from 'vitest';
import { brentRoot, leastBetween } from '../../core/fan/root.ts';
import { against } from './ledger.ts';

const cubic = (x: number) => x ** 3 - 2 * x - 5;
/** Two peaks, the usual trial of root finders. */
const humps = (x: number) => 1 / ((x - 0.3) ** 2 + 0.01) + 1 / ((x - 0.9) ** 2 + 0.04) - 6;

/** Functions and figures stand in the open test program of another root finder, after Forsythe and others. */
describe('root', () => {
  const printed = against({
    relation: 'brentRoot',
    source: 'test functions of another root finder by the same method, roots printed to 9 or 11 digits',
    basis: 'independent-program',
    kind: 'value',
  });
  const triple = against({
    relation: 'brentRoot',
    source: 'triple root of sin x - x at zero, as near as its test program asks',
    basis: 'independent-program',
    kind: 'value',
  });
  const closed = against({
    relation: 'brentRoot',
    source: 'roots with a closed form: sqrt 2, ln 3, pi, a fifth root',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it.each([
    ['x^3 - 2 x - 5', cubic, 2, 3, 2.0945514815],
    ['cos x - x', (x: number) => Math.cos(x) - x, -1, 3, 0.739085133],
    ['humps', humps, 0.4, 1.6, 1.29954968],
  ] as const)('%s', (_, f, left, right, root) => {
    printed.within(brentRoot(f, left, right), root, 5e-9);
    printed.within(brentRoot(f, right, left), root, 5e-9);
  });

  it('sin x - x', () => {
    triple.withinAbsolute(
      brentRoot((x) => Math.sin(x) - x, -1, 3),
      0,
      1.2e-7,
    );
  });

  it.each([
    [(x: number) => x * x - 2, 0, 2, Math.SQRT2],
    [(x: number) => Math.exp(x) - 3, -5, 5, Math.log(3)],
    [Math.sin, 1, 6, Math.PI],
    [(x: number) => x ** 5 - 7, 0, 100, 7 ** 0.2],
    [(x: number) => 1 / x - 4, 1e-6, 1e6, 0.25],
  ] as const)('closed form %#', (f, left, right, root) => {
    closed.within(brentRoot(f, left, right), root, 1e-15);
  });
});

describe('least value', () => {
  const printed = against({
    relation: 'leastBetween',
    source:
      'test functions of another search, least values at printed places, as near as its test program asks',
    basis: 'independent-program',
    kind: 'value',
  });
  const sharp = against({
    relation: 'leastBetween',
    source: 'dips of straight lines at places known by hand',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it.each([
    ['x^3 - 2 x - 5', cubic, 0, 1, 0.816496593],
    ['its square', (x: number) => cubic(x) ** 2, 2, 3, 2.0945514815],
    ['(cos x - x)^2 - 2', (x: number) => (Math.cos(x) - x) ** 2 - 2, -1, 3, 0.739085133],
  ] as const)('%s', (_, f, left, right, place) => {
    printed.withinAbsolute(leastBetween(f, left, right), place, 1.2e-7);
  });

  it.each([
    [(x: number) => Math.abs(x - 0.3), 0, 1, 0.3],
    [(x: number) => Math.max(5 - 3 * x, x - 1), -2, 4, 1.5],
    [(x: number) => -x, 0, 1, 1],
  ] as const)('straight lines %#', (f, left, right, place) => {
    sharp.within(leastBetween(f, left, right), place, 1e-14);
  });
});
