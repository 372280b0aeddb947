import { expect, it } from 'vitest';
import { placeLabels } from '../../../core/summary/figures/plan/label-layout.ts';
import { RunViews } from '../../../core/summary/figures/plan/run-view.ts';
import { ledTexts, runTexts, runWish } from '../../../renderer/plan/label-wishes.ts';
import { drawn } from '../../core/document/drawn.ts';

it('leads a label that has no room beside its run to it by a line, with all that it says', () => {
  const { run, things } = drawn([
    [0, 0],
    [1, 0],
  ]);
  const [view] = new RunViews().of([run], things);
  const { texts, leaders } = ledTexts(runTexts('12.1 / 20.0 m/s', 'too slow'));
  expect(leaders).toEqual([false, false, true, true, false]);
  const wish = runWish(view!, texts, 100, leaders);
  const free = placeLabels([wish], []).get('R1')!;
  expect(leaders[free.size]).toBe(false);
  // everything near the run is taken
  const crowd = [{ x: 50, y: 0, width_px: 260, height_px: 90 }];
  const led = placeLabels([wish], crowd).get('R1')!;
  expect(leaders[led.size]).toBe(true);
  expect(texts[led.size]).toBe('12.1 / 20.0 m/s  too slow');
  expect(Math.abs(led.y) > 45 || Math.abs(led.x - 50) > 130).toBe(true);
});
