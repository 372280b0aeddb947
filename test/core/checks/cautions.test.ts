import { describe, expect, it } from 'vitest';
import { MATERIALS } from '../../../core/catalogue/materials.ts';
import { ratingOf } from '../../../core/checks/suction.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import * as s from '../network/shop.ts';
import { line, result, SAW } from './shops.ts';

describe('cautions', () => {
  const codes = (shop: ShopDocument) => s.codesOf(result(shop)).filter((code) => code.startsWith('caution'));
  const own = (combustible: boolean) => ({
    dusts: [
      {
        id: 'own',
        requiredVelocity: 18,
        particleDensity: 2000,
        bulkDensity: 800,
        medianSize: 1e-4,
        geometricDeviation: 2,
        combustible,
      },
    ],
  });
  it('stand wherever dust is, that of burning wherever it can burn', () => {
    expect(codes(line({ port: SAW }))).toEqual(
      expect.arrayContaining(['caution-combustible', 'caution-fine-dust']),
    );
    const mineral = codes(line({ port: { dust: 'own' }, more: own(false) }));
    expect(mineral).toContain('caution-fine-dust');
    expect(mineral).not.toContain('caution-combustible');
    expect(codes(line({ port: { dust: 'own' }, more: own(true) }))).toContain('caution-combustible');
    // dust without a name may be any
    expect(codes(line({ port: { dustRate: 0.001 } }))).toContain('caution-combustible');
  });
  it('speak of static for all that is plastic and for no metal', () => {
    for (const row of MATERIALS) {
      const metal = /steel|aluminium|metal/.test(row.label);
      expect([row.id, codes(line({ first: { material: row.id } })).includes('caution-static')]).toEqual([
        row.id,
        !metal,
      ]);
    }
  });
  it('speak of make-up air only where air leaves the building', () => {
    expect(codes(line())).not.toContain('caution-make-up-air');
    expect(codes(line({ exhaust: { to: 'outside' } }))).toContain('caution-make-up-air');
  });
});

describe('the suction that a run stands', () => {
  const run = line({ first: { material: 'hose-smooth-bore' } }).runs[0]!;
  const rated = MATERIALS.map((row) =>
    row.id === 'hose-smooth-bore' ? { ...row, maxSuction_Pa: 4000 } : row,
  );
  it('is what is typed, else that of the weakest material with a figure, else not known', () => {
    expect(ratingOf(run)).toBeNull();
    expect(ratingOf(run, rated)).toBe(4000);
    expect(
      ratingOf({ ...line({ first: { maxSuction: 900 } }).runs[0]!, material: 'hose-smooth-bore' }, rated),
    ).toBe(900);
  });
});
