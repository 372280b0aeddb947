import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { AtRest } from '../../../renderer/state/at-rest.ts';

// The clock of the tests is the runner's own; these are habits of the screen and rest on no outside value.
describe('what waits until the hand rests', () => {
  beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
  afterEach(() => vi.useRealTimers());

  const counted = (rest_ms: number, most_ms: number) => {
    const times: number[] = [];
    const begun = performance.now();
    return { times, rest: new AtRest(() => times.push(performance.now() - begun), rest_ms, most_ms) };
  };

  it('comes once, a rest after the last of several edits', () => {
    const { times, rest } = counted(80, 500);
    for (let i = 0; i < 5; i++) {
      rest.ask();
      vi.advanceTimersByTime(20);
    }
    expect(times).toEqual([]);
    vi.advanceTimersByTime(1000);
    expect(times).toEqual([160]);
  });

  it('does not starve while edits go on and on', () => {
    const { times, rest } = counted(80, 500);
    for (let i = 0; i < 120; i++) {
      rest.ask();
      vi.advanceTimersByTime(10);
    }
    expect(times.length).toBe(2);
    expect(times[0]).toBe(500);
  });

  it('is forgotten when dropped, and can be asked for again', () => {
    const { times, rest } = counted(80, 500);
    rest.ask();
    rest.drop();
    vi.advanceTimersByTime(1000);
    expect(times).toEqual([]);
    rest.ask();
    vi.advanceTimersByTime(80);
    expect(times).toEqual([1080]);
  });
});
