import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ANGLE_RULES } from '../../../core/catalogue/elbows.ts';
import { material, MATERIALS } from '../../../core/catalogue/materials.ts';
import { compressedHoseFactor, hawthorneFriction, hoseBendCoefficient } from '../../../core/duct/hose.ts';
import { elbowCoefficient, ELBOW_RANGES, mitreCoefficient } from '../../../core/fittings/elbow.ts';
import type { AngleRuleName, ElbowStyle } from '../../../core/fittings/elbow.ts';
import { taperedHoodCoefficient } from '../../../core/fittings/entry.ts';
import { weatherCapCoefficient } from '../../../core/fittings/exit.ts';
import { butterflyCoefficient, slideGateCoefficient } from '../../../core/fittings/gate.ts';
import { rebase } from '../../../core/fittings/loss-coefficient.ts';
import { sizeChange } from '../../../core/fittings/size-change.ts';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';
import { findOutside } from '../../../core/quantities/range.ts';

const SEED = 20240613;
const RUNS = { seed: SEED, numRuns: 1000 };
const styles = fc.constantFrom(...(Object.keys(ELBOW_RANGES) as ElbowStyle[]));
const rules = fc.constantFrom(...(Object.keys(ANGLE_RULES) as AngleRuleName[]));
const radius = fc.double({ min: 0.3, max: 5, noNaN: true });
const angle = fc.double({ min: 0, max: Math.PI, noNaN: true });
const diameter = fc.double({ min: 0.02, max: 0.5, noNaN: true });
const pair = (x: number, y: number): readonly [number, number] => (x < y ? [x, y] : [y, x]);

describe('elbows', () => {
  it('cost no less at a greater angle and no more at a greater radius', () => {
    fc.assert(
      fc.property(styles, rules, radius, radius, angle, angle, (style, angleRule, r1, r2, a1, a2) => {
        const [tight, wide] = pair(r1, r2);
        const [small, great] = pair(a1, a2);
        const k = (radiusRatio: number, angle_rad: number): number =>
          elbowCoefficient({ style, radiusRatio, angle_rad, angleRule }).k;
        expect(k(tight, small)).toBeGreaterThanOrEqual(0);
        expect(k(tight, great)).toBeGreaterThanOrEqual(k(tight, small));
        expect(k(tight, great)).toBeGreaterThanOrEqual(k(wide, great));
      }),
      RUNS,
    );
  });

  it('with fewer pieces cost no less, and a mitre most', () => {
    for (const radiusRatio of [0.75, 1, 1.5, 2, 2.5]) {
      const k = (style: ElbowStyle): number =>
        elbowCoefficient({ style, radiusRatio, angle_rad: Math.PI / 2, angleRule: 'ashrae' }).k;
      expect(k('smooth')).toBeLessThan(k('five-piece'));
      expect(k('five-piece')).toBeLessThan(k('four-piece'));
      expect(k('four-piece')).toBeLessThan(k('three-piece'));
      expect(k('three-piece')).toBeLessThan(k('mitre'));
    }
  });

  it('tell what lies outside the table', () => {
    const outside = findOutside(ELBOW_RANGES.smooth, { 'radius over diameter': 4, angle: 1 });
    expect(outside.map((found) => found.quantity)).toEqual(['radius over diameter']);
    expect(() => mitreCoefficient(-0.1)).toThrow(ImpossibleInput);
  });
});

describe('gates and caps', () => {
  it('a slide gate costs strictly more the further it is shut', () => {
    const opening = fc.double({ min: 1e-4, max: 1, noNaN: true });
    fc.assert(
      fc.property(opening, opening, (x, y) => {
        const [shut, open] = pair(x, y);
        fc.pre(open - shut > 1e-9);
        expect(slideGateCoefficient(shut).k).toBeGreaterThan(slideGateCoefficient(open).k);
        expect(Number.isFinite(slideGateCoefficient(shut).k)).toBe(true);
      }),
      RUNS,
    );
    expect(() => slideGateCoefficient(0)).toThrow(ImpossibleInput);
    const joint = slideGateCoefficient(0.2 - 1e-9).k / slideGateCoefficient(0.2 + 1e-9).k;
    expect(Math.abs(joint - 1)).toBeLessThan(1e-6);
  });

  it('a butterfly costs strictly more the further it is turned', () => {
    const turn = fc.double({ min: 0, max: (89.9 * Math.PI) / 180, noNaN: true });
    fc.assert(
      fc.property(turn, turn, (x, y) => {
        const [open, shut] = pair(x, y);
        fc.pre(shut - open > 1e-9);
        expect(butterflyCoefficient(shut).k).toBeGreaterThan(butterflyCoefficient(open).k);
      }),
      RUNS,
    );
    expect(() => butterflyCoefficient(Math.PI / 2)).toThrow(ImpossibleInput);
  });

  it('a cap costs no less with a narrower gap, and always more than a plain exit', () => {
    const gap = fc.double({ min: 0.01, max: 3, noNaN: true });
    fc.assert(
      fc.property(gap, gap, (x, y) => {
        const [narrow, wide] = pair(x, y);
        expect(weatherCapCoefficient(narrow).k).toBeGreaterThanOrEqual(weatherCapCoefficient(wide).k);
        expect(weatherCapCoefficient(wide).k).toBeGreaterThan(1);
      }),
      RUNS,
    );
  });
});

