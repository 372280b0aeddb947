import { describe, it } from 'vitest';
import { butterflyCoefficient, slideGateCoefficient } from '../../core/fittings/gate.ts';
import { against } from './ledger.ts';

describe('slide gate', () => {
  const printed = against({
    relation: 'slideGateCoefficient',
    source: 'Idelchik diagram 9-5, circular cross-section',
    basis: 'published',
    kind: 'value',
  });
  const jets = against({
    relation: 'slideGateCoefficient',
    source: 'jets through the crescent that contract to 0.55 and to 0.75 of it and mix out',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const open = against({
    relation: 'slideGateCoefficient',
    source: 'a fully open gate loses 0 to 0.06',
    basis: 'common-practice',
    kind: 'limit',
  });

  // Idelchik diagram 9-5, circular cross-section; page read.
  it.each([
    [0.2, 35],
    [0.3, 10],
    [0.4, 4.6],
    [0.5, 2.06],
    [0.6, 0.98],
    [0.7, 0.44],
    [0.8, 0.17],
    [0.9, 0.06],
  ])('printed value at %f open', (opening, k) => {
    printed.within(slideGateCoefficient(opening).k, k, 1e-12);
  });

  // Second route: a round-ended blade, moved by h, leaves a crescent: the duct less the lens of two equal circles whose
  // centres are h apart. Idelchik prints its share of the duct beside the coefficients (from memory): 0.25 0.38 0.50 0.61
  // 0.71 0.81 at h/D 0.2 to 0.7. The jet contracts to 0.55 to 0.75 of it and mixes out: K = (1/(Cc s) - 1)^2. Both the
  // printed values and what stands below them must lie between the two.
  it.each([0.001, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7])(
    'lies between two jets that mix out at %f',
    (h) => {
      const share = 1 - (2 / Math.PI) * (Math.acos(h) - h * Math.sqrt(1 - h * h));
      const { k } = slideGateCoefficient(h);
      jets.holds(k < (1 / (0.55 * share) - 1) ** 2, 'below the narrower jet');
      jets.holds(k > (1 / (0.75 * share) - 1) ** 2, 'above the wider one');
    },
  );

  // common practice, no source: a fully open gate loses 0 to 0.06.
  it('loses next to nothing when fully open', () => {
    open.holds(slideGateCoefficient(1).k < 0.06, 'less than that');
  });
});

describe('butterfly', () => {
  const printed = against({
    relation: 'butterflyCoefficient',
    source: 'ASHRAE round butterfly',
    basis: 'from-memory',
    kind: 'value',
  });

  // ASHRAE round butterfly, from memory.
  it.each([
    [0, 0.2],
    [10, 0.52],
    [20, 1.5],
    [30, 4.5],
    [40, 11],
    [50, 29],
    [60, 108],
  ])('printed value at %f degrees', (angle, k) => {
    printed.within(butterflyCoefficient((angle * Math.PI) / 180).k, k, 1e-9);
  });
});
