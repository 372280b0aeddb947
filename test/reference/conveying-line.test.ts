import { describe, it } from 'vitest';
import { rhodesLineDrop } from '../../core/conveying/rhodes-line.ts';
import { rizkSaltation } from '../../core/conveying/saltation.ts';
import { SOLIDS_LOSS_K, solidsMultiplier } from '../../core/conveying/solids-loss.ts';
import { against } from './ledger.ts';

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
  const saltation = against({
    relation: 'rizkSaltation',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: saltation velocities, with the book’s g of 9.81',
    basis: 'from-memory',
    kind: 'value',
  });
  const total = against({
    relation: 'rhodesLineDrop',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: total drops of four pipes, to the digits printed',
    basis: 'from-memory',
    kind: 'value',
  });
  const level = against({
    relation: 'rhodesLineDrop',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: level run of 78 mm, 14864 Pa',
    basis: 'from-memory',
    kind: 'value',
  });
  const upward = against({
    relation: 'rhodesLineDrop',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: lift and bends of 78 mm, 1148.7 and 5169 Pa',
    basis: 'from-memory',
    kind: 'value',
  });
  const solidsVelocity = against({
    relation: 'rhodesLineDrop',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: velocity of the sand in 78 mm, 11.84 m/s',
    basis: 'from-memory',
    kind: 'value',
  });
  const voidage = against({
    relation: 'rhodesLineDrop',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: voidage in 78 mm 0.9982, solids friction 0.0281',
    basis: 'from-memory',
    kind: 'value',
  });
  const airFlow = against({
    relation: 'rizkSaltation',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: 0.0317 m3/s of air in 50 mm',
    basis: 'from-memory',
    kind: 'value',
  });
  const loading = against({
    relation: 'rizkSaltation',
    source: 'Rhodes, 2nd ed., ch. 8, worked example: loading of 6.57 kg/kg in 50 mm',
    basis: 'from-memory',
    kind: 'value',
  });
  const airAlone = against({
    relation: 'rhodesLineDrop',
    source: 'no sand: start-up and wall friction of the air alone, by hand',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  it.each([
    { diameter_m: 0.078, saltation_ms: 9.885, book_bar: 0.212 },
    { diameter_m: 0.063, saltation_ms: 10.299, book_bar: 0.322 },
    { diameter_m: 0.05, saltation_ms: 10.768, book_bar: 0.512 },
    { diameter_m: 0.04, saltation_ms: 11.241, book_bar: 0.809 },
  ])(
    'loses $book_bar bar in $diameter_m m, to the digits printed',
    ({ diameter_m, saltation_ms, book_bar }) => {
      // our g is 9.80665, the book's 9.81: saltation is lower by the factor (9.80665/9.81)^(2.61/7.22), 1.2e-4
      saltation.within(rizkSaltation({ ...sand, diameter_m }), saltation_ms, 2e-4);
      total.withinAbsolute(rhodesLineDrop(line(diameter_m)).total_Pa / 1e5, book_bar, 0.0005, {
        unit: 'bar',
      });
    },
  );

  it('has the intermediate values of the book at 78 mm', () => {
    const drop = rhodesLineDrop({ ...line(0.078), velocity_ms: 1.5 * 9.885 }); // the book's own velocity, from its g
    solidsVelocity.withinAbsolute(drop.solidsVelocity_ms, 11.84, 0.005, { unit: 'm/s' });
    voidage.withinAbsolute(drop.voidage, 0.9982, 5e-5);
    voidage.withinAbsolute(drop.solidsFriction, 0.0281, 5e-5);
    level.within(drop.horizontal_Pa, 14864, 5e-4);
    upward.within(drop.vertical_Pa, 1148.7, 7e-4); // 3.4e-4 of it from the book's g
    upward.within(drop.bends_Pa, 5169, 7e-4);
  });

  it('has the loading of the book at 50 mm, 6.57 kg/kg with 0.0317 m3/s of air', () => {
    const air_m3s = line(0.05).velocity_ms * (Math.PI / 4) * 0.05 ** 2;
    airFlow.withinAbsolute(air_m3s, 0.0317, 5e-5, { unit: 'm3/s' });
    loading.withinAbsolute(0.25 / (1.2 * air_m3s), 6.57, 0.01, { unit: 'kg/kg' });
  });

  it('is the air alone where no sand is fed', () => {
    const drop = rhodesLineDrop({ ...line(0.078), solids_kgs: 0, vertical_m: 0, bends: 0, velocity_ms: 15 });
    const alone_Pa = 0.5 * 1.2 * 225 + (2 * 0.005 * 1.2 * 225 * 30) / 0.078;
    airAlone.withinAbsolute(drop.total_Pa, alone_Pa, 5e-9, { unit: 'Pa' });
  });
});

describe('loading multiplier', () => {
  const light = against({
    relation: 'solidsMultiplier',
    source: 'what its source states of light loads: at most 15 % more',
    basis: 'from-memory',
    kind: 'value',
  });
  const fullLine = against({
    relation: 'solidsMultiplier',
    source: 'what Rhodes’ whole line adds to the air’s friction, per unit of loading',
    basis: 'from-memory',
    kind: 'second-route',
  });

  it('adds a few per cent at the loads of a shop, and stays below the 15 % that the source states', () => {
    light.holds(solidsMultiplier(0.01, SOLIDS_LOSS_K.value) < 1.01, 'below 1 % at a load of a hundredth');
    light.withinAbsolute(solidsMultiplier(0.3, SOLIDS_LOSS_K.span[1]), 1.15, 5e-13);
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
      const ours = solidsMultiplier(1, SOLIDS_LOSS_K.value) - 1;
      fullLine.holds(k > ours / 3 && k < ours * 3, 'within a factor of 3 for wheat and wood chips');
    }
  });

  it('is far below Rhodes’ line for fine dust, as its doc comment says', () => {
    const ours = solidsMultiplier(1, SOLIDS_LOSS_K.value) - 1;
    fullLine.holds(rhodesK(1.5e-4, 700) > 10 * ours, 'more than ten times below it for fine dust');
    fullLine.holds(rhodesK(1.5e-4, 700) < 5, 'whose constant is below 5');
  });
});
