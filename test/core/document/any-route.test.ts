import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectivePieces } from '../../../core/document/effective-pieces.ts';
import { quantityOf } from '../../../core/document/quantity-of.ts';
import { arcLength, measureRoute } from '../../../core/document/route.ts';
import { drawn, jointAt } from './drawn.ts';
import type { Triple } from './drawn.ts';

/** A drawing of a shop, to the millimetre. */
const coordinate = fc.integer({ min: -20_000, max: 20_000 }).map((mm) => mm / 1000);
const triple = fc.tuple(coordinate, coordinate, coordinate);
const way = fc.array(triple, { minLength: 2, maxLength: 8 });

/** Turned round the vertical and made larger. */
const turned = ([x, y, z = 0]: Triple, angle: number, scale: number): Triple => [
  scale * (x * Math.cos(angle) - y * Math.sin(angle)),
  scale * (x * Math.sin(angle) + y * Math.cos(angle)),
  scale * z,
];

describe('any route', () => {
  it('is as long as its polyline less tangents plus arcs', () => {
    fc.assert(
      fc.property(way, fc.double({ min: 0.5, max: 3, noNaN: true }), (points, ratio) => {
        const { run, things } = drawn(points, { ratio });
        const measure = measureRoute(run, things);
        const whole = points
          .slice(1)
          .reduce(
            (sum, [x, y, z], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1], z - points[i]![2]),
            0,
          );
        const off = measure.bends.reduce((sum, bend) => sum + 2 * bend.tangent_m - arcLength(bend), 0);
        expect(measure.length_m).toBeCloseTo(whole - off, 8);
        expect(
          Math.min(...measure.legs.map((leg) => leg.length_m - leg.before_m - leg.after_m)),
        ).toBeGreaterThan(-1e-9);
        const straights = effectivePieces(run, things).reduce(
          (sum, piece) => sum + (piece.kind === 'straight' ? piece.length.si : 0),
          0,
        );
        expect(straights).toBeCloseTo(
          measure.legs.reduce((sum, leg) => sum + leg.straight_m, 0),
          8,
        );
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('does not change when turned, and grows in proportion with its duct', () => {
    fc.assert(
      fc.property(
        way,
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        (points, angle, scale) => {
          const small = drawn(points);
          const large = drawn(
            points.map((point) => turned(point, angle, scale)),
            { diameter: quantityOf('length', 0.1 * scale) },
          );
          const a = measureRoute(small.run, small.things);
          const b = measureRoute(large.run, large.things);
          expect(b.bends.length).toBe(a.bends.length);
          expect(b.length_m).toBeCloseTo(a.length_m * scale, 6);
          b.bends.forEach((bend, i) => expect(bend.angle_rad).toBeCloseTo(a.bends[i]!.angle_rad, 6));
        },
      ),
      { seed: 12, numRuns: 300 },
    );
  });

  it('does not hang on things that it does not end at', () => {
    fc.assert(
      fc.property(way, triple, (points, elsewhere) => {
        const { run, things } = drawn(points);
        const more = new Map([...things, ['c', jointAt('c', elsewhere)]]);
        expect(effectivePieces(run, more)).toEqual(effectivePieces(run, things));
      }),
      { seed: 13, numRuns: 50 },
    );
  });
});
