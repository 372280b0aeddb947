import { describe, expect, it } from 'vitest';
import {
  captureFlow,
  captureVelocity,
  enclosureFlow,
  enclosureVelocity,
  fletcherVelocityRatio,
  slotCaptureFlow,
  slotCaptureVelocity,
} from '../../core/fittings/capture.ts';
import { expectRelative } from './relative.ts';

// Worked by hand from the printed equations: velocity at distance X over face velocity, square face.
describe('capture at a distance', () => {
  it.each([
    [1, 0.09091, 0.12121, 0.1052],
    [0.5, 0.2857, 0.381, 0.3252],
  ])('X = %f sqrt(A)', (distance_m, plain, flanged, fletcher) => {
    const opening = { faceArea_m2: 1, distance_m };
    expectRelative(captureVelocity({ style: 'plain', ...opening }, 1), plain, 5e-4);
    expectRelative(captureVelocity({ style: 'flanged', ...opening }, 1), flanged, 5e-4);
    expectRelative(fletcherVelocityRatio({ length_m: 1, width_m: 1, distance_m }), fletcher, 5e-4);
  });

  it('two relations of different authors agree within a fifth for a square face from 0.4 to 1.5 sqrt(A)', () => {
    for (const distance_m of [0.4, 0.6, 0.8, 1, 1.2, 1.5]) {
      const dallaValle = captureVelocity({ style: 'plain', faceArea_m2: 1, distance_m }, 1);
      expectRelative(fletcherVelocityRatio({ length_m: 1, width_m: 1, distance_m }), dallaValle, 0.2);
    }
  });

  it('far from a plain opening it is near a point sink in free air, 4 pi X^2 (limit, a fifth lower as fitted)', () => {
    const flow = captureFlow({ style: 'plain', faceArea_m2: 0.01, distance_m: 10 }, 1);
    expectRelative(flow, 4 * Math.PI * 100, 0.21);
  });

  it('a slot is near a line sink over most of a cylinder, 2 pi L X, and half of one with a flange (limit)', () => {
    const slot = { slotLength_m: 1, distance_m: 0.3 };
    const plain = slotCaptureFlow({ style: 'plain', ...slot }, 1);
    const flanged = slotCaptureFlow({ style: 'flanged', ...slot }, 1);
    expect(plain).toBeLessThan(2 * Math.PI * 0.3);
    expect(plain).toBeGreaterThan(Math.PI * 0.3);
    expectRelative(flanged, Math.PI * 0.3, 0.2);
  });
});

describe('both directions', () => {
  it('close', () => {
    const opening = { style: 'flanged', faceArea_m2: 0.02, distance_m: 0.15 } as const;
    expectRelative(captureVelocity(opening, captureFlow(opening, 0.7)), 0.7, 1e-12);
    const slot = { style: 'plain', slotLength_m: 0.4, distance_m: 0.1 } as const;
    expectRelative(slotCaptureVelocity(slot, slotCaptureFlow(slot, 0.7)), 0.7, 1e-12);
    expectRelative(enclosureVelocity(enclosureFlow(0.7, 0.03), 0.03), 0.7, 1e-12);
  });
});
