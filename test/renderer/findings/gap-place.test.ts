import { describe, expect, it } from 'vitest';
import { placeOf, plainMessage } from '../../../renderer/findings/gap-place.ts';

describe('place of a problem', () => {
  it('is the last id that the path names, and the field from there', () => {
    expect(placeOf({ path: 'things[2](fan)' })).toEqual({ id: 'fan', path: null });
    expect(placeOf({ path: 'runs[2](R3).from' })).toEqual({ id: 'R3', path: ['from'] });
    expect(placeOf({ path: 'runs[2](R3).pieces[0].length' })).toEqual({
      id: 'R3',
      path: ['pieces', 0, 'length'],
    });
    expect(placeOf({ path: 'runs[2](R3).pieces[0](G1).opening' })).toEqual({ id: 'G1', path: ['opening'] });
    expect(placeOf({ path: '' })).toBeNull();
    expect(placeOf({ path: 'air.humidity' })).toBeNull();
  });

  it('is not said twice', () => {
    const problem = {
      path: 'things[2](fan)',
      message: 'things[2](fan): no run is joined to fan.in',
      remedy: '',
    };
    expect(plainMessage(problem)).toBe('no run is joined to fan.in');
    expect(plainMessage({ path: '', message: 'nothing is drawn yet', remedy: '' })).toBe(
      'nothing is drawn yet',
    );
  });
});
