import { describe, it } from 'vitest';
import { binFillTime, dustRate } from '../../core/conveying/dust-rate.ts';
import { against } from './ledger.ts';

describe('dust from a cut, hand calculation', () => {
  const cut = against({
    relation: 'dustRate',
    source: 'a cut of 6 x 10 mm at 3 m/min in 700 kg/m3 board by hand, 7.56 kg in an hour',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const bin = against({
    relation: 'binFillTime',
    source: '7.2 kg in a bin by hand, an hour of 7.5 kg at 96 %',
    basis: 'hand-calculation',
    kind: 'value',
  });

  it('a 6 mm cutter, 10 mm deep, 3 m/min in 700 kg/m3 board makes 7.56 kg in an hour', () => {
    // 0.006 x 0.010 x 3 = 180e-6 m3/min, x 60 = 0.0108 m3/h, x 700 = 7.56 kg/h
    const rate_kgs = dustRate({
      width_m: 0.006,
      depth_m: 0.01,
      feed_ms: 3 / 60,
      density_kgm3: 700,
      collectedShare: 1,
    });
    cut.withinAbsolute(rate_kgs * 3600, 7.56, 5e-11, { unit: 'kg/h' });
  });

  it('a 60 l bin filled to four fifths with 150 kg/m3 holds 7.2 kg, an hour of 7.5 kg at 96 %', () => {
    const filling = {
      volume_m3: 0.06,
      fillShare: 0.8,
      bulkDensity_kgm3: 150,
      dust_kgs: 7.5 / 3600,
      catchShare: 0.96,
    };
    bin.withinAbsolute(binFillTime(filling)!, 3600, 5e-9, { unit: 's' });
  });
});
