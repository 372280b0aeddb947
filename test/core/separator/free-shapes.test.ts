import fc from 'fast-check';
import { expect, it } from 'vitest';
import { ImpossibleInput } from '../../../core/quantities/impossible-input.ts';
import { GRADE_MODELS } from '../../../core/separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS, PLAIN_CYCLONE } from '../../../core/separator/pressure-drop.ts';
import { checkCycloneGeometry } from '../../../core/separator/proportions.ts';
import { anyFlow, anySize } from './samples.ts';

const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });

// Shapes that no standard has: each dimension at random within what can be built.
const freeShape = fc
  .record({ D: share, De: share, b: share, h: share, a: share, cone: share, S: share, B: share })
  .map(({ D, De, b, h, a, cone, S, B }) => ({
    bodyDiameter_m: D,
    outletDiameter_m: De * D,
    inletWidth_m: (b * D) / 2,
    cylinderHeight_m: 4 * h * D,
    inletHeight_m: a * 4 * h * D,
    totalHeight_m: 4 * (h + cone) * D,
    outletDepth_m: S * 4 * (h + cone) * D,
    dustOutletDiameter_m: B * D,
  }));

/** The value, or null where the model refuses in its own typed way; any other error fails the test. */
function valueOrRefusal(work: () => number): number | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof ImpossibleInput) return null;
    throw error;
  }
}

it('every model gives a finite number or a typed refusal for any shape that can be built', () => {
  const counts = { shapes: 0, values: 0 };
  fc.assert(
    fc.property(freeShape, anyFlow, anySize, (geometry, flow, size) => {
      if (valueOrRefusal(() => checkCycloneGeometry(geometry).bodyDiameter_m) === null) return;
      counts.shapes++;
      for (const row of Object.values(CYCLONE_LOSS_MODELS)) {
        const xi = valueOrRefusal(() => row.coefficient(geometry, PLAIN_CYCLONE));
        if (xi === null) continue;
        expect(xi, row.label).toBeGreaterThan(0);
        expect(Number.isFinite(xi), row.label).toBe(true);
        counts.values++;
      }
      for (const row of Object.values(GRADE_MODELS)) {
        const grade = valueOrRefusal(() => row.grade(size, geometry, flow));
        if (grade === null) continue;
        expect(grade >= 0 && grade <= 1, row.label).toBe(true);
        counts.values++;
      }
    }),
    { seed: 81, numRuns: 2000 },
  );
  expect(counts.shapes).toBeGreaterThan(300);
  expect(counts.values).toBeGreaterThan(8 * counts.shapes); // of ten models, most have a value
});
