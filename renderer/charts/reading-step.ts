/** Presses of a key that go through the whole of a chart without gaps. */
const PAGE = 10;

/** Place that a key leads to from place `at` of `count`, -1 being none yet; null where the key is none of these. */
export function readingStep(key: string, at: number, count: number): number | null {
  if (count === 0) return null;
  const last = count - 1;
  const within = (n: number) => Math.min(Math.max(n, 0), last);
  if (key === 'Home') return 0;
  if (key === 'End') return last;
  if (key === 'Escape') return -1;
  if (key === 'ArrowRight' || key === 'ArrowUp') return within(at + 1);
  if (key === 'ArrowLeft' || key === 'ArrowDown') return at < 0 ? last : within(at - 1);
  if (key === 'PageUp') return within(at + PAGE);
  return key === 'PageDown' ? within(at < 0 ? last : at - PAGE) : null;
}
