import { expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';
import { accessible, barriers, tidy, untidiness } from './looks.ts';

/** Windows, and those that a larger text makes of the first. */
const WINDOWS = [
  { what: '1440x900', width: 1440, height: 900, zoom: 1 },
  { what: '1100x700', width: 1100, height: 700, zoom: 1 },
  { what: '1440x900 at 125 %', width: 1152, height: 720, zoom: 1.25 },
  { what: '1440x900 at 200 %', width: 720, height: 450, zoom: 2 },
];
const SCREENS = ['Plan', 'Ledger', 'Curves'];
/** Set to a folder, it gets a picture of each screen. */
const PICTURES = process.env['CHIPDRAFT_PICTURES'];

async function goTo(page: Page, screen: string): Promise<void> {
  await page.getByRole('tab', { name: screen }).click();
  await page.getByRole('region', { name: screen }).waitFor();
  // a chart is drawn from a curve that the solver makes
  if (screen === 'Curves') await page.getByRole('figure', { name: 'System and fan curve' }).waitFor();
}

async function picture(page: Page, name: string): Promise<void> {
  if (PICTURES) await page.screenshot({ path: `${PICTURES}/${name.replace(/\W+/g, '-')}.png` });
}

journeys('every screen', (visit) => {
  for (const { what, width, height, zoom } of WINDOWS) {
    it(`stands in its frame in ${what}, light and dark`, async () => {
      const { page, errors } = await visit({ viewport: { width, height }, deviceScaleFactor: zoom });
      await hand.dismissGuide(page);
      await hand.choose(page, 'File', /five machines/);
      await hand.reads(hand.summary(page), 'every run holds');
      for (const theme of ['light', 'dark']) {
        expect(await page.locator('html').getAttribute('data-theme')).toBe(theme);
        for (const screen of SCREENS) {
          await goTo(page, screen);
          await tidy(page, `${screen}, ${what}, ${theme}`);
          await picture(page, `${screen} ${what} ${theme}`);
        }
        await page.getByRole('tab', { name: 'Plan' }).click();
        await page.keyboard.press('Control+Shift+l');
      }
      // something selected: its fields
      await hand.onPlan(page, /^Cyclone/).focus();
      await page.keyboard.press('Enter');
      await tidy(page, `fields, ${what}`);
      await picture(page, `fields ${what}`);
      hand.calm(errors);
    });
  }

  it('would be found untidy if it were', async () => {
    const { page } = await visit();
    await page.evaluate(() => {
      document.querySelector<HTMLElement>('footer')!.style.marginTop = '-40px';
      const units = document.querySelector<HTMLElement>('[role=tab]')!;
      Object.assign(units.style, { width: '12px', overflow: 'hidden', padding: '0' });
    });
    const faults = (await untidiness(page)).join('\n');
    expect(faults).toMatch(/main > section lies on footer/);
    expect(faults).toMatch(/cut: <button/);
    await page.evaluate(() =>
      document.querySelector('[aria-label="Zoom in"]')!.removeAttribute('aria-label'),
    );
    await page.evaluate(() => (document.querySelector('[title^="Zoom in"]')!.textContent = ''));
    await page.evaluate(() => document.querySelector('[title^="Zoom in"]')!.removeAttribute('title'));
    expect((await barriers(page)).join('\n')).toMatch(/^button-name/m);
  });

  for (const theme of ['light', 'dark'] as const) {
    it(`has nothing that keeps a person out, ${theme}`, async () => {
      const { page, errors } = await visit({ colorScheme: theme });
      expect(await page.locator('html').getAttribute('data-theme')).toBe(theme);
      await hand.reads(hand.summary(page), 'every run holds');
      await accessible(page, 'the first minute');
      await hand.dismissGuide(page);
      for (const screen of SCREENS) {
        await goTo(page, screen);
        await accessible(page, screen);
      }
      await goTo(page, 'Plan');
      await hand.clickRun(page, 'R1');
      await accessible(page, 'fields of a run');
      await hand.onPlan(page, /^Fan/).click();
      await accessible(page, 'fields of a fan');
      await hand.type(page, 'Name', 'Fan');

      await page.getByRole('menuitem', { name: 'File', exact: true }).click();
      await accessible(page, 'a menu');
      await page.getByRole('menuitem', { name: 'New, empty shop' }).click();
      await page.getByRole('dialog').waitFor();
      await accessible(page, 'a question');
      await page.getByRole('button', { name: 'Discard them' }).click();
      await hand.reads(hand.summary(page), 'incomplete');
      await accessible(page, 'an empty shop');
      await page.keyboard.press('Control+k');
      await page.getByRole('dialog', { name: 'Commands and places' }).waitFor();
      await accessible(page, 'the list of commands');
      await page.keyboard.press('Escape');
      await page.keyboard.press('F1');
      await page.getByRole('dialog', { name: 'Keys' }).waitFor();
      await accessible(page, 'the keys');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Picture' }).click();
      await accessible(page, 'the picture under the plan');
      hand.calm(errors);
    });
  }
});
