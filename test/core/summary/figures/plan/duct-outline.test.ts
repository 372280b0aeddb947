import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationAt, stationsOf } from '../../../../../core/summary/figures/plan/duct-line.ts';
import type { LineLeg } from '../../../../../core/summary/figures/plan/duct-line.ts';
import { ductOutline, flowArrows, stretches } from '../../../../../core/summary/figures/plan/duct-outline.ts';
import { apart, planPoint } from '../../../../../renderer/geometry/space.ts';

const duct = (size_m: number, hose = false): LineLeg => ({ start_m: size_m, end_m: size_m, hose });
const numbers = (path: string) => path.match(/-?\d+(\.\d+)?(e-?\d+)?/g)!.map(Number);
const points = (path: string) => {
  const all = numbers(path);
  return Array.from({ length: all.length / 2 }, (_, i) => planPoint(all[2 * i]!, all[2 * i + 1]!));
};

describe('a straight duct', () => {
  const stations = stationsOf({ points: [planPoint(0, 0), planPoint(2, 0)], radii_m: [], legs: [duct(0.1)] });

  it('is two lines at its true diameter', () => {
    expect(ductOutline(stations).walls).toBe('M0 -0.05L2 -0.05M0 0.05L2 0.05');
  });

  it('has its full length', () => {
    expect(stations.at(-1)!.along_m).toBe(2);
    expect(stationAt(stations, 0.5)).toMatchObject({ x: 0.5, y: 0, direction_rad: 0, half_m: 0.05 });
  });
});

describe('an elbow of 90 degrees', () => {
  const radius = 0.3;
  const stations = stationsOf({
    points: [planPoint(0, 0), planPoint(2, 0), planPoint(2, 2)],
    radii_m: [radius],
    legs: [duct(0.2), duct(0.2)],
  });

  it('takes a tangent off each leg and puts a quarter circle there', () => {
    // 2 (2 - 0.3) + 0.3 pi/2, of which the chords of 6 degrees lose less than 1 in 2000
    const exact = 2 * (2 - radius) + (radius * Math.PI) / 2;
    expect(stations.at(-1)!.along_m).toBeGreaterThan(exact * 0.9995);
    expect(stations.at(-1)!.along_m).toBeLessThanOrEqual(exact);
  });

  it('has every station of the bend at the radius from its centre', () => {
    const centre = planPoint(2 - radius, radius);
    const bend = stations.filter((s) => s.x > 1.7001 && s.y < 0.2999);
    expect(bend.length).toBeGreaterThan(10);
    for (const station of bend) expect(apart(centre, station)).toBeCloseTo(radius, 9);
  });

  it('has its walls half a diameter from the centre line', () => {
    for (const { across } of stations) expect(Math.hypot(across.x, across.y)).toBeCloseTo(1, 9);
  });
});

describe('bends', () => {
  it('are cut to half of the shorter leg where the radius does not fit', () => {
    const stations = stationsOf({
      points: [planPoint(0, 0), planPoint(0.2, 0), planPoint(0.2, 3)],
      radii_m: [1],
      legs: [duct(0.1), duct(0.1)],
    });
    expect(Math.max(...stations.map((s) => s.x))).toBeLessThanOrEqual(0.2 + 1e-9);
    expect(stations[1]).toMatchObject({ x: 0.1, y: 0 });
  });

  it('of radius 0 are mitred: the walls meet on the line that halves the angle', () => {
    const { walls } = ductOutline(
      stationsOf({
        points: [planPoint(0, 0), planPoint(1, 0), planPoint(1, 1)],
        radii_m: [0],
        legs: [duct(0.2), duct(0.2)],
      }),
    );
    expect(points(walls)).toContainEqual({ x: 1.1, y: -0.1 });
    expect(points(walls)).toContainEqual({ x: 0.9, y: 0.1 });
  });

  it('do not run away at a hairpin', () => {
    const { fill } = ductOutline(
      stationsOf({
        points: [planPoint(0, 0), planPoint(1, 0), planPoint(0, 0.001)],
        radii_m: [0],
        legs: [duct(0.2), duct(0.2)],
      }),
    );
    for (const { x, y } of points(fill)) expect(Math.hypot(x, y)).toBeLessThan(1.5);
  });
});

describe('any line', () => {
  const coordinate = fc.double({ min: -5, max: 5, noNaN: true });
  const corner = fc.record({ x: coordinate, y: coordinate });

  it('gives finite stations that go forwards', () => {
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 2, maxLength: 7 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (line, r) => {
          const legs = line.slice(1).map((_, i) => duct(0.1 + 0.02 * i, i % 2 === 1));
          const stations = stationsOf({ points: line, radii_m: line.slice(2).map(() => r), legs });
          let before = 0;
          for (const { x, y, along_m } of stations) {
            expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
            expect(along_m).toBeGreaterThanOrEqual(before);
            before = along_m;
          }
          expect(ductOutline(stations).fill).not.toMatch(/NaN|Infinity/);
        },
      ),
      { seed: 44 },
    );
  });

  it('of no length is nothing', () => {
    expect(
      stationsOf({ points: [planPoint(1, 1), planPoint(1, 1)], radii_m: [], legs: [duct(0.1)] }),
    ).toEqual([]);
    expect(ductOutline([]).fill).toBe('');
  });
});

describe('hose', () => {
  it('is told from duct along one run, with a line across where they meet', () => {
    const stations = stationsOf({
      points: [planPoint(0, 0), planPoint(1, 0), planPoint(3, 0)],
      radii_m: [0],
      legs: [duct(0.1, true), duct(0.1)],
    });
    expect(stretches(stations).map((part) => [part[0]!.hose, part[0]!.x, part.at(-1)!.x])).toEqual([
      [true, 0, 1],
      [false, 1, 3],
    ]);
    const outline = ductOutline(stations);
    expect(outline.walls).toBe('M1 -0.05L3 -0.05M1 0.05L3 0.05');
    expect(outline.hoseWalls.match(/Q/g)!.length).toBeGreaterThan(20);
    expect(outline.joints).toContain('M1 -0.05L1 0.05');
  });
});

describe('size changes', () => {
  it('taper over a short way', () => {
    const stations = stationsOf({
      points: [planPoint(0, 0), planPoint(1, 0), planPoint(2, 0)],
      radii_m: [0],
      legs: [duct(0.1), duct(0.16)],
    });
    expect(stations.filter((s) => s.x <= 1).every((s) => s.half_m === 0.05)).toBe(true);
    expect(stations.find((s) => s.x > 1)).toMatchObject({ x: 1.12, half_m: 0.08 });
  });
});

describe('flow arrows', () => {
  const stations = stationsOf({ points: [planPoint(0, 0), planPoint(3, 0)], radii_m: [], legs: [duct(0.1)] });

  it('point along the run, and back where the air goes back', () => {
    const tips = (backwards: boolean) =>
      points(flowArrows(stations, 1, backwards)).filter((_, i) => i % 3 === 1);
    expect(tips(false).map(({ x }) => x)).toEqual([0.518, 1.518, 2.518]);
    expect(tips(true).map(({ x }) => x)).toEqual([0.482, 1.482, 2.482]);
  });

  it('are left out on a stub', () => {
    expect(
      flowArrows(
        stationsOf({ points: [planPoint(0, 0), planPoint(0.1, 0)], radii_m: [], legs: [duct(0.1)] }),
        1,
        false,
      ),
    ).toBe('');
  });
});
