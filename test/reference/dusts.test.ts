import { describe, expect, it } from 'vitest';
import { DUST_CLASSES } from '../../core/catalogue/dusts.ts';
import type { DustClassId } from '../../core/catalogue/dusts.ts';
import { requiredVelocity } from '../../core/conveying/required-velocity.ts';
import { lognormalCatch } from '../../core/separator/catch.ts';
import { against } from './ledger.ts';

// Spans that published sources give for each class [m/s]: ACGIH 2009 duct velocities, HSG258, ISO 19085-1, EN 12779,
// MDF association; foam has no source.
const SPANS: [DustClassId, number, number][] = [
  ['wood-chips', 17.8, 20.3],
  ['planer-shavings', 15, 20.3],
  ['sawdust-dry', 15, 20.3],
  ['sawdust-damp', 20, 28],
  ['sanding-dust', 12, 15.3],
  ['mdf-routing', 15, 20],
  ['very-light-dust', 12, 15.3],
  ['heavy-dust', 20, 25],
];

describe('dust classes', () => {
  const spans = against({
    relation: 'requiredVelocity',
    source: 'spans of ACGIH 2009, HSG258, ISO 19085-1, EN 12779 and an MDF association, each class',
    basis: 'from-memory',
    kind: 'value',
  });
  const higherEnd = against({
    relation: 'requiredVelocity',
    source: 'ACGIH, heavy dust from 20 to 23 m/s: a lift or a hose takes the higher end',
    basis: 'from-memory',
    kind: 'value',
  });

  it.each(SPANS)('%s needs between %f and %f m/s', (id, low, high) => {
    expect(DUST_CLASSES[id].requiredVelocity_ms).toBeGreaterThanOrEqual(low);
    expect(DUST_CLASSES[id].requiredVelocity_ms).toBeLessThanOrEqual(high);
    const velocity_ms = requiredVelocity(DUST_CLASSES[id]);
    spans.holds(low <= velocity_ms && velocity_ms <= high, 'within the span of each class');
  });

  it('a lift or a hose takes heavy dust to the higher end of ACGIH, from 20 to 23 m/s', () => {
    for (const steep of ['vertical', 'flexible-hose'] as const)
      higherEnd.withinAbsolute(requiredVelocity({ requiredVelocity_ms: 20 }, steep), 23, 5e-13, {
        unit: 'm/s',
      });
    higherEnd.holds(requiredVelocity({ requiredVelocity_ms: 20 }) === 20, 'a level run the lower end');
  });

  it('chips have the sieve shares of CNC-milled alder: 66 % above 1 mm and 4.5 % below 0.125 mm', () => {
    // Dzurenda and Banski, Ann. WULS 2023. The planning figure is for chips in general, hence the wide margins.
    const { medianSize_m, geometricDeviation } = DUST_CLASSES['wood-chips'];
    const size = { median_m: medianSize_m, geometricDeviation };
    expect(Math.abs(lognormalCatch((d) => (d > 1e-3 ? 1 : 0), size) - 0.66)).toBeLessThan(0.1);
    expect(Math.abs(lognormalCatch((d) => (d < 0.125e-3 ? 1 : 0), size) - 0.045)).toBeLessThan(0.02);
  });

  it('planer shavings have under 1 % below 0.125 mm and mostly 2-8 mm', () => {
    // Barcik and Gasparik, BioResources 9(1), 2014.
    const { medianSize_m, geometricDeviation } = DUST_CLASSES['planer-shavings'];
    const size = { median_m: medianSize_m, geometricDeviation };
    expect(lognormalCatch((d) => (d < 0.125e-3 ? 1 : 0), size)).toBeLessThan(0.01);
    expect(lognormalCatch((d) => (d > 2e-3 && d < 8e-3 ? 1 : 0), size)).toBeGreaterThan(0.5);
  });

  it('chips heap at the loose weights of Briggs, Table 7-2, 105-134 kg/m3', () => {
    expect(DUST_CLASSES['wood-chips'].bulkDensity_kgm3).toBeGreaterThanOrEqual(105);
    expect(DUST_CLASSES['wood-chips'].bulkDensity_kgm3).toBeLessThanOrEqual(134);
  });
});
