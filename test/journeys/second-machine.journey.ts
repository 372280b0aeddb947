import { expect, it } from 'vitest';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

journeys('a second machine', (visit) => {
  it('joins the first by ending its run on the first run, with a wye and a velocity in each', async () => {
    const { page, errors } = await visit();
    await hand.reads(hand.summary(page), 'every run holds');
    await hand.dismissGuide(page);
    const before = await hand.velocityOf(page, 'R1');
    expect(await hand.onPlan(page, /^Wye/).count()).toBe(0);

    await hand.place(page, 'Machine port', await hand.spot(page, 0.12, 0.85));
    await hand.reads(hand.summary(page), /incomplete: 1 thing is missing/);
    await hand.reads(hand.findings(page), 'no run is joined to port-1');
    await page.keyboard.press('Escape');

    await page.getByRole('button', { name: 'Draw run' }).click();
    const ring = hand
      .plan(page)
      .getByRole('button', { name: 'Start a run at Machine port port-1', exact: true });
    const start = await hand.middle(ring);
    const end = await hand.alongRun(page, 'R1', 0.75);
    await hand.clickAlong(page, [start]);
    await page.mouse.move(end.x, end.y + 60, { steps: 5 });
    await page.mouse.move(end.x, end.y, { steps: 5 });
    await page.mouse.down();
    await page.mouse.up();

    await hand.named(page, /^Wye/);
    await hand.reads(hand.summary(page), /m3\/h at/);
    const names = await hand
      .onPlan(page, /^Run .* m\/s, needs/)
      .evaluateAll((list) => list.map((e) => e.getAttribute('aria-label')!));
    // the branch, both halves of the first run, and the two behind the cyclone
    expect(names).toHaveLength(5);
    for (const name of names)
      expect(name).toMatch(/[1-9][\d.]* m\/s, needs [\d.]+ m\/s, (holds|too slow|fast)/);
    // more openings: less air through the first
    expect(await hand.velocityOf(page, 'R1')).toBeLessThan(before);
    await hand.onPlan(page, /^Machine port port-1, [1-9]/).waitFor();

    await page.getByRole('tab', { name: 'Ledger' }).click();
    await hand.reads(hand.runRow(page, 'R1'), /m\/s/);
    await hand.ledger(page).getByRole('row', { name: /^Wye/ }).first().waitFor();
    hand.calm(errors);
  });
});
