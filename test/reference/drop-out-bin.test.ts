import { describe, expect, it } from 'vitest';
import { SETTLING_CHAMBER_K } from '../../core/catalogue/separator-models.ts';
import { dropOutBinCoefficient, settledShare } from '../../core/separator/drop-out-bin.ts';

describe('drop-out bin loss', () => {
  it('is the 1.5 velocity pressures of ACGIH for a trap where the chamber is large (from memory)', () => {
    const bin = { inletArea_m2: 0.008, outletArea_m2: 0.008, baffle: false };
    expect(dropOutBinCoefficient(bin)).toBeCloseTo(SETTLING_CHAMBER_K.value, 12);
    expect(dropOutBinCoefficient({ ...bin, chamberArea_m2: 800 })).toBeCloseTo(1.5, 4);
  });

  it('is sudden expansion and contraction by hand: area 1 to 4 and back to 1/2', () => {
    // (1 - 1/4)^2 = 0.5625; 0.5 (1 - 0.5/4) (1/0.5)^2 = 1.75
    const bin = { inletArea_m2: 1, outletArea_m2: 0.5, chamberArea_m2: 4, baffle: false };
    expect(dropOutBinCoefficient(bin)).toBeCloseTo(0.5625 + 1.75, 12);
  });

  it('is nothing in a chamber that is only a pipe', () => {
    expect(
      dropOutBinCoefficient({ inletArea_m2: 1, outletArea_m2: 1, chamberArea_m2: 1, baffle: false }),
    ).toBe(0);
  });
});

describe('settled share', () => {
  const chamber = { terminalVelocity_ms: 0.3, planArea_m2: 0.25, flow_m3s: 0.1 };

  it('is fall over height in undisturbed air: 0.3 x 0.25/0.1', () => {
    expect(settledShare(chamber, 'laminar')).toBeCloseTo(0.75, 12);
  });

  it('in mixed air is what many short undisturbed chambers give, stirred between them', () => {
    const slices = 100_000;
    const each = settledShare({ ...chamber, planArea_m2: 0.25 / slices }, 'laminar');
    expect(settledShare(chamber, 'mixed')).toBeCloseTo(1 - (1 - each) ** slices, 5);
  });
});
