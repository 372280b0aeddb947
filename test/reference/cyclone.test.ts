import { describe, expect, it } from 'vitest';
import { CYCLONE_PROPORTIONS } from '../../core/catalogue/cyclones.ts';
import type { CycloneProportionsId } from '../../core/catalogue/cyclones.ts';
import { STAIRMAND_FRICTION } from '../../core/catalogue/separator-models.ts';
import { lognormalCatch } from '../../core/separator/catch.ts';
import {
  barthGrade,
  lappleCutSize,
  lappleTurns,
  theodoreDePaolaGrade,
} from '../../core/separator/efficiency.ts';
import { alexanderExponent, leithLichtConstant } from '../../core/separator/leith-licht.ts';
import { saltationVelocityKalenZenz } from '../../core/separator/limits.ts';
import {
  casalMartinezBenetCoefficient,
  cokerCoefficient,
  dirgoCoefficient,
  shepherdLappleCoefficient,
  stairmandCoefficient,
} from '../../core/separator/loss-coefficients.ts';
import { PLAIN_CYCLONE } from '../../core/separator/pressure-drop.ts';
import { inletVelocity, standardCyclone } from '../../core/separator/proportions.ts';

const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;

describe('Cooper and Alley, Air Pollution Control, ch. 4: a Lapple cyclone of 1 m (from memory)', () => {
  const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 1);
  const flow = {
    flow_m3s: 150 / 60,
    density_kgm3: 1.01,
    viscosity_Pas: 0.075 / 3600,
    temperature_K: 350,
    particleDensity_kgm3: 1600,
  };
  // Sizes in um and mass in %, from the book; midpoints and efficiencies as printed there.
  const feed = [
    { size: 1, mass: 1, grade: 0.025 },
    { size: 3, mass: 9, grade: 0.188 },
    { size: 5, mass: 10, grade: 0.392 },
    { size: 8, mass: 30, grade: 0.622 },
    { size: 14, mass: 30, grade: 0.835 },
    { size: 24, mass: 14, grade: 0.937 },
    { size: 40, mass: 5, grade: 0.976 },
    { size: 75, mass: 1, grade: 0.993 },
  ];

  it('gives the inlet, the turns and the velocity of the book', () => {
    expect(cyclone.inletHeight_m).toBe(0.5);
    expect(cyclone.inletWidth_m).toBe(0.25);
    expect(lappleTurns(cyclone)).toBe(6);
    expect(inletVelocity(flow.flow_m3s, cyclone)).toBeCloseTo(20, 12);
  });

  it('gives a cut size of 6.23 um, which the book rounds up to 6.3', () => {
    const cut_um = lappleCutSize(cyclone, flow) * 1e6;
    expect(Math.abs(cut_um / 6.23 - 1)).toBeLessThan(0.005);
    expect(Math.abs(cut_um - 6.3)).toBeLessThan(0.1);
  });

  it.each(feed)('catches $grade of $size um', ({ size, grade }) => {
    expect(theodoreDePaolaGrade(size * 1e-6, 6.23e-6)).toBeCloseTo(grade, 3); // the printed cut size
    const ours = theodoreDePaolaGrade(size * 1e-6, lappleCutSize(cyclone, flow)); // 6.2355 um unrounded
    expect(Math.abs(ours / grade - 1)).toBeLessThan(size > 2 ? 0.005 : 0.03); // 0.025 has two digits only
  });

  it('catches 68 % of the whole feed', () => {
    const cut_m = lappleCutSize(cyclone, flow);
    const caught = feed.reduce((sum, f) => sum + f.mass * theodoreDePaolaGrade(f.size * 1e-6, cut_m), 0);
    expect(Math.abs(caught - 68)).toBeLessThan(0.5);
    expect(Math.abs(caught / 68.33 - 1)).toBeLessThan(0.005);
  });

  it('loses 8 inlet velocity heads, 1616 Pa, and 4040 W of air power', () => {
    const xi = shepherdLappleCoefficient(cyclone, PLAIN_CYCLONE);
    expect(xi).toBeCloseTo(8, 12);
    const loss_Pa = (xi * 1.01 * 20 ** 2) / 2;
    expect(loss_Pa).toBeCloseTo(1616, 9);
    expect(loss_Pa * 2.5).toBeCloseTo(4040, 9);
  });
});

// Koch and Licht 1977, list of geometry constants (from memory; the proportions reproduce it, which checks both).
const KOCH_LICHT: [CycloneProportionsId, number][] = [
  ['stairmand-high-efficiency', 551.22],
  ['swift-high-efficiency', 698.65],
  ['lapple', 402.88],
  ['swift-general', 381.79],
  ['peterson-whitby', 342.29],
  ['stairmand-high-throughput', 29.79],
  ['swift-high-throughput', 30.48],
];

describe('Leith-Licht geometry constant', () => {
  it.each(KOCH_LICHT)('%s has the published %f', (id, published) => {
    expect(
      Math.abs(leithLichtConstant(standardCyclone(CYCLONE_PROPORTIONS[id], 1)) - published),
    ).toBeLessThan(0.01);
  });

  it('is the same at any size', () => {
    const small = leithLichtConstant(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.1));
    expect(small).toBeCloseTo(leithLichtConstant(standardCyclone(CYCLONE_PROPORTIONS.lapple, 2)), 9);
  });
});

describe('vortex exponent of Alexander', () => {
  it('is 0.67 D^0.14 at 283 K, where the temperature drops out', () => {
    expect(alexanderExponent(1, 283)).toBeCloseTo(0.67, 12);
  });
});

