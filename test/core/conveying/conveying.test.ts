import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DUST_CLASSES } from '../../../core/catalogue/dusts.ts';
import { binFillTime, dustRate } from '../../../core/conveying/dust-rate.ts';
import { requiredVelocity } from '../../../core/conveying/required-velocity.ts';
import { rhodesLineDrop } from '../../../core/conveying/rhodes-line.ts';
import { SALTATION_MODELS } from '../../../core/conveying/saltation.ts';
import { solidsMultiplier } from '../../../core/conveying/solids-loss.ts';
import { DRAG_LAWS, terminalVelocityBy } from '../../../core/conveying/terminal-velocity.ts';
import type { DragLaw } from '../../../core/conveying/terminal-velocity.ts';

const size = fc.double({ min: -8, max: -1, noNaN: true }).map((log) => 10 ** log);
const density = fc.double({ min: 10, max: 20000, noNaN: true });

describe('terminal velocity', () => {
  it.each(Object.keys(DRAG_LAWS) as DragLaw[])('by %s grows with size, from 10 nm to 100 mm', (law) => {
    fc.assert(
      fc.property(
        size,
        fc.double({ min: 1.001, max: 100, noNaN: true }),
        density,
        (d, factor, particleDensity_kgm3) => {
          const particle = { particleDensity_kgm3, density_kgm3: 1.2, viscosity_Pas: 1.81e-5 };
          const small = terminalVelocityBy(law, { ...particle, particleDiameter_m: d });
          const large = terminalVelocityBy(law, { ...particle, particleDiameter_m: d * factor });
          expect(small).toBeGreaterThan(0);
          expect(large).toBeGreaterThan(small);
          expect(Number.isFinite(large)).toBe(true);
        },
      ),
      { seed: 71 },
    );
  });

  it('refuses a balloon', () => {
    const balloon = {
      particleDiameter_m: 0.01,
      particleDensity_kgm3: 1,
      density_kgm3: 1.2,
      viscosity_Pas: 1.8e-5,
    };
    expect(() => terminalVelocityBy('cheng', balloon)).toThrow(
      expect.objectContaining({ field: 'particleDensity_kgm3' }),
    );
  });
});

describe('saltation velocity', () => {
  it.each(Object.entries(SALTATION_MODELS))(
    '%s is finite, and grows with the dust carried',
    (_, { velocity }) => {
      fc.assert(
        fc.property(
          size,
          density,
          fc.double({ min: 0.01, max: 2, noNaN: true }),
          (x, particleDensity_kgm3, diameter_m) => {
            const dust = {
              density_kgm3: 1.2,
              diameter_m,
              particleDiameter_m: x,
              particleDensity_kgm3,
              terminalVelocity_ms: 1,
            };
            const [none, little, more] = [0, 1e-4, 1e-2].map((solids_kgs) =>
              velocity({ ...dust, solids_kgs }),
            );
            expect(none).toBe(0);
            expect(little).toBeGreaterThan(0);
            expect(more).toBeGreaterThan(little!);
            expect(Number.isFinite(more)).toBe(true);
          },
        ),
        { seed: 72 },
      );
    },
  );
});

describe('pneumatic line', () => {
  const line = {
    velocity_ms: 20,
    solids_kgs: 0.02,
    diameter_m: 0.1,
    density_kgm3: 1.2,
    viscosity_Pas: 1.81e-5,
    particleDiameter_m: 1e-3,
    particleDensity_kgm3: 550,
    terminalVelocity_ms: 2.5,
    horizontal_m: 5,
    vertical_m: 2,
    bends: 2,
  };

  it('loses more with length, height, bends and solids', () => {
    const drop = rhodesLineDrop(line).total_Pa;
    for (const change of [{ horizontal_m: 6 }, { vertical_m: 3 }, { bends: 3 }, { solids_kgs: 0.03 }]) {
      expect(rhodesLineDrop({ ...line, ...change }).total_Pa).toBeGreaterThan(drop);
    }
  });

  it('holds the solids upright that its own mass balance asks for', () => {
    // weight and friction of the solids per metre, less those of an empty line, give their share back
    const full = rhodesLineDrop({ ...line, bends: 0 });
    const empty = rhodesLineDrop({ ...line, bends: 0, solids_kgs: 0 });
    const G = 0.02 / ((Math.PI / 4) * 0.01);
    const weight_Pam = (full.vertical_Pa - empty.vertical_Pa) / 2 - 0.057 * G * Math.sqrt(9.80665 / 0.1);
    const share = weight_Pam / ((550 - 1.2) * 9.80665);
    expect(550 * share * (20 / (1 - share) - 2.5)).toBeCloseTo(G, 8);
  });

  it('refuses air that cannot lift, grains too large for the slip law and a choked pipe', () => {
    const attempt = (change: Partial<typeof line>) => () => rhodesLineDrop({ ...line, ...change });
    expect(attempt({ velocity_ms: 2 })).toThrow(expect.objectContaining({ field: 'velocity_ms' }));
    expect(attempt({ particleDiameter_m: 0.5 })).toThrow(
      expect.objectContaining({ field: 'particleDiameter_m' }),
    );
    expect(attempt({ solids_kgs: 500 })).toThrow(expect.objectContaining({ field: 'velocity_ms' }));
  });

  it('multiplies by 1 where nothing is carried', () => {
    expect(solidsMultiplier(0, 0.3)).toBe(1);
    expect(() => solidsMultiplier(-1, 0.3)).toThrow(expect.objectContaining({ field: 'loading' }));
  });
});

describe('dust', () => {
  it('classes are in order, named by their key, and every number has a source', () => {
    for (const [key, dust] of Object.entries(DUST_CLASSES)) {
      expect(dust.id).toBe(key);
      expect(dust.fineVelocity_ms).toBeLessThanOrEqual(dust.requiredVelocity_ms);
      expect(dust.highVelocity_ms).toBeGreaterThan(requiredVelocity(dust, 'vertical'));
      expect(dust.bulkDensity_kgm3).toBeLessThan(dust.particleDensity_kgm3);
      for (const field of Object.values(dust.fields)) expect(field.source.length).toBeGreaterThan(0);
    }
  });

  it('fills a bin in no finite time where nothing is caught', () => {
    const bin = { volume_m3: 0.06, fillShare: 0.8, bulkDensity_kgm3: 150, dust_kgs: 0.001, catchShare: 0 };
    expect(binFillTime(bin)).toBeNull();
    expect(binFillTime({ ...bin, catchShare: 1, dust_kgs: 0.002 })).toBeCloseTo(3600, 9);
    expect(() => binFillTime({ ...bin, fillShare: 0 })).toThrow(
      expect.objectContaining({ field: 'fillShare' }),
    );
  });

  it('refuses a hood that takes more than there is', () => {
    const cut = { width_m: 0.01, depth_m: 0.01, feed_ms: 0.1, density_kgm3: 700, collectedShare: 1.2 };
    expect(() => dustRate(cut)).toThrow(expect.objectContaining({ field: 'collectedShare' }));
  });
});
