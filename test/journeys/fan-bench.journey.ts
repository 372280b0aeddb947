import { expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';
import { accessible, tidy } from './looks.ts';

const bench = (page: Page): Locator => page.getByRole('region', { name: 'Fan bench' });
const side = (page: Page): Locator => page.getByRole('complementary', { name: 'Fan' });
const readings = (page: Page): Locator => bench(page).getByRole('region', { name: 'Readings' });

async function open(page: Page): Promise<void> {
  await hand.dismissGuide(page);
  await page.getByRole('tab', { name: 'Fan bench' }).click();
}

async function fill(within: Locator, label: string, text: string): Promise<void> {
  const field = within.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

async function addReading(page: Page, kind: string): Promise<void> {
  await readings(page).getByLabel('kind').selectOption({ label: kind });
  await readings(page).getByRole('button', { name: 'Add reading' }).click();
}

/** Half width of the band as the screen says it, once so many readings are in the curve [%]. */
async function bandWith(page: Page, count: number): Promise<number> {
  const said = await hand.reads(
    readings(page).getByRole('status'),
    new RegExp(`^${count} of \\d+ in the curve, band ±[\\d.]+ %`),
  );
  return Number(/±([\d.]+)/.exec(said)![1]);
}

const PLATES = [
  ['20 mm', '2060 Pa'],
  ['32 mm', '2000 Pa'],
  ['50 mm', '1700 Pa'],
  ['70 mm', '1150 Pa'],
] as const;

async function enterTests(page: Page): Promise<number[]> {
  const bands: number[] = [];
  await addReading(page, 'Sealed lift, water column');
  await fill(readings(page), 'Lift of reading 1', '210 mm');
  await fill(readings(page), 'Speed of reading 1', '2900 rpm');
  await addReading(page, 'Sealed lift, water column');
  await fill(readings(page), 'Lift of reading 2', '150 mm');
  await fill(readings(page), 'Speed of reading 2', '2450 rpm');
  bands.push(await bandWith(page, 2));
  for (const [i, [hole, suction]] of PLATES.entries()) {
    const n = i + 3;
    await addReading(page, 'Hole plate');
    await fill(readings(page), `Hole of reading ${n}`, hole);
    await fill(readings(page), `Suction of reading ${n}`, suction);
    await fill(readings(page), `Speed of reading ${n}`, '2900 rpm');
    bands.push(await bandWith(page, n));
  }
  return bands;
}

journeys('the fan bench', (visit) => {
  it('takes a home-made fan from its tests to the shop, and warns of its rotor', async () => {
    const { page, errors } = await visit();
    await open(page);
    const kept = bench(page).getByRole('navigation', { name: 'Fans' }).getByRole('listitem');
    await bench(page).getByRole('button', { name: 'Add a fan' }).first().waitFor();
    const before = await kept.count();
    await bench(page).getByRole('button', { name: 'Add a fan' }).first().click();
    await fill(side(page), 'Name', 'Shed blower');

    const bands = await enterTests(page);
    expect(bands[0]).toBeGreaterThan(30);
    expect(bands.at(-1)).toBeLessThan(bands[0]! / 4);
    for (let i = 1; i < bands.length; i++) expect(bands[i]).toBeLessThan(bands[i - 1]!);
    // somebody who cannot see the picture reads the same
    const slider = bench(page).getByRole('slider', { name: 'read at' });
    await slider.focus();
    const read = await slider.getAttribute('aria-valuetext');
    await page.keyboard.press('ArrowLeft');
    expect(await slider.getAttribute('aria-valuetext')).not.toBe(read);
    expect(read).toMatch(/fan static .*, band .* to .*, total /);

    const whole = hand.summary(page);
    const was = await whole.innerText();
    await bench(page).getByRole('button', { name: 'Put in the shop' }).click();
    await bench(page).getByRole('button', { name: 'Take out of the shop' }).waitFor();
    await hand.reads(bench(page), /Shed blower runs at \d+ m3\/h \(\d+ m3\/h to \d+ m3\/h by its band\)/);
    await hand.reads(whole, /do not hold/);

    await bench(page).getByRole('tab', { name: 'Does it hold?' }).click();
    await hand.reads(bench(page).getByRole('tabpanel'), /least sure of all, holds .* matters? most/);
    await hand.reads(bench(page).getByRole('tabpanel'), /1000 draws/);
    await fill(bench(page).getByRole('tabpanel'), 'Separator', '5 %');
    await hand.reads(bench(page).getByRole('list', { name: 'Ranges that were used' }), '±5.00 %');

    await side(page).getByLabel('Its rotor is to be judged').check();
    await side(page).getByLabel('What the rotor bears').waitFor();
    expect(await side(page).getByRole('alert').count()).toBe(0);
    await fill(side(page), 'Highest speed', '24000 rpm');
    await hand.reads(
      side(page).getByRole('alert'),
      /may burst: at 24000 rpm.*guard.*stand clear.*local codes/s,
    );

    // all of it can be undone, down to the shop that was opened
    for (let i = 0; i < 60; i++) {
      const undo = page.getByRole('button', { name: 'Undo' });
      if (await undo.isDisabled()) break;
      await undo.click();
    }
    await bench(page)
      .getByRole('button', { name: /^Shed blower/ })
      .waitFor({ state: 'detached' });
    expect(await kept.count()).toBe(before);
    await hand.reads(whole, was);
    hand.calm(errors);
  });

  it('adds a reading with the keyboard alone', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await page.keyboard.press('4');
    await bench(page).getByRole('button', { name: 'Add a fan' }).last().focus();
    await page.keyboard.press('Enter');
    await readings(page).getByLabel('kind').focus();
    await page.keyboard.type('Hole');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    // the first field of the new row has the focus, with its text selected
    await page.waitForFunction(
      () => document.activeElement?.getAttribute('data-field') === 'readings.0.hole',
    );
    await page.keyboard.type('30 mm');
    await page.keyboard.press('Tab');
    await page.keyboard.type('1.5 kPa');
    await page.keyboard.press('Tab');
    await page.keyboard.type('2900 rpm');
    await page.keyboard.press('Enter');
    await bandWith(page, 1);
    // an edit leaves the focus where it is
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe(
      'readings.0.speed',
    );
    hand.calm(errors);
  });

  it('tells at its row what cannot be, and goes on with the others', async () => {
    const { page, errors } = await visit();
    await open(page);
    await bench(page).getByRole('button', { name: 'Add a fan' }).first().click();
    await enterTests(page);
    await addReading(page, 'Sealed suction, manometer');
    await fill(readings(page), 'Suction of reading 7', '-300 Pa');
    await hand.reads(readings(page), /-300 Pa.*;/s);
    await hand.reads(readings(page).getByRole('row', { name: 'Reading 7' }), 'left out');
    await bandWith(page, 6);
    await fill(readings(page), 'Suction of reading 7', 'lots');
    await readings(page).getByRole('alert').waitFor();
    await readings(page).getByLabel('Suction of reading 7').press('Escape');

    await readings(page)
      .getByRole('button', { name: /Maker's table/ })
      .click();
    const table = readings(page).getByRole('group', { name: "Maker's table" });
    await table.getByRole('textbox').first().fill('flow (m3/h), pressure (Pa)\n0, 2090\n250, 1620\nmuch, 3');
    await hand.reads(table.getByRole('status'), '2 points understood, 1 left out');
    await fill(table, 'Speed of the table', '2900 rpm');
    await table.getByRole('button', { name: 'Take the points' }).click();
    await bandWith(page, 8);
    hand.calm(errors);
  });

  it('shows fans beside each other, and a sheet to test one by', async () => {
    const { page, errors } = await visit();
    await open(page);
    await bench(page).getByRole('button', { name: 'Add a fan' }).first().click();
    await enterTests(page);
    await bench(page).getByRole('button', { name: 'Duplicate' }).click();
    await fill(readings(page), 'Lift of reading 1', '160 mm');
    await bench(page).getByRole('tab', { name: 'Compare' }).click();
    await bench(page).getByRole('figure', { name: 'Fans compared' }).waitFor();
    await hand.reads(bench(page).getByRole('table'), /Fan 1.*m3\/h.*Fan 1, copy 1.*m3\/h/s);

    await bench(page).getByRole('button', { name: 'Test sheet' }).click();
    const sheet = page.frameLocator('iframe[title="Test sheet"]');
    await sheet.getByRole('heading', { name: /^Test sheet/ }).waitFor();
    expect(await sheet.locator('h1').evaluate((h) => getComputedStyle(h).color)).toBe('rgb(0, 0, 0)');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as HTML' }).click();
    expect((await download).suggestedFilename()).toMatch(/^Test sheet.*\.html$/);
    await page.getByRole('button', { name: 'Close' }).click();
    hand.calm(errors);
  });

  for (const theme of ['light', 'dark'] as const) {
    it(`keeps nobody out and cuts nothing, ${theme}`, async () => {
      const { page, errors } = await visit({ colorScheme: theme });
      await hand.emptyShop(page);
      await page.getByRole('tab', { name: 'Fan bench' }).click();
      await bench(page).getByRole('heading', { name: 'No fan is kept in this shop yet' }).waitFor();
      await accessible(page, 'a bench without fans');
      await hand.choose(page, 'File', /one router/);
      await bench(page).getByRole('button', { name: 'Add a fan' }).first().click();
      await enterTests(page);
      await side(page).getByLabel('Its motor is known').check();
      await side(page).getByLabel('Its rotor is to be judged').check();
      await fill(side(page), 'Highest speed', '24000 rpm');
      await side(page).getByRole('alert').waitFor();
      await readings(page).getByRole('button', { name: 'Details of reading 3' }).click();
      await accessible(page, 'a fan on the bench');
      for (const [width, height] of [
        [1440, 900],
        [1100, 700],
      ] as const) {
        await page.setViewportSize({ width, height });
        for (const pane of ['Tests and curve', 'Compare', 'Does it hold?']) {
          await bench(page).getByRole('tab', { name: pane }).click();
          if (pane === 'Does it hold?') await hand.reads(bench(page).getByRole('tabpanel'), /1000 draws/);
          if (pane === 'Compare') await bench(page).getByRole('figure', { name: 'Fans compared' }).waitFor();
          await tidy(page, `${pane}, ${width}x${height}, ${theme}`);
          await accessible(page, pane);
        }
      }
      hand.calm(errors);
    });
  }
});
