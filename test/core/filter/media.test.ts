import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FILTER_MEDIA } from '../../../core/catalogue/filter-media.ts';
import { faceVelocity, faceVelocityLimit, filterDrop, loadAtDrop } from '../../../core/filter/media.ts';

const amount = fc.double({ min: 0, max: 1e6, noNaN: true });

describe('filter', () => {
  it('drops more at more velocity, more load, more drag', () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        amount,
        amount,
        fc.double({ min: 1, max: 10, noNaN: true }),
        (s, k, w, v, more) => {
          const filter = { drag_Pasm: s, cakeResistance_pers: k, load_kgm2: w, faceVelocity_ms: v };
          const drop = filterDrop(filter);
          expect(Number.isFinite(drop) && drop >= 0).toBe(true);
          for (const field of ['drag_Pasm', 'load_kgm2', 'faceVelocity_ms'] as const) {
            expect(filterDrop({ ...filter, [field]: filter[field] * more })).toBeGreaterThanOrEqual(drop);
          }
        },
      ),
      { seed: 61 },
    );
  });

  it('reaches a drop at the load that loadAtDrop says, and at none where the clean medium is there already', () => {
    for (const medium of Object.values(FILTER_MEDIA)) {
      const filter = { ...medium, faceVelocity_ms: medium.faceVelocityHigh_ms };
      const load_kgm2 = loadAtDrop(filter, medium.changeAtPressure_Pa);
      expect(load_kgm2).toBeGreaterThan(0);
      expect(filterDrop({ ...filter, load_kgm2 })).toBeCloseTo(medium.changeAtPressure_Pa, 6);
      expect(loadAtDrop(filter, 1e-3)).toBe(0);
    }
  });

  it('finds a face velocity outside the range of its medium', () => {
    const cartridge = FILTER_MEDIA['cartridge-pleated-polyester'];
    expect(faceVelocityLimit(cartridge, 0.015)).toEqual([]);
    expect(faceVelocityLimit(cartridge, 0.03)[0]).toMatchObject({ quantity: 'face velocity', value: 0.03 });
    expect(faceVelocityLimit(cartridge, 0.001).length).toBe(1);
  });

  it('keeps every row in order and named by its key', () => {
    for (const [key, medium] of Object.entries(FILTER_MEDIA)) {
      expect(medium.id).toBe(key);
      expect(medium.faceVelocityLow_ms).toBeLessThan(medium.faceVelocityHigh_ms);
      expect(medium.source.length).toBeGreaterThan(0);
    }
  });

  it('refuses what cannot be', () => {
    expect(() => faceVelocity(0.1, 0)).toThrow(expect.objectContaining({ field: 'area_m2' }));
    const filter = { drag_Pasm: 1, cakeResistance_pers: 1, load_kgm2: -1, faceVelocity_ms: 1 };
    expect(() => filterDrop(filter)).toThrow(expect.objectContaining({ field: 'load_kgm2' }));
    expect(() => loadAtDrop({ ...filter, faceVelocity_ms: 0 }, 100)).toThrow(
      expect.objectContaining({ field: 'faceVelocity_ms' }),
    );
  });
});
