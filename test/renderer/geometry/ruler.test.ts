import { describe, expect, it } from 'vitest';
import { rulerTicks, scaleBar } from '../../../renderer/geometry/ruler.ts';

const labels = (...args: Parameters<typeof rulerTicks>) =>
  rulerTicks(...args).flatMap(({ at_m, label }) =>
    label === null ? [] : [[label, Math.round(at_m * 1e6) / 1e6]],
  );

describe('ruler', () => {
  it('labels metres that are far enough apart to read', () => {
    expect(labels(-0.5, 2.2, 100, 'si')).toEqual([
      ['0', 0],
      ['1', 1],
      ['2', 2],
    ]);
    expect(labels(0, 1, 200, 'si').map(([label]) => label)).toEqual(['0', '0.5', '1']);
  });

  it('labels feet where a foot is', () => {
    expect(labels(0, 0.7, 220, 'us')).toEqual([
      ['0', 0],
      ['1', 0.3048],
      ['2', 0.6096],
    ]);
  });

  it('has a mark for each twelfth of a foot between them', () => {
    const ticks = rulerTicks(0, 0.3048, 220, 'us');
    expect(ticks).toHaveLength(13);
    expect(ticks[1]!.at_m).toBeCloseTo(0.0254, 12);
  });

  it('never makes more marks than a screen has pixels for', () => {
    expect(rulerTicks(-1e6, 1e6, 4, 'si').length).toBeLessThanOrEqual(2001);
  });
});

describe('scale bar', () => {
  it('is the longest even length that fits', () => {
    expect(scaleBar(100, 'si', 120)).toEqual({ length_m: 1, width_px: 100, label: '1 m' });
    const feet = scaleBar(100, 'us', 120);
    expect(feet.label).toBe('2 ft');
    expect(feet.width_px).toBeCloseTo(60.96, 9);
  });
});
