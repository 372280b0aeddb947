import { describe, it } from 'vitest';
import { SETTLING_CHAMBER_K } from '../../core/catalogue/separator-models.ts';
import { terminalVelocity } from '../../core/conveying/terminal-velocity.ts';
import { dropOutBinCoefficient, dropOutBinGrade, settledShare } from '../../core/separator/drop-out-bin.ts';
import { against } from './ledger.ts';

describe('drop-out bin loss', () => {
  const trap = against({
    relation: 'dropOutBinCoefficient',
    source: 'ACGIH, trap or settling chamber: 1.5 velocity pressures',
    basis: 'from-memory',
    kind: 'value',
  });
  const largeChamber = against({
    relation: 'dropOutBinCoefficient',
    source: 'ACGIH, trap or settling chamber: 1.5 velocity pressures, chamber 100 000 times the opening',
    basis: 'from-memory',
    kind: 'value',
  });
  const byHand = against({
    relation: 'dropOutBinCoefficient',
    source: 'sudden expansion and contraction by hand: area 1 to 4 and back to 1/2',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const pipe = against({
    relation: 'dropOutBinCoefficient',
    source: 'a chamber that is only a pipe',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  it('is the 1.5 velocity pressures of ACGIH for a trap where the chamber is large (from memory)', () => {
    const bin = { inletArea_m2: 0.008, outletArea_m2: 0.008, baffle: false };
    trap.withinAbsolute(dropOutBinCoefficient(bin), SETTLING_CHAMBER_K.value, 5e-13);
    largeChamber.withinAbsolute(dropOutBinCoefficient({ ...bin, chamberArea_m2: 800 }), 1.5, 5e-5);
  });

  it('is sudden expansion and contraction by hand: area 1 to 4 and back to 1/2', () => {
    // (1 - 1/4)^2 = 0.5625; 0.5 (1 - 0.5/4) (1/0.5)^2 = 1.75
    const bin = { inletArea_m2: 1, outletArea_m2: 0.5, chamberArea_m2: 4, baffle: false };
    byHand.withinAbsolute(dropOutBinCoefficient(bin), 0.5625 + 1.75, 5e-13);
  });

  it('is nothing in a chamber that is only a pipe', () => {
    const bin = { inletArea_m2: 1, outletArea_m2: 1, chamberArea_m2: 1, baffle: false };
    pipe.holds(dropOutBinCoefficient(bin) === 0, 'loses nothing');
  });
});

describe('settled share', () => {
  const fall = against({
    relation: ['settledShare', 'dropOutBinGrade'],
    source: 'fall over height in undisturbed air by hand, 0.3 x 0.25/0.1',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const slicesOf = against({
    relation: ['settledShare', 'dropOutBinGrade'],
    source: '100 000 short undisturbed chambers in a row, the air mixed between them',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const stokes = against({
    relation: 'dropOutBinGrade',
    source: 'smallest size that settles whole, by Stokes: d^2 = 18 mu Q/(g rho_p A)',
    basis: 'hand-calculation',
    kind: 'second-route',
  });
  const gradeAt = (terminalVelocity_ms: number, model: 'laminar' | 'mixed') =>
    dropOutBinGrade({
      planArea_m2: 0.25,
      flow_m3s: 0.1,
      model,
      terminalVelocity: () => terminalVelocity_ms,
    })(1e-4);

  const chamber = { terminalVelocity_ms: 0.3, planArea_m2: 0.25, flow_m3s: 0.1 };

  it('is fall over height in undisturbed air: 0.3 x 0.25/0.1', () => {
    fall.withinAbsolute(settledShare(chamber, 'laminar'), 0.75, 5e-13);
    fall.withinAbsolute(gradeAt(0.3, 'laminar'), 0.75, 5e-13);
  });

  it('in mixed air is what many short undisturbed chambers give, stirred between them', () => {
    const slices = 100_000;
    const each = settledShare({ ...chamber, planArea_m2: 0.25 / slices }, 'laminar');
    slicesOf.withinAbsolute(settledShare(chamber, 'mixed'), 1 - (1 - each) ** slices, 5e-6);
    slicesOf.withinAbsolute(gradeAt(0.3, 'mixed'), 1 - (1 - each) ** slices, 5e-6);
  });

  // A slow chamber, so that the grain falls at a Reynolds number of 0.02; air buoyancy is 0.12 %.
  it('catches whole from the size on that Stokes gives', () => {
    const [planArea_m2, flow_m3s, mu, particleDensity_kgm3] = [2, 0.02, 1.81e-5, 1000];
    const grade = dropOutBinGrade({
      planArea_m2,
      flow_m3s,
      model: 'laminar',
      terminalVelocity: (particleDiameter_m) =>
        terminalVelocity({ particleDiameter_m, particleDensity_kgm3, density_kgm3: 1.2, viscosity_Pas: mu }),
    });
    const smallest_m = Math.sqrt((18 * mu * flow_m3s) / (9.80665 * particleDensity_kgm3 * planArea_m2));
    let [low, high] = [0.5 * smallest_m, 2 * smallest_m];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (grade(middle) < 1) low = middle;
      else high = middle;
    }
    stokes.within(high, smallest_m, 0.01);
  });
});
