import { describe, expect, it } from 'vitest';
import { anchorOf } from '../../../core/document/anchors.ts';
import { effectivePieces } from '../../../core/document/effective-pieces.ts';
import { quantityOf } from '../../../core/document/quantity-of.ts';
import { materialsOf, measureRoute } from '../../../core/document/route.ts';
import type { Thing } from '../../../core/document/schema-things.ts';
import { drawn, legOf, place } from './drawn.ts';

const kinds = (pieces: readonly { kind: string }[]) => pieces.map((piece) => piece.kind);

describe('measureRoute', () => {
  it('takes the tangents of a right angle off both legs', () => {
    const { run, things } = drawn([
      [0, 0],
      [2, 0],
      [2, 3],
    ]);
    const measure = measureRoute(run, things);
    // a right angle of radius 0.15 m takes its radius off either leg
    expect(measure.legs.map((leg) => leg.straight_m)).toEqual([
      expect.closeTo(1.85, 12),
      expect.closeTo(2.85, 12),
    ]);
    expect(measure.bends[0]!.angle_rad).toBeCloseTo(Math.PI / 2, 12);
    expect(measure.length_m).toBeCloseTo(1.85 + 2.85 + 0.15 * (Math.PI / 2), 12);
  });

  it('measures rises and drops', () => {
    // 3 m along the floor and 4 m up is 5 m of duct
    const sloped = drawn([
      [0, 0, 0],
      [3, 0, 4],
    ]);
    expect(measureRoute(sloped.run, sloped.things).length_m).toBeCloseTo(5, 12);
    const riser = drawn([
      [0, 0, 0],
      [0, 0, 2.5],
      [4, 0, 2.5],
    ]);
    const measure = measureRoute(riser.run, riser.things);
    expect(measure.legs.map((leg) => leg.length_m)).toEqual([2.5, 4]);
    expect(measure.bends[0]!.angle_rad).toBeCloseTo(Math.PI / 2, 12);
  });

  it('keeps the height of the point before where a corner has none', () => {
    const { run, things } = drawn([
      [0, 0, 1.2],
      [2, 0],
      [2, 2, 1.2],
    ]);
    expect(measureRoute(run, things).points.map((point) => point.z)).toEqual([1.2, 1.2, 1.2]);
  });

  it('has no bend at a corner on a straight line, and one where points coincide', () => {
    const line = drawn([
      [0, 0],
      [1, 1],
      [3, 3],
    ]);
    expect(measureRoute(line.run, line.things).bends).toEqual([]);
    expect(kinds(effectivePieces(line.run, line.things))).toEqual(['straight', 'straight']);
    const twice = drawn([
      [0, 0],
      [2, 0],
      [2, 0],
      [2, 2],
    ]);
    const measure = measureRoute(twice.run, twice.things);
    expect(measure.bends.map((bend) => bend.corner)).toEqual([1]);
    expect(measure.legs.map((leg) => leg.straight_m)).toEqual([
      expect.closeTo(1.85, 12),
      0,
      expect.closeTo(1.85, 12),
    ]);
  });

  it('cuts a radius that does not fit and marks the bend', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [0.2, 0],
        [0.2, 2],
      ],
      { ratio: 3 },
    );
    const [bend] = measureRoute(run, things).bends;
    expect(bend).toMatchObject({ tight: true, wanted_m: expect.closeTo(0.3, 12) as number });
    expect(bend!.radius_m).toBeCloseTo(0.2, 12);
    const elbow = effectivePieces(run, things).find((piece) => piece.kind === 'elbow');
    expect(elbow).toMatchObject({ tight: true, derived: true });
    expect(elbow?.kind === 'elbow' && elbow.radiusRatio?.si).toBeCloseTo(2, 12);
  });

  it('shares a short leg between two bends', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [2, 0],
        [2, 0.3],
        [4, 0.3],
      ],
      { ratio: 3 },
    );
    const measure = measureRoute(run, things);
    expect(measure.bends.map((bend) => bend.radius_m)).toEqual([
      expect.closeTo(0.15, 12),
      expect.closeTo(0.15, 12),
    ]);
    expect(measure.legs[1]!.straight_m).toBeCloseTo(0, 12);
  });

  it('never bends tighter than half a diameter, even straight back', () => {
    const { run, things } = drawn([
      [0, 0],
      [2, 0],
      [0, 0],
    ]);
    const [bend] = measureRoute(run, things).bends;
    expect(bend!.radius_m).toBeCloseTo(0.05, 12);
    expect(bend!.tight).toBe(true);
  });

  it('lets typed values win and marks the pieces', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [2, 0],
        [2, 3],
      ],
      { legs: [legOf({ length: 7 }), {}] },
    );
    run.route.corners[0]!.angle = quantityOf('angle', 1);
    const pieces = effectivePieces(run, things);
    expect(pieces[0]).toMatchObject({ kind: 'straight', overridden: true, leg: 0, key: 'R1.1' });
    expect(pieces[0]!.kind === 'straight' && pieces[0]!.length.si).toBe(7);
    expect(pieces[1]).toMatchObject({ kind: 'elbow', overridden: true, corner: 0 });
    expect(pieces[1]!.kind === 'elbow' && pieces[1]!.angle.si).toBe(1);
    expect(pieces[2]).toMatchObject({ overridden: false });
  });
});

