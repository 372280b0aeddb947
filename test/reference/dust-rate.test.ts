import { describe, expect, it } from 'vitest';
import { binFillTime, dustRate } from '../../core/conveying/dust-rate.ts';

describe('dust from a cut, hand calculation', () => {
  it('a 6 mm cutter, 10 mm deep, 3 m/min in 700 kg/m3 board makes 7.56 kg in an hour', () => {
    // 0.006 x 0.010 x 3 = 180e-6 m3/min, x 60 = 0.0108 m3/h, x 700 = 7.56 kg/h
    const rate_kgs = dustRate({
      width_m: 0.006,
      depth_m: 0.01,
      feed_ms: 3 / 60,
      density_kgm3: 700,
      collectedShare: 1,
    });
    expect(rate_kgs * 3600).toBeCloseTo(7.56, 10);
  });

  it('a 60 l bin filled to four fifths with 150 kg/m3 holds 7.2 kg, an hour of 7.5 kg at 96 %', () => {
    const bin = {
      volume_m3: 0.06,
      fillShare: 0.8,
      bulkDensity_kgm3: 150,
      dust_kgs: 7.5 / 3600,
      catchShare: 0.96,
    };
    expect(binFillTime(bin)).toBeCloseTo(3600, 8);
  });
});
