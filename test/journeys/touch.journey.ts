import { expect, it } from 'vitest';
import type { CDPSession, Page } from 'playwright-core';
import * as hand from './hand.ts';
import type { Spot } from './hand.ts';
import { journeys } from './journeys.ts';

type Phase = 'touchStart' | 'touchMove' | 'touchEnd';
const fingers = (cdp: CDPSession, type: Phase, ...spots: Spot[]) =>
  cdp.send('Input.dispatchTouchEvent', { type, touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })) });

/** Where the ends of a run are on screen. */
const ends = async (page: Page): Promise<[Spot, Spot]> => [
  await hand.alongRun(page, 'R1', 0),
  await hand.alongRun(page, 'R1', 1),
];
const apart = ([a, b]: [Spot, Spot]) => Math.hypot(a.x - b.x, a.y - b.y);

journeys('the plan under a finger', (visit) => {
  it('is zoomed by a pinch, moved by two fingers, and a long press selects', async () => {
    const { page, context, errors } = await visit({ hasTouch: true });
    const cdp = await context.newCDPSession(page);
    await hand.dismissGuide(page);
    await hand.reads(hand.summary(page), 'every run holds');
    const before = await ends(page);

    const { x, y } = await hand.spot(page, 0.5, 0.8);
    await fingers(cdp, 'touchStart', { x: x - 50, y }, { x: x + 50, y });
    for (let out = 60; out <= 75; out += 5)
      await fingers(cdp, 'touchMove', { x: x - out, y }, { x: x + out, y });
    await fingers(cdp, 'touchEnd');
    const pinched = await ends(page);
    // the fingers are half as far apart again
    expect(apart(pinched) / apart(before)).toBeCloseTo(1.5, 1);

    await fingers(cdp, 'touchStart', { x: x - 50, y }, { x: x + 50, y });
    for (let k = 1; k <= 4; k++)
      await fingers(
        cdp,
        'touchMove',
        { x: x - 50 + 10 * k, y: y - 5 * k },
        { x: x + 50 + 10 * k, y: y - 5 * k },
      );
    await fingers(cdp, 'touchEnd');
    const moved = await ends(page);
    expect(apart(moved)).toBeCloseTo(apart(pinched), 0);
    expect(moved[0].x - pinched[0].x).toBeCloseTo(40, -1);
    expect(moved[0].y - pinched[0].y).toBeCloseTo(-20, -1);

    const run = await hand.alongRun(page, 'R1', 0.3);
    await fingers(cdp, 'touchStart', run);
    await page.waitForTimeout(700);
    await fingers(cdp, 'touchEnd');
    await expect.poll(() => hand.onPlan(page, /^Run R1\b/).getAttribute('aria-pressed')).toBe('true');
    expect(await page.getByRole('menuitem', { name: 'Edit' }).count()).toBe(1);
    hand.calm(errors);
  });
});