describe('effectivePieces', () => {
  it('leaves a run as typed where nothing is drawn', () => {
    const { run, things } = drawn([
      [0, 0],
      [1, 0],
    ]);
    const { route, ...typed } = run;
    expect(route.corners).toEqual([]);
    typed.pieces = [{ kind: 'straight', length: quantityOf('length', 4, 'not-negative') }];
    const [piece] = effectivePieces(typed, things);
    expect(piece).toEqual({ ...typed.pieces[0]!, key: 'R1.1', derived: false, overridden: false, source: 0 });
  });

  it('bends hose with the radius of the run', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [2, 0],
        [2, 3],
      ],
      { material: 'hose-smooth-bore', ratio: 2, style: 'mitre' },
    );
    const pieces = effectivePieces(run, things);
    expect(kinds(pieces)).toEqual(['straight', 'hose-bend', 'straight']);
    expect(pieces[1]!.kind === 'hose-bend' && pieces[1]!.radius.si).toBeCloseTo(0.2, 12);
    expect(pieces[0]!.kind === 'straight' && pieces[0]!.length.si).toBeCloseTo(1.8, 12);
  });

  it('takes nothing off for a mitre', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [2, 0],
        [2, 3],
      ],
      { style: 'mitre' },
    );
    expect(measureRoute(run, things).length_m).toBeCloseTo(5, 12);
  });

  it('puts a gate where it stands and splits the straight around it', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [4, 0],
      ],
      { pieces: [{ kind: 'gate', id: 'G1', along: { leg: 0, at: 0.25 } }] },
    );
    const pieces = effectivePieces(run, things);
    expect(pieces.map((piece) => piece.key)).toEqual(['R1.1', 'G1', 'R1.3']);
    expect(pieces.map((piece) => (piece.kind === 'straight' ? piece.length.si : null))).toEqual([1, null, 3]);
  });

  it('gives a change of size between legs a tapered reducer', () => {
    const { run, things } = drawn(
      [
        [0, 0],
        [2, 0],
        [2, 3],
      ],
      { legs: [{}, legOf({ diameter: 0.125 })] },
    );
    const pieces = effectivePieces(run, things);
    expect(kinds(pieces)).toEqual(['straight', 'elbow', 'reducer', 'straight']);
    expect(pieces[2]!.kind === 'reducer' && [pieces[2]!.to.si, pieces[2]!.angle!.si]).toEqual([
      0.125,
      Math.PI / 6,
    ]);
  });

  it('lists materials of run, legs and pieces once', () => {
    const { run } = drawn(
      [
        [0, 0],
        [2, 0],
        [3, 0],
      ],
      { legs: [{}, legOf({ material: 'hose-smooth-bore' })] },
    );
    expect(materialsOf(run)).toEqual(['galvanised-spiral', 'hose-smooth-bore']);
  });
});

describe('anchorOf', () => {
  it('puts the ends of a body across it, along its turn', () => {
    const fan: Thing = {
      kind: 'cyclone',
      id: 'c',
      at: place([5, 5, 1]),
      turn: quantityOf('angle', Math.PI / 2, 'any'),
      proportions: 'lapple',
      bodyDiameter: quantityOf('length', 0.4),
      lossModel: 'x',
      gradeModel: 'y',
    };
    const out = anchorOf(fan, 'out')!;
    expect([out.x, out.y, out.z]).toEqual([expect.closeTo(5, 12), expect.closeTo(5.2, 12), 1]);
    expect(anchorOf(fan, 'in')!.y).toBeCloseTo(4.8, 12);
  });

  it('lets a port blow into its duct ahead of it, and an exhaust be reached from behind', () => {
    const at = place([1, 1, 1]);
    const port: Thing = { kind: 'port', id: 'p', at, hood: { kind: 'entry', entry: 'plain' } };
    const out: Thing = { kind: 'exhaust', id: 'o', at, outlet: { kind: 'open' }, to: 'room' };
    expect(anchorOf(port, '')!.heading_rad).toBe(0);
    expect(anchorOf(out, '')!.heading_rad).toBeCloseTo(Math.PI, 12);
  });

  it('knows no place for a thing without one', () => {
    expect(anchorOf({ kind: 'joint', id: 'j' }, '')).toBeNull();
  });
});
