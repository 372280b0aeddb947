import { expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

async function command(page: Page, words: string): Promise<void> {
  await page.keyboard.press('Control+k');
  const list = page.getByRole('dialog', { name: 'Commands and places' });
  await list.waitFor();
  await page.keyboard.type(words);
  await list.getByRole('option').first().waitFor();
  await page.keyboard.press('Enter');
  await list.waitFor({ state: 'hidden' });
}

const ports = (page: Page) => hand.onPlan(page, /^Machine port/);

journeys('commands', (visit) => {
  it('are found by their words, and things by their names', async () => {
    const { page, errors } = await visit();
    await hand.reads(hand.summary(page), 'every run holds');
    await page.keyboard.press('Control+k');
    const list = page.getByRole('dialog', { name: 'Commands and places' });
    await page.keyboard.type('quite unknown');
    await hand.reads(list, 'Nothing matches');
    await page.keyboard.press('Escape');
    await list.waitFor({ state: 'hidden' });

    await command(page, 'pleated');
    await hand.reads(hand.selection(page), 'Pleated cartridge');
    expect(await hand.onPlan(page, /^Filter/).getAttribute('aria-pressed')).toBe('true');
    await command(page, 'curves');
    await page.getByRole('region', { name: 'Curves' }).waitFor();
    await command(page, 'light or dark');
    expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
    await command(page, 'us customary');
    await hand.reads(hand.summary(page), 'cfm');
    hand.calm(errors);
  });

  it('copy, paste, duplicate and align', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.onPlan(page, /^Machine port router/).click();
    await page.keyboard.press('Control+c');
    await page.keyboard.press('Control+v');
    await expect.poll(() => ports(page).count()).toBe(2);
    await page.keyboard.press('Control+d');
    await expect.poll(() => ports(page).count()).toBe(3);
    await hand.reads(hand.summary(page), /incomplete: 2 things are missing/);

    const pressed = () => page.locator('[aria-pressed=true][aria-label^="Machine port"]').count();
    expect(await pressed()).toBe(1);
    for (const port of await ports(page).all()) {
      if ((await port.getAttribute('aria-pressed')) !== 'true') await port.focus();
    }
    await page.keyboard.press('Control+a');
    await expect.poll(pressed).toBe(3);
    await page.keyboard.press('Escape');
    const [a, b] = await ports(page).all();
    await a!.click({ position: { x: 6, y: 6 } });
    await page.keyboard.down('Shift');
    await b!.click({ position: { x: 6, y: 6 } });
    await page.keyboard.up('Shift');
    await hand.reads(hand.selection(page), '2 selected');
    await command(page, 'align left');
    const lefts = await Promise.all([a!, b!].map(async (port) => (await port.boundingBox())!.x));
    expect(Math.abs(lefts[0]! - lefts[1]!)).toBeLessThan(1.5);

    for (let i = 0; i < 3; i++) await page.keyboard.press('Control+z');
    await expect.poll(() => ports(page).count()).toBe(1);
    await hand.reads(hand.summary(page), 'every run holds');
    hand.calm(errors);
  });

  it('delete a branch, and the wye that it leaves goes too', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    const before = (await hand.named(page, /^Run R1 .* m\/s/)).replace(/.*?([\d.]+ m\/s.*)/, '$1');
    const text = await hand.savedText(page);
    await hand.place(page, 'Floor sweep', await hand.spot(page, 0.12, 0.85));
    await page.keyboard.press('r');
    const list = page.getByRole('listbox', { name: 'Connect to…' });
    await list.getByRole('option', { name: /onto run R1/ }).click();
    await hand.named(page, /^Wye/);
    expect(await hand.onPlan(page, /^Run/).count()).toBe(6);

    await hand.onPlan(page, /^(Machine port|Floor sweep) port-1/).click();
    await page.keyboard.press('Delete');
    await expect.poll(() => hand.onPlan(page, /^(Machine port|Floor sweep) port-1/).count()).toBe(0);
    // the branch ends in a cap; taken away too, its wye goes and the halves are one again
    const branch = /^Run (\w+).*, shut$/.exec(await hand.named(page, /^Run .*, shut$/))![1]!;
    await hand.clickRun(page, branch, 0.3);
    await page.keyboard.press('Delete');
    await expect.poll(() => hand.onPlan(page, /^Wye/).count()).toBe(0);
    expect(await hand.onPlan(page, /^Run/).count()).toBe(4);
    await hand.reads(hand.summary(page), 'every run holds');
    expect(await hand.named(page, /^Run R1 .* m\/s/)).toContain(before);
    while (await page.getByRole('button', { name: 'Undo' }).isEnabled())
      await page.keyboard.press('Control+z');
    expect(await hand.savedText(page)).toBe(text);
    hand.calm(errors);
  });
});