describe('changes of size', () => {
  it('never gain total pressure, whatever diameters and angle', () => {
    const cone = fc.option(fc.double({ min: 0.02, max: Math.PI, noNaN: true }));
    fc.assert(
      fc.property(diameter, diameter, cone, (upstreamDiameter_m, downstreamDiameter_m, includedAngle_rad) => {
        const { k } = sizeChange({ upstreamDiameter_m, downstreamDiameter_m, includedAngle_rad });
        expect(k).toBeGreaterThanOrEqual(0);
        expect(Number.isFinite(k)).toBe(true);
      }),
      RUNS,
    );
  });

  it('equal diameters cost nothing', () => {
    for (const includedAngle_rad of [null, 0.1, Math.PI]) {
      const same = { upstreamDiameter_m: 0.1, downstreamDiameter_m: 0.1, includedAngle_rad };
      expect(sizeChange(same).k).toBeCloseTo(0, 12);
    }
  });

  it('a coefficient goes to the other side and back unchanged, and keeps the loss in pascals', () => {
    const side = fc.constantFrom('upstream', 'downstream');
    fc.assert(
      fc.property(diameter, diameter, fc.double({ min: -2, max: 50, noNaN: true }), side, (D1, D2, k, on) => {
        const [A1, A2] = [D1 * D1, D2 * D2];
        const other = on === 'upstream' ? 'downstream' : 'upstream';
        const there = rebase({ k, on }, other, A1, A2);
        const [from, to] = on === 'upstream' ? [A1, A2] : [A2, A1];
        // Loss in pascals at mass flow 1 and density 0.5: k / area^2.
        expect(there.k / (to * to)).toBeCloseTo(
          k / (from * from),
          6 - Math.ceil(Math.log10(1 + Math.abs(k) / from ** 2)),
        );
        expect(rebase(there, on, A1, A2).k).toBeCloseTo(k, 9);
      }),
      RUNS,
    );
  });
});

describe('hose and hoods', () => {
  it('hose relations are finite, not negative, and rise as they must', () => {
    fc.assert(
      fc.property(diameter, fc.double({ min: 1e-3, max: 0.02, noNaN: true }), angle, (D, pitch, turn) => {
        expect(hawthorneFriction(D, pitch)).toBeGreaterThan(0);
        expect(compressedHoseFactor(D, 0.2)).toBeGreaterThan(compressedHoseFactor(D, 0.1));
        const tight = hoseBendCoefficient({ bendRadius_m: D, diameter_m: D, angle_rad: turn }).k;
        const wide = hoseBendCoefficient({ bendRadius_m: 2 * D, diameter_m: D, angle_rad: turn }).k;
        expect(tight).toBeGreaterThanOrEqual(wide);
        expect(wide).toBeGreaterThanOrEqual(0);
      }),
      RUNS,
    );
  });

  it('a tapered hood stays between its least and its greatest printed value', () => {
    fc.assert(
      fc.property(angle, fc.constantFrom('round', 'rectangular'), (full, shape) => {
        const { k } = taperedHoodCoefficient(full, shape);
        expect(k).toBeGreaterThanOrEqual(0.06);
        expect(k).toBeLessThanOrEqual(0.5);
      }),
      RUNS,
    );
  });
});

describe('materials', () => {
  it('have unlike ids, words, a source and a roughness', () => {
    expect(new Set(MATERIALS.map((row) => row.id)).size).toBe(MATERIALS.length);
    for (const row of MATERIALS) {
      expect(row.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(row.label.length * row.source.length).toBeGreaterThan(0);
      expect(row.roughness_m).toBeGreaterThan(0);
      expect(material(row.id)).toBe(row);
    }
  });
});
