import { describe, expect, it } from 'vitest';
import { MINIMUM_FACTORS, ROTOR_MATERIALS, rotorMaterial } from '../../core/catalogue/rotor-materials.ts';
import { against } from './ledger.ts';

/**
 * Spans of handbooks and papers (see each row's source): a strength at the low end of its span or below, 4 to 6 for
 * prints and 4 for wood (common practice), a modulus, density and Poisson's ratio that such a material can have.
 */
describe('rotor materials against published spans', () => {
  const spans = against({
    relation: 'core/catalogue/rotor-materials.ts#rotorMaterial',
    source: 'spans of handbooks and papers for prints, wood and metal',
    basis: 'from-memory',
    kind: 'limit',
  });
  const layers = against({
    relation: 'core/catalogue/rotor-materials.ts#rotorMaterial',
    source:
      'papers and guides on printing: weaker across the layers, at most 0.7 of the strength within them',
    basis: 'from-memory',
    kind: 'limit',
  });
  const alloy = against({
    relation: 'core/catalogue/rotor-materials.ts#rotorMaterial',
    source: '6061-T6 as two suppliers print it: 2700 kg/m3, 68.9 GPa, 0.33, 276 MPa',
    basis: 'published',
    kind: 'value',
  });
  const SPANS = {
    print: { density: [1000, 1450], E: [1.5e9, 6e9], strength: [5e6, 65e6] },
    wood: { density: [600, 850], E: [2e9, 12e9], strength: [8e6, 50e6] },
    metal: { density: [2650, 7900], E: [65e9, 215e9], strength: [200e6, 300e6] },
  } as const;
  it.each(ROTOR_MATERIALS.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    const span = SPANS[row.kind];
    const within = (value: number, [low, high]: readonly [number, number]) => {
      spans.holds(value >= low && value <= high, 'each property within that of its kind');
    };
    within(row.density_kgm3, span.density);
    within(row.youngsModulus_Pa, span.E);
    within(row.strength_Pa, span.strength);
    within(row.poissonRatio, [0.25, 0.4]);
    if (row.kind === 'print') {
      within(row.minimumFactor, [4, 6]);
      within(row.softening_K!, [273.15 + 50, 273.15 + 110]);
    } else expect(row.softening_K).toBeNull();
  });
  it('every print is weaker across its layers than within them', () => {
    for (const name of ['pla', 'petg', 'abs', 'glass-nylon']) {
      const within = rotorMaterial(`${name}-in-plane`)!;
      const across = rotorMaterial(`${name}-across-layers`)!;
      layers.holds(across.strength_Pa / within.strength_Pa <= 0.7, 'weaker for each plastic');
      layers.holds(across.minimumFactor > within.minimumFactor, 'a larger factor asked for');
    }
  });
  it('6061-T6 as two suppliers print it', () => {
    const row = rotorMaterial('aluminium-6061-t6')!;
    alloy.within(row.density_kgm3, 2700, 0);
    alloy.within(row.youngsModulus_Pa, 68.9e9, 0);
    alloy.within(row.poissonRatio, 0.33, 0);
    alloy.within(row.strength_Pa, 276e6, 0);
  });
  it('wood by practice has a factor of 4, and no id stands twice', () => {
    expect(MINIMUM_FACTORS.wood.factor).toBe(4);
    expect(new Set(ROTOR_MATERIALS.map(({ id }) => id)).size).toBe(ROTOR_MATERIALS.length);
  });
});
