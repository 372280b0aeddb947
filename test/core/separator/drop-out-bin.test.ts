import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { terminalVelocity } from '../../../core/conveying/terminal-velocity.ts';
import { lognormalCatch } from '../../../core/separator/catch.ts';
import {
  dropOutBinCoefficient,
  dropOutBinGrade,
  settledShare,
} from '../../../core/separator/drop-out-bin.ts';

const air = { particleDensity_kgm3: 550, density_kgm3: 1.2, viscosity_Pas: 1.81e-5 };
const fall = (particleDiameter_m: number) => terminalVelocity({ particleDiameter_m, ...air });

describe('drop-out bin', () => {
  it('loses more with a baffle, and less in a smaller chamber', () => {
    const bin = { inletArea_m2: 0.008, outletArea_m2: 0.008, baffle: false };
    expect(dropOutBinCoefficient({ ...bin, baffle: true })).toBeGreaterThan(dropOutBinCoefficient(bin));
    expect(dropOutBinCoefficient({ ...bin, chamberArea_m2: 0.05 })).toBeLessThan(dropOutBinCoefficient(bin));
  });

  it('refuses a chamber smaller than an opening', () => {
    const bin = { inletArea_m2: 0.008, outletArea_m2: 0.01, chamberArea_m2: 0.009, baffle: false };
    expect(() => dropOutBinCoefficient(bin)).toThrow(expect.objectContaining({ field: 'chamberArea_m2' }));
  });

  it('settles a share within 0 to 1, mixed never more than undisturbed, more of slower air', () => {
    const any = fc.double({ min: 1e-9, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(any, any, any, (terminalVelocity_ms, planArea_m2, flow_m3s) => {
        const chamber = { terminalVelocity_ms, planArea_m2, flow_m3s };
        const [mixed, laminar] = [settledShare(chamber, 'mixed'), settledShare(chamber, 'laminar')];
        expect(mixed).toBeGreaterThanOrEqual(0);
        expect(laminar).toBeLessThanOrEqual(1);
        expect(mixed).toBeLessThanOrEqual(laminar);
        expect(settledShare({ ...chamber, flow_m3s: 2 * flow_m3s }, 'mixed')).toBeLessThanOrEqual(mixed);
      }),
      { seed: 51 },
    );
  });

  it('keeps chips and passes sanding dust', () => {
    const grade = dropOutBinGrade({
      planArea_m2: 0.2,
      flow_m3s: 0.15,
      model: 'mixed',
      terminalVelocity: fall,
    });
    const chips = lognormalCatch(grade, { median_m: 1.5e-3, geometricDeviation: 4.5 });
    const sanding = lognormalCatch(grade, { median_m: 20e-6, geometricDeviation: 2.3 });
    expect(chips).toBeGreaterThan(0.7);
    expect(sanding).toBeLessThan(0.1);
    expect(grade(1e-6)).toBeLessThan(grade(1e-3));
  });
});
