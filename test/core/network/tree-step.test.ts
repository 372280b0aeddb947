import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveNet } from '../../../core/network/newton.ts';
import { packNet } from '../../../core/network/packed.ts';
import { treeOf, treeStep } from '../../../core/network/tree-step.ts';
import { asNet, benchTree } from '../../bench/bench-tree.ts';
import { seeded } from './seeded.ts';

describe('the linear step on a tree', () => {
  it('satisfies every equation of the system', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 1e6 }), (nodes, seed) => {
        const random = seeded(seed);
        const start: number[] = [];
        const end: number[] = [];
        const join = (a: number, b: number) => {
          const turned = random() < 0.5;
          start.push(turned ? b : a);
          end.push(turned ? a : b);
        };
        for (let v = 0; v < nodes - 1; v++) {
          const up = v + 1 + Math.floor(random() * (nodes - 1 - v));
          join(v, up);
          if (random() < 0.2) join(v, up); // two ducts side by side
        }
        join(nodes - 1, -1);
        for (let v = 0; v < nodes; v++) if (random() < 0.4) join(v, -1);
        const tree = treeOf(nodes, Int32Array.from(start), Int32Array.from(end))!;
        const ne = start.length;
        const byFlow = Float64Array.from(start, () => -(10 ** (4 * random())));
        const right = Float64Array.from({ length: ne + nodes }, () => random() - 0.5);
        const x = right.slice();
        treeStep(tree, Int32Array.from(start), Int32Array.from(end), byFlow, x);
        const pressure = (v: number) => (v < 0 ? 0 : x[ne + v]!);
        const mass = new Float64Array(nodes);
        for (let i = 0; i < ne; i++) {
          const off = byFlow[i]! * x[i]! + pressure(start[i]!) - pressure(end[i]!) - right[i]!;
          const size = Math.abs(byFlow[i]! * x[i]!) + Math.abs(pressure(start[i]!)) + 1;
          expect(Math.abs(off) / size).toBeLessThan(1e-12);
          if (start[i]! >= 0) mass[start[i]!]! -= x[i]!;
          if (end[i]! >= 0) mass[end[i]!]! += x[i]!;
        }
        for (let v = 0; v < nodes; v++) expect(Math.abs(mass[v]! - right[ne + v]!)).toBeLessThan(1e-9);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('sees a ring', () => {
    expect(treeOf(3, Int32Array.of(0, 1, 0), Int32Array.of(1, 2, 2))).toBeNull();
  });

  it('follows a moved gate in three steps to where a cold start ends', () => {
    const packed = packNet(asNet(benchTree(100, 7)));
    const plans = new Map();
    let state = solved(solveNet(packed, { plans })).state;
    for (const element of [0, 3, 50, packed.elementCount - 1]) {
      const gate = packed.segmentStart[element + 1]! - 1;
      packed.forward[gate]! *= 1.3;
      packed.backward[gate]! *= 1.3;
      const warm = solved(solveNet(packed, { plans, warm: state }));
      expect(warm.iterations).toBeLessThanOrEqual(3);
      state = warm.state;
      const cold = solved(solveNet(packNetLike(packed)));
      for (let e = 0; e < packed.elementCount; e++)
        expect(Math.abs(state.flow_kgs[e]! / cold.state.flow_kgs[e]! - 1)).toBeLessThan(1e-9);
    }
  });
});

const solved = (outcome: ReturnType<typeof solveNet>) => {
  if (!outcome.converged) throw new Error(outcome.reason);
  return outcome;
};

/** The same network with nothing kept. */
const packNetLike = (packed: ReturnType<typeof packNet>) => {
  const fresh = packNet(packed.net);
  fresh.forward.set(packed.forward);
  fresh.backward.set(packed.backward);
  return fresh;
};
