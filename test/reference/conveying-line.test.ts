import { describe, expect, it } from 'vitest';
import { rhodesLineDrop } from '../../core/conveying/rhodes-line.ts';
import { rizkSaltation } from '../../core/conveying/saltation.ts';
import { SOLIDS_LOSS_K, solidsMultiplier } from '../../core/conveying/solids-loss.ts';

// Rhodes, Introduction to Particle Technology, 2nd ed., ch. 8, worked example (from memory): sand 900 kg/h,
// 2500 kg/m3, 100 um; 30 m level, 10 m up, six bends; air at 1.5 times saltation. The book takes g = 9.81.
const sand = {
  solids_kgs: 0.25,
  density_kgm3: 1.2,
  viscosity_Pas: 18.4e-6,
  particleDiameter_m: 1e-4,
  particleDensity_kgm3: 2500,
  terminalVelocity_ms: 0.52,
  horizontal_m: 30,
  vertical_m: 10,
  bends: 6,
};
const line = (diameter_m: number) => ({
  ...sand,
  diameter_m,
  velocity_ms: 1.5 * rizkSaltation({ ...sand, diameter_m }),
});

describe('Rhodes’ conveying line', () => {
  it.each([
    { diameter_m: 0.078, saltation_ms: 9.885, book_bar: 0.212 },
    { diameter_m: 0.063, saltation_ms: 10.299, book_bar: 0.322 },
    { diameter_m: 0.05, saltation_ms: 10.768, book_bar: 0.512 },
    { diameter_m: 0.04, saltation_ms: 11.241, book_bar: 0.809 },
  ])(
    'loses $book_bar bar in $diameter_m m, to the digits printed',
    ({ diameter_m, saltation_ms, book_bar }) => {
      // our g is 9.80665, the book's 9.81: saltation is lower by the factor (9.80665/9.81)^(2.61/7.22), 1.2e-4
      expect(Math.abs(rizkSaltation({ ...sand, diameter_m }) / saltation_ms - 1)).toBeLessThan(2e-4);
      expect(Math.abs(rhodesLineDrop(line(diameter_m)).total_Pa / 1e5 - book_bar)).toBeLessThan(0.0005);
    },
  );

  it('has the intermediate values of the book at 78 mm', () => {
    const drop = rhodesLineDrop({ ...line(0.078), velocity_ms: 1.5 * 9.885 }); // the book's own velocity, from its g
    expect(drop.solidsVelocity_ms).toBeCloseTo(11.84, 2);
    expect(drop.voidage).toBeCloseTo(0.9982, 4);
    expect(Math.abs(drop.solidsFriction - 0.0281)).toBeLessThan(0.00005);
    expect(Math.abs(drop.horizontal_Pa / 14864 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(drop.vertical_Pa / 1148.7 - 1)).toBeLessThan(7e-4); // 3.4e-4 of it from the book's g
    expect(Math.abs(drop.bends_Pa / 5169 - 1)).toBeLessThan(7e-4);
  });

  it('has the loading of the book at 50 mm, 6.57 kg/kg with 0.0317 m3/s of air', () => {
    const air_m3s = line(0.05).velocity_ms * (Math.PI / 4) * 0.05 ** 2;
    expect(air_m3s).toBeCloseTo(0.0317, 4);
    expect(Math.abs(0.25 / (1.2 * air_m3s) - 6.57)).toBeLessThan(0.01);
  });

  it('is the air alone where no sand is fed', () => {
    const drop = rhodesLineDrop({ ...line(0.078), solids_kgs: 0, vertical_m: 0, bends: 0, velocity_ms: 15 });
    expect(drop.total_Pa).toBeCloseTo(0.5 * 1.2 * 225 + (2 * 0.005 * 1.2 * 225 * 30) / 0.078, 8);
  });
});

describe('loading multiplier', () => {
  it('adds a few per cent at the loads of a shop, and stays below the 15 % that the source states', () => {
    expect(solidsMultiplier(0.01, SOLIDS_LOSS_K.value)).toBeLessThan(1.01);
    expect(solidsMultiplier(0.3, SOLIDS_LOSS_K.span[1])).toBeCloseTo(1.15, 12);
  });

  // Second route: what solids add to the air's friction on a long level run by Rhodes' method, per unit of loading.
  const rhodesK = (particleDiameter_m: number, particleDensity_kgm3: number) => {
    const level = { ...sand, diameter_m: 0.1, velocity_ms: 20, horizontal_m: 1000, vertical_m: 0, bends: 0 };
    const run = { ...level, solids_kgs: 0.01, particleDiameter_m, particleDensity_kgm3 };
    const added = rhodesLineDrop(run).total_Pa / rhodesLineDrop({ ...run, solids_kgs: 0 }).total_Pa - 1;
    return added / (0.01 / (1.2 * 20 * (Math.PI / 4) * 0.1 ** 2));
  };

  it('lies within a factor of 3 of Rhodes’ line for wheat and for wood chips', () => {
    for (const k of [rhodesK(4e-3, 1300), rhodesK(1.5e-3, 550)]) {
      expect(k).toBeGreaterThan(SOLIDS_LOSS_K.value / 3);
      expect(k).toBeLessThan(SOLIDS_LOSS_K.value * 3);
    }
  });

  it('is far below Rhodes’ line for fine dust, as its doc comment says', () => {
    expect(rhodesK(1.5e-4, 700)).toBeGreaterThan(10 * SOLIDS_LOSS_K.value);
    expect(rhodesK(1.5e-4, 700)).toBeLessThan(5);
  });
});
