import { expect, it } from 'vitest';
import { RunViews } from '../../../../../core/summary/figures/plan/run-view.ts';
import { drawn } from '../../../document/drawn.ts';

it('draws a gate on a riser beside it, away from the legs that meet there, and says where it belongs', () => {
  const { run, things } = drawn(
    [
      [0, 0, 1],
      [2, 0, 1],
      [2, 0, 3],
      [2, 2, 3],
    ],
    { pieces: [{ kind: 'gate', id: 'G1', along: { leg: 1, at: 0.5 } }] },
  );
  const [view] = new RunViews().of([run], things);
  const [gate] = view!.marks;
  expect(gate!.riser).toMatchObject({ x: 2, y: 0 });
  // the duct comes from the left and goes on down the paper: up to the right is free
  const [dx, dy] = [gate!.x - 2, gate!.y];
  expect(dx).toBeGreaterThan(0);
  expect(dy).toBeLessThan(0);
  // clear of the riser's own circle
  expect(Math.hypot(dx, dy)).toBeGreaterThan(gate!.diameter_m);
  const flat = drawn(
    [
      [0, 0],
      [2, 0],
    ],
    { pieces: [{ kind: 'gate', id: 'G1', along: { leg: 0, at: 0.5 } }] },
  );
  expect(new RunViews().of([flat.run], flat.things)[0]!.marks[0]).toMatchObject({ x: 1, y: 0 });
  expect(new RunViews().of([flat.run], flat.things)[0]!.marks[0]!.riser).toBeUndefined();
});