describe('loss coefficients, hand calculation on a shape with a b/De^2 = 1/2', () => {
  // Lapple proportions: a 1/2, b 1/4, De 1/2, so x = (1/8)/(1/4) = 1/2; S 5/8, H 4, h 2, B 1/4.
  const lapple = standardCyclone(CYCLONE_PROPORTIONS.lapple, 1);

  it('Shepherd and Lapple: 16/2, and 7.5/2 with a vane', () => {
    expect(shepherdLappleCoefficient(lapple, PLAIN_CYCLONE)).toBeCloseTo(8, 12);
    expect(shepherdLappleCoefficient(lapple, { inlet: 'vaned', outletRim: 'sharp' })).toBeCloseTo(3.75, 12);
  });
  it('Casal and Martinez-Benet: 3.33 + 11.3/4', () => {
    expect(casalMartinezBenetCoefficient(lapple)).toBeCloseTo(6.155, 12);
  });
  it('Coker: 9.47/2', () => {
    expect(cokerCoefficient(lapple)).toBeCloseTo(4.735, 12);
  });
  it('Dirgo: 10 times the cube root of (5/8)/(4 x 2 x 1/4) = 5/16, which is 6.786', () => {
    expect(dirgoCoefficient(lapple)).toBeCloseTo(6.786, 3);
    expect((dirgoCoefficient(lapple) / 10) ** 3).toBeCloseTo(5 / 16, 12);
  });
  it('Stairmand: the wall ratio satisfies its own momentum balance g p^2 + sqrt(r) p = 1', () => {
    const xi = stairmandCoefficient(lapple);
    const r = 0.5 / (2 * 0.75);
    const p = Math.sqrt((xi - 1 - 2 * (2 / Math.PI) ** 2) / (2 * (1 / r - 1)));
    const cone = (Math.PI / 2) * 1.25 * Math.sqrt(4 + 0.375 ** 2);
    const area = (Math.PI / 4) * 0.75 + 2 * Math.PI + Math.PI * 0.5 * 0.625 + cone;
    const g = (STAIRMAND_FRICTION.value * area) / 0.125;
    expect(g * p * p + Math.sqrt(r) * p).toBeCloseTo(1, 10);
  });
});

describe('re-entrainment velocity', () => {
  it('is the same by the formula in feet, pounds and seconds', () => {
    const cyclone = standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2);
    const [rho, mu, rhoP, g] = [1.2, 1.81e-5, 1000, 9.80665];
    const perCubicFoot = FOOT_M ** 3 / POUND_KG;
    const muFt = (mu * FOOT_M) / POUND_KG;
    const w = Math.cbrt((4 * (g / FOOT_M) * muFt * rhoP * perCubicFoot) / (3 * (rho * perCubicFoot) ** 2));
    const shape = 0.25 ** 0.4 / Math.cbrt(0.75);
    const vsFt = 2.055 * w * shape * (0.2 / FOOT_M) ** 0.067 * (15 / FOOT_M) ** (2 / 3);
    const flow = {
      flow_m3s: 0.075,
      density_kgm3: rho,
      viscosity_Pas: mu,
      temperature_K: 293.15,
      particleDensity_kgm3: rhoP,
    };
    expect(saltationVelocityKalenZenz(cyclone, flow)).toBeCloseTo(vsFt * FOOT_M, 9);
  });
});

describe('catch of a lognormal feed', () => {
  const size = { median_m: 50e-6, geometricDeviation: 3 };
  const sigma = Math.log(3);

  it('has the closed form of a grade curve that is itself a lognormal cumulative', () => {
    // eta(d) = P(ln d50 + s Z < ln d): the average over a lognormal feed is P of a sum of two normals.
    const [d50, s] = [10e-6, 0.5];
    const average = phi(Math.log(size.median_m / d50) / Math.hypot(sigma, s));
    expect(Math.abs(lognormalCatch((d) => phi(Math.log(d / d50) / s), size) - average)).toBeLessThan(1e-6);
  });

  it('has the closed form of a feed of fine dust on the tail of the curve', () => {
    // eta proportional to d^2 (d far below the cut): mean of d^2 is median^2 exp(2 sigma^2).
    const caught = lognormalCatch((d) => (d / 1) ** 2, { median_m: 1e-6, geometricDeviation: 2 });
    expect(caught / (1e-12 * Math.exp(2 * Math.log(2) ** 2)) - 1).toBeCloseTo(0, 9);
  });

  it.each([
    ['round Lapple curve', (d: number) => theodoreDePaolaGrade(d, 3.8e-6)],
    ['steep Barth curve', (d: number) => barthGrade(d, 4.82e-6)],
  ])('agrees with Gauss-Legendre panels on the %s to 1e-6', (_, grade) => {
    expect(Math.abs(lognormalCatch(grade, size) - byPanels(grade, size.median_m, sigma))).toBeLessThan(1e-6);
  });
});

/** Normal cumulative by the series of erf (all terms of one sign), good to 1e-14 for |z| below 8. */
function phi(z: number): number {
  if (z < -8) return 0;
  if (z > 8) return 1;
  let term = z;
  let sum = z;
  for (let n = 1; n < 400; n++) sum += term *= (z * z) / (2 * n + 1);
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

/** The same integral by three-point Gauss-Legendre on 4000 panels over 9 deviations to each side. */
function byPanels(grade: (d: number) => number, median_m: number, sigma: number): number {
  const nodes = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
  const weights = [5 / 9, 8 / 9, 5 / 9];
  const half = 9 / 4000;
  let sum = 0;
  for (let panel = 0; panel < 4000; panel++) {
    const middle = -9 + (2 * panel + 1) * half;
    nodes.forEach((node, i) => {
      const z = middle + half * node;
      sum += weights[i]! * half * grade(median_m * Math.exp(sigma * z)) * Math.exp((-z * z) / 2);
    });
  }
  return sum / Math.sqrt(2 * Math.PI);
}
