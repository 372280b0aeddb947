import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveNet } from '../../../core/network/newton.ts';
import { faultsOf } from './check-solved.ts';
import { randomNet } from './random-net.ts';
import type { NetRecipe } from './random-net.ts';

const recipes = (sizes: NetRecipe['sizes'], most: number) =>
  fc.record({
    seed: fc.integer({ min: 1, max: 1e9 }),
    size: fc.integer({ min: 1, max: most }),
    sizes: fc.constant(sizes),
    loops: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 8 })),
    fans: fc.integer({ min: 0, max: 4 }),
    shutShare: fc.constantFrom(0, 0.1, 0.4),
    junctionShare: fc.constantFrom(0, 0.5, 1),
    compressible: fc.boolean(),
  });

describe('the solver on random networks', () => {
  it('balances every network of sizes that a shop builds', () => {
    fc.assert(
      fc.property(recipes('sane', 200), (recipe) => {
        const packed = randomNet(recipe);
        const outcome = solveNet(packed);
        expect(faultsOf(packed, outcome)).toEqual([]);
        if (!outcome.converged) expect(outcome.reason).not.toBe('did-not-settle');
      }),
      { seed: 61, numRuns: 500 },
    );
  });

  it('balances any network, or says why not, in finite time and finite numbers', () => {
    fc.assert(
      fc.property(recipes('absurd', 200), (recipe) => {
        const packed = randomNet(recipe);
        expect(faultsOf(packed, solveNet(packed))).toEqual([]);
      }),
      { seed: 62, numRuns: 300 },
    );
  });

  it('comes to the same answer from a neighbouring one', () => {
    fc.assert(
      fc.property(recipes('sane', 60), fc.integer({ min: 0, max: 59 }), (recipe, turned) => {
        // fans with a hump have more than one answer; which is found may depend on the start
        const packed = randomNet({ ...recipe, fans: 0, junctionShare: 0 });
        const e = turned % recipe.size;
        packed.shut[e] = packed.shut[e] ? 0 : 1;
        const before = solveNet(packed);
        packed.shut[e] = packed.shut[e] ? 0 : 1;
        const cold = solveNet(packed);
        if (!before.converged || !cold.converged) return;
        const warm = solveNet(packed, { warm: before.state });
        if (!warm.converged) throw new Error(warm.reason);
        const total = cold.state.flow_kgs.reduce((sum, m) => Math.max(sum, Math.abs(m)), 0);
        if (total < 0.02) return; // a leak alone: the tolerance in pressure is a larger share of its flow
        warm.state.flow_kgs.forEach((m, i) => {
          const other = cold.state.flow_kgs[i]!;
          // a flow near nothing is the root of a pressure near nothing, so there the squares are compared
          if (Math.abs(m) > 0.01 * total) expect(Math.abs(m - other)).toBeLessThanOrEqual(1e-9 * total);
          else
            expect(Math.abs(m * Math.abs(m) - other * Math.abs(other))).toBeLessThanOrEqual(
              1e-9 * total * total,
            );
        });
      }),
      { seed: 63, numRuns: 150 },
    );
  });
});
