import { expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';
import { accessible, tidy } from './looks.ts';

const screen = (page: Page) => page.getByRole('region', { name: 'Upkeep', exact: true });
const side = (page: Page) => page.getByRole('complementary', { name: 'Upkeep' });
const due = (page: Page) => screen(page).getByRole('region', { name: 'What comes due' });

/** Running hours at which something of the list is due. */
async function dueAt(page: Page, what: RegExp): Promise<number> {
  const row = due(page).getByRole('listitem').filter({ hasText: what });
  return Number(/^\s*([\d.]+) h/.exec(await hand.reads(row, /^\s*[\d.]+ h/))![1]);
}

async function type(page: Page, label: string, text: string): Promise<void> {
  const input = side(page).getByLabel(label, { exact: true });
  await input.fill(text);
  await input.press('Enter');
}

async function toUpkeep(page: Page, example: RegExp): Promise<void> {
  await hand.dismissGuide(page);
  await hand.choose(page, 'File', example);
  await page.getByRole('tab', { name: 'Upkeep' }).click();
  await screen(page).waitFor();
}

journeys('upkeep', (visit) => {
  it('says when to clean and to empty, and follows the filter, the hours and the shares', async () => {
    const { page, errors } = await visit();
    await toUpkeep(page, /five machines/);
    const clean = /clean the filter/i;
    const before = await dueAt(page, clean);
    const bin = await dueAt(page, /empty the bin/i);
    expect(before).toBeGreaterThan(bin);

    // a third more area: each part of it gets less dust and less air
    await type(page, 'Filter area', '400 ft^2');
    await expect.poll(() => dueAt(page, clean)).toBeGreaterThan(2 * before);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => dueAt(page, clean)).toBe(before);

    await type(page, 'Running hours', '100');
    await hand.reads(due(page), /need not be cleaned/);
    await type(page, 'Running hours', 'a fortnight');
    await hand.reads(side(page).getByRole('alert'), /no time: type running hours/);
    await type(page, 'Running hours', '600 h');
    await expect.poll(() => dueAt(page, clean)).toBe(before);

    // the setting that loses its velocity first is not used any more
    await type(page, 'Share of the hours in planer alone', '60 %');
    await type(page, 'Share of the hours in jointer alone', '20 %');
    await hand.reads(side(page), /planer alone[\s\S]*75(\.0)? %/);
    await expect.poll(async () => (await due(page).innerText()).includes('saw and sander')).toBe(false);

    // what was edited is kept within the second, and offered again
    await page.waitForTimeout(1000);
    await page.reload();
    await page.getByRole('button', { name: 'Take them up' }).click();
    await page.getByRole('tab', { name: 'Upkeep' }).click();
    await expect
      .poll(() => side(page).getByLabel('Running hours', { exact: true }).inputValue())
      .toBe('600 h');
    hand.calm(errors);
  });

  it('accounts for all the dust and for the electricity', async () => {
    const { page, errors } = await visit();
    await toUpkeep(page, /one router/);
    const balance = screen(page).getByRole('region', { name: /^Dust and electricity/ });
    const shares = await hand.reads(balance, /made by the machines/);
    const [caught, held, passed] = [...shares.matchAll(/([\d.]+) %/g)].map((found) => Number(found[1]));
    expect(caught! + held! + passed!).toBeCloseTo(100, 1);
    await hand.reads(balance, /kWh; give the price/);
    await type(page, 'Price of a kWh', '0.3');
    const costed = await hand.reads(balance, /cost [\d.]+/);
    const [, kWh, cost] = /([\d.]+) kWh, cost\s+([\d.]+)/.exec(costed)!;
    expect(Number(cost)).toBeCloseTo(0.3 * Number(kWh), 0);
    await type(page, 'Price of a kWh', 'cheap');
    await hand.reads(side(page).getByRole('alert'), /\w/);
    hand.calm(errors);
  });

  it('is read hour by hour with the keys alone', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.choose(page, 'File', /one router/);
    await page.keyboard.press('5');
    await screen(page).waitFor();
    const slider = screen(page).getByRole('slider', { name: 'read at' });
    const flowNow = async () =>
      Number(/router ([\d.]+) m3\/h/.exec((await slider.getAttribute('aria-valuetext'))!)![1]);
    const start = await flowNow();
    await slider.focus();
    await page.keyboard.press('End');
    await hand.reads(screen(page).getByRole('row', { name: /^router/ }), /m3\/h/);
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^at 500 h, /);
    expect(await flowNow()).toBeLessThan(start);
    hand.calm(errors);
  });

  it('says what a shop lacks before its hours can be followed', async () => {
    const { page, errors } = await visit();
    await hand.emptyShop(page);
    await page.getByRole('tab', { name: 'Upkeep' }).click();
    await hand.reads(screen(page), /when the shop is complete/);
    hand.calm(errors);
  });

  for (const theme of ['light', 'dark'] as const) {
    it(`keeps nobody out and stands in its frame, ${theme}`, async () => {
      const { page, errors } = await visit({ colorScheme: theme, viewport: { width: 1100, height: 700 } });
      await toUpkeep(page, /five machines/);
      await dueAt(page, /clean the filter/i);
      await accessible(page, 'upkeep');
      await tidy(page, 'upkeep, 1100x700');
      hand.calm(errors);
    });
  }
});
