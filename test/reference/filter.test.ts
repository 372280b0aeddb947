import { describe, expect, it } from 'vitest';
import { FILTER_MEDIA, WOOD_DUST_CAKE_RESISTANCE } from '../../core/catalogue/filter-media.ts';
import type { FilterMedium } from '../../core/catalogue/filter-media.ts';
import {
  cakeDrop,
  cleanFilterDrop,
  faceVelocity,
  faceVelocityLimit,
  faceVelocityRange,
  filterDrop,
  loadAtDrop,
} from '../../core/filter/media.ts';
import { against } from './ledger.ts';

const IN_WG_PA = 249.0889;
const FPM_MS = 0.00508;
const LB_FT2 = 0.45359237 / 0.09290304;

describe('filter drop', () => {
  const clean = against({
    relation: 'cleanFilterDrop',
    source: '400 Pa s/m at 0.02 m/s by hand, 8 Pa',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const cake = against({
    relation: ['cakeDrop', 'filterDrop'],
    source: '0.5 g/m3 at 0.02 m/s for an hour by hand, 8.0 and 72.3096 Pa',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const loadBack = against({
    relation: 'loadAtDrop',
    source: '0.5 g/m3 at 0.02 m/s for an hour by hand, 36 g/m2 behind 80.3096 Pa',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const manual = against({
    relation: ['filterDrop', 'loadAtDrop'],
    source: 'the units of the EPA Cost Manual: 1 and 10 in wg, 2 lb/ft2 and 3 fpm make 63 in wg',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const cloth = against({
    relation: 'faceVelocity',
    source: '400 cfm through 114.3 ft2 by hand, 3.5 fpm',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const noCake = against({
    relation: 'loadAtDrop',
    source: 'a clean medium at the drop or above it',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  it('is 8.0 + 72.3 Pa in a hand calculation', () => {
    // 0.5 g/m3 x 0.02 m/s x 3600 s = 0.036 kg/m2; 400 x 0.02 = 8; 100430 x 0.036 x 0.02 = 72.3096
    const filter = {
      drag_Pasm: 400,
      cakeResistance_pers: 100430,
      load_kgm2: 0.5e-3 * 0.02 * 3600,
      faceVelocity_ms: 0.02,
    };
    clean.withinAbsolute(cleanFilterDrop(filter), 8, 5e-13, { unit: 'Pa' });
    cake.withinAbsolute(cakeDrop(filter), 72.3096, 5e-11, { unit: 'Pa' });
    cake.withinAbsolute(filterDrop(filter), 80.3096, 5e-11, { unit: 'Pa' });
    loadBack.within(loadAtDrop(filter, 80.3096), 0.036, 1e-12);
    for (const drop_Pa of [8, 5]) noCake.holds(loadAtDrop(filter, drop_Pa) === 0, 'needs no cake');
  });

  it('is the same in the units of the EPA manual: 1 in wg/fpm and 10 in wg/(fpm lb/ft2), 2 lb/ft2, 3 fpm', () => {
    const filter = {
      drag_Pasm: IN_WG_PA / FPM_MS,
      cakeResistance_pers: (10 * IN_WG_PA) / (FPM_MS * LB_FT2),
      load_kgm2: 2 * LB_FT2,
      faceVelocity_ms: 3 * FPM_MS,
    };
    manual.within(filterDrop(filter) / IN_WG_PA, 3 + 10 * 2 * 3, 5e-12);
    manual.within(loadAtDrop(filter, 63 * IN_WG_PA) / LB_FT2, 2, 5e-12);
    expect(filter.cakeResistance_pers / 10).toBeCloseTo(10043, -1);
  });

  it('takes velocity as flow over area: 400 cfm through 114.3 ft2 is 3.5 fpm', () => {
    const velocity_ms = faceVelocity(400 * FPM_MS * 0.09290304, (400 / 3.5) * 0.09290304);
    cloth.withinAbsolute(velocity_ms, 3.5 * FPM_MS, 5e-13, { unit: 'm/s' });
  });
});

describe('filter media', () => {
  const gasToCloth = against({
    relation: 'faceVelocityRange',
    source: 'EPA Cost Manual, Table 1.1, gas to cloth of sawdust: 3.5 fpm woven',
    basis: 'from-memory',
    kind: 'value',
  });
  const pulsed = against({
    relation: 'faceVelocityRange',
    source: 'EPA Cost Manual, Table 1.1, gas to cloth of sawdust: 12 fpm felt',
    basis: 'from-memory',
    kind: 'value',
  });
  const limit = against({
    relation: 'faceVelocityLimit',
    source: 'gas to cloth of the EPA Cost Manual and 2 to 4 fpm of cartridges, a tenth inside and outside',
    basis: 'from-memory',
    kind: 'value',
  });
  const cartridge = against({
    relation: 'cleanFilterDrop',
    source: 'clean cartridges at 3 fpm: 0.5 to 1 in wg',
    basis: 'common-practice',
    kind: 'value',
  });
  const hepa = against({
    relation: 'cleanFilterDrop',
    source: 'DOE-STD-3020, a clean HEPA at its rated flow: at most 250 Pa',
    basis: 'from-memory',
    kind: 'value',
  });

  it('keep within the gas-to-cloth of sawdust in the EPA Cost Manual, Table 1.1 (from memory)', () => {
    const most = (medium: FilterMedium) => faceVelocityRange(medium)['face velocity']!.high!;
    const { 'woven-cotton-bag': woven, 'felt-bag': felt } = FILTER_MEDIA;
    gasToCloth.withinAbsolute(most(woven), 3.5 * FPM_MS, 5e-5, { unit: 'm/s' });
    pulsed.withinAbsolute(most(felt), 12 * FPM_MS, 5e-4, { unit: 'm/s' });
  });

  it('are said to be too slow or too fast for their air where those sources say so', () => {
    const outside = (medium: FilterMedium, fpm: number) => faceVelocityLimit(medium, fpm * FPM_MS).length;
    const { 'woven-cotton-bag': woven, 'felt-bag': felt } = FILTER_MEDIA;
    const cartridge = FILTER_MEDIA['cartridge-pleated-polyester'];
    for (const [medium, fpm] of [
      [woven, 3.5],
      [felt, 12],
      [cartridge, 4],
    ] as const) {
      limit.holds(outside(medium, 0.9 * fpm) === 0, 'a tenth below the upper end passes');
      limit.holds(outside(medium, 1.1 * fpm) === 1, 'a tenth above it is found');
    }
    limit.holds(outside(cartridge, 2.2) === 0, 'a tenth above the lower end passes');
    limit.holds(outside(cartridge, 1.8) === 1, 'a tenth below it is found');
  });

  it('keep cartridges at the 2-4 fpm of the trade, and within 0.5-1 in wg clean at 3 fpm', () => {
    for (const medium of Object.values(FILTER_MEDIA).filter((m) => m.type === 'cartridge')) {
      expect(medium.faceVelocityLow_ms).toBeCloseTo(2 * FPM_MS, 3);
      expect(medium.faceVelocityHigh_ms).toBeCloseTo(4 * FPM_MS, 3);
      const clean = cleanFilterDrop({ drag_Pasm: medium.drag_Pasm, faceVelocity_ms: 3 * FPM_MS }) / IN_WG_PA;
      cartridge.holds(clean > 0.5 && clean < 1, 'within the span');
    }
  });

  it('keep a clean HEPA at or below 250 Pa at its rated velocity', () => {
    const { drag_Pasm, faceVelocityHigh_ms } = FILTER_MEDIA['hepa-after-filter'];
    const clean_Pa = cleanFilterDrop({ drag_Pasm, faceVelocity_ms: faceVelocityHigh_ms });
    hepa.holds(clean_Pa <= 250, 'no more than that');
  });

  it('have the cake of wood dust at 6.3 in wg/(fpm lb/ft2), inside the span of the EPA manual', () => {
    const { value_s, span_s } = WOOD_DUST_CAKE_RESISTANCE;
    expect(value_s / ((6.3 * IN_WG_PA) / (FPM_MS * LB_FT2)) - 1).toBeCloseTo(0, 2);
    expect(value_s).toBeGreaterThan(span_s[0]);
    expect(value_s).toBeLessThan(span_s[1]);
  });
});
