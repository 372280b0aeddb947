import { expect, it } from 'vitest';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

journeys('habits of the plan', (visit) => {
  it('keeps the plan where it is, whatever there is to say below it', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.reads(hand.summary(page), 'every run holds');
    const before = await hand.plan(page).boundingBox();
    const said = await hand.findings(page).innerText();
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Inside diameter', '300 mm');
    await hand.reads(hand.summary(page), /do(es)? not/);
    await expect.poll(() => hand.findings(page).innerText()).not.toBe(said);
    expect(await hand.plan(page).boundingBox()).toEqual(before);
    await hand.choose(page, 'File', 'New, empty shop');
    await page.getByRole('button', { name: 'Discard them' }).click();
    await hand.reads(hand.summary(page), /incomplete/);
    expect(await hand.plan(page).boundingBox()).toEqual(before);
    hand.calm(errors);
  });

  it('pulls a leg of a run sideways, by pointer and by key, each one step of undo', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.reads(hand.summary(page), 'every run holds');
    await hand.clickRun(page, 'R1');
    const legs = hand.plan(page).getByRole('button', { name: /^Leg \d+ of run R1/ });
    const corners = hand.plan(page).getByRole('button', { name: /^Corner \d+ of run R1/ });
    const names = () => corners.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
    await legs.first().waitFor();
    const drawn = await names();
    const at = await hand.middle(legs.nth(1));
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x + 60, at.y + 60, { steps: 8 });
    await page.mouse.up();
    await expect.poll(names).not.toEqual(drawn);
    await page.keyboard.press('Control+z');
    await expect.poll(names).toEqual(drawn);

    // the first leg stands on a machine: the run gains a corner, and the leg keeps the focus
    await legs.first().focus();
    const way = (await legs.first().getAttribute('transform'))!.includes('rotate(0)')
      ? 'ArrowDown'
      : 'ArrowRight';
    await page.keyboard.down(way);
    await page.keyboard.down(way);
    await page.keyboard.up(way);
    await expect.poll(async () => (await names()).length).toBe(drawn.length + 1);
    await page.keyboard.press('Control+z');
    await expect.poll(names).toEqual(drawn);
    hand.calm(errors);
  });

  it('reads the charts by key, with units', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.reads(hand.summary(page), 'every run holds');
    await page.getByRole('tab', { name: 'Curves' }).click();
    const curve = page.getByRole('application', { name: /^System and fan curve/ });
    await curve.focus();
    await page.keyboard.press('End');
    for (let i = 0; i < 5; i++) await page.keyboard.press('PageDown');
    const said = page.locator('figure [aria-live]');
    await expect.poll(() => said.textContent()).toMatch(/^At .*m3\/h, the system takes .* k?Pa/);
    await page.getByRole('tab', { name: 'Ledger' }).click();
    await page.getByRole('application', { name: /^Pressure staircase/ }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => said.textContent()).toMatch(/loses .*Pa; after it total .*Pa, static/);
    const first = await said.textContent();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => said.textContent()).not.toBe(first);
    hand.calm(errors);
  });
});
