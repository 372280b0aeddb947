import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '../../../core/examples/index.ts';
import { readValue } from '../../../core/document/read.ts';
import { upkeep } from '../../../core/upkeep/upkeep.ts';
import { binHeaps, binTeeth, fullShare } from '../../../renderer/upkeep/bin-heaps.ts';
import { readHour } from '../../../renderer/upkeep/read-hour.ts';

function followed(id: keyof typeof EXAMPLES, hours: number) {
  const read = readValue(EXAMPLES[id]);
  if (!read.ok) throw new Error(id);
  const outcome = upkeep(read.document, hours);
  if (!outcome.ok) throw new Error(outcome.problems[0]!.message);
  return outcome.result;
}

describe('heaps of bins', () => {
  it.each([
    ['one-router', 500],
    ['five-machines', 40],
    ['bench-line', 300],
  ] as const)('of %s grow with the mass and are full when the result says so', (id, hours) => {
    const result = followed(id, hours);
    const [bin] = binHeaps(result);
    const full = fullShare(result);
    expect(full).toBe(0.75);
    const { heap } = bin!;
    const times = result.timeline.map(({ time_h }) => time_h);
    for (let i = 1; i < heap.length; i++) expect(heap[i]!).toBeGreaterThanOrEqual(heap[i - 1]!);
    const { first_h, times: fills } = result.binsFull[0]!;
    expect(Math.floor(heap.at(-1)! / full)).toBe(fills);
    const teeth = binTeeth(times, heap, full).filter(([, filled]) => filled === full);
    expect(teeth.length).toBe(fills);
    // the march finds that hour between its own two points in the same way
    expect(Math.abs(teeth[0]![0] - first_h)).toBeLessThan(1e-6 * hours);
  });
});

describe('teeth of a bin', () => {
  it('rise to the brim, fall to nothing, and hold as much in all as was put in', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: 2, maxLength: 12 }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (steps, full) => {
          let sum = 0;
          const heap = [0, ...steps.map((step) => (sum += step))];
          const hours = heap.map((_, i) => i);
          const places = binTeeth(hours, heap, full);
          for (const [, filled] of places) {
            expect(filled).toBeGreaterThan(-1e-6);
            expect(filled).toBeLessThanOrEqual(full + 1e-9);
          }
          const risen = places
            .slice(1)
            .reduce((total, [, filled], i) => total + Math.max(0, filled - places[i]![1]), 0);
          expect(risen).toBeCloseTo(sum, 6);
        },
      ),
      { seed: 20 },
    );
  });
});

describe('reading at an hour', () => {
  it('gives the points of the march where they are, and between them what lies between', () => {
    const result = followed('one-router', 500);
    const heaps = binHeaps(result);
    const full = fullShare(result);
    const [, a, b] = result.timeline;
    const at = readHour(result, heaps, full, a!.time_h);
    expect(at.settings[0]!.flow_m3s).toBe(a!.settings[0]!.flow_m3s);
    expect(at.bins[0]!.filled).toBeCloseTo(a!.bins[0]!.filled!, 9);
    const middle = readHour(result, heaps, full, (a!.time_h + b!.time_h) / 2);
    expect(middle.drops[0]!.drop_Pa).toBeCloseTo((a!.drops[0]!.drop_Pa + b!.drops[0]!.drop_Pa) / 2, 9);
    const end = readHour(result, heaps, full, 500);
    expect(end.settings[0]!.flow_m3s).toBe(result.timeline.at(-1)!.settings[0]!.flow_m3s);
  });

  it('gives the state after a cleaning at its hour', () => {
    const result = followed('five-machines', 250);
    const { time_h } = result.events.find(({ kind }) => kind === 'cleaned')!;
    const dropAt = (hour: number) =>
      readHour(result, binHeaps(result), fullShare(result), hour).drops[0]!.drop_Pa;
    expect(dropAt(time_h)).toBeLessThan(0.7 * dropAt(time_h - 0.01));
  });
});
