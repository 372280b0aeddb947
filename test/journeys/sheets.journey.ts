import { readFile } from 'node:fs/promises';
import { csvParse } from 'd3-dsv';
import { expect, it } from 'vitest';
import type { Download, Page } from 'playwright-core';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';
import { accessible, tidy } from './looks.ts';

const screen = (page: Page) => page.getByRole('region', { name: 'Sheets', exact: true });
const side = (page: Page) => page.getByRole('complementary', { name: 'Sheets' });
const paper = (page: Page) => page.frameLocator('iframe[title="Preview of the summary"]').locator('body');
const section = (page: Page, name: string) => side(page).getByRole('checkbox', { name, exact: true });

async function toSheets(page: Page, pane?: string): Promise<void> {
  await page.getByRole('tab', { name: 'Sheets' }).click();
  await screen(page).waitFor();
  if (pane) await page.getByRole('tab', { name: pane, exact: true }).click();
}

async function downloaded(page: Page, act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const waiting: Promise<Download> = page.waitForEvent('download');
  await act();
  const download = await waiting;
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

/** Takes the slow sections out, so that the preview is there at once. */
async function only(page: Page, names: readonly string[]): Promise<void> {
  await side(page).getByRole('button', { name: 'None' }).click();
  for (const name of names) await section(page, name).check();
}

journeys('sheets', (visit) => {
  it('shows the sections that are chosen, on the paper and with the date that are chosen, and saves them', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await toSheets(page);
    await only(page, []);
    await hand.reads(screen(page), /No section is chosen/);
    await section(page, 'Losses, piece by piece').check();
    await hand.reads(paper(page), /Losses, piece by piece/);
    expect(await paper(page).innerText()).not.toContain('All settings');
    await section(page, 'All settings').check();
    await hand.reads(paper(page), /All settings/);
    await section(page, 'Losses, piece by piece').uncheck();
    await expect.poll(async () => (await paper(page).innerText()).includes('Losses, piece')).toBe(false);

    const day = side(page).getByLabel('Date on it');
    expect(await day.inputValue()).toMatch(/^\d{4}-\d\d-\d\d$/);
    await day.fill('2031-02-03');
    await hand.reads(paper(page), /2031-02-03/);
    expect(await side(page).getByLabel('Paper').inputValue()).toBe('a4');
    await side(page).getByLabel('Paper').selectOption('Letter');
    await hand.reads(paper(page), /2031-02-03/);

    const save = side(page).getByRole('button', { name: 'Save as HTML' });
    await expect.poll(() => save.isEnabled()).toBe(true);
    const { name, text } = await downloaded(page, () => save.click());
    expect(name).toMatch(/one router, summary\.html$/);
    expect(text).toMatch(/^<!doctype html>/);
    expect(text).toContain('size: letter');
    expect(text).toContain('2031-02-03');
    expect(text).not.toContain('Losses, piece by piece');
    await hand.reads(side(page).getByRole('status'), /Saved as HTML/);

    // choices are the user's and stay
    await page.reload();
    await toSheets(page);
    expect(await section(page, 'Losses, piece by piece').isChecked()).toBe(false);
    expect(await side(page).getByLabel('Paper').inputValue()).toBe('letter');
    hand.calm(errors);
  });

  it('asks for the printer with the page that is previewed', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await toSheets(page);
    await only(page, ['All settings']);
    await hand.reads(paper(page), /All settings/);
    const print = side(page).getByRole('button', { name: 'Print', exact: true });
    await expect.poll(() => print.isEnabled()).toBe(true);
    await page.evaluate(() => {
      const frame = document.querySelector<HTMLIFrameElement>('iframe[title="Preview of the summary"]')!;
      const view = frame.contentWindow!;
      view.print = () => (document.title = `printing ${view.document.body.innerText.slice(0, 200)}`);
    });
    await print.click();
    expect(await page.title()).toMatch(/^printing [^]*one router/);
    hand.calm(errors);
  });

  it('shows a name that looks like a page or a formula as the text that it is', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    const evil = '<script>alert(1)</script><img src=x onerror=alert(2)>';
    await hand.type(page, 'Name', evil);
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Name', '=cmd()<b>x</b>');
    await toSheets(page);
    await only(page, ['All settings', 'Losses, piece by piece']);
    await hand.reads(paper(page), evil);
    await hand.reads(paper(page), '=cmd()<b>x</b>');
    expect(await paper(page).locator('script, img, b:text-is("x")').count()).toBe(0);
    await page.getByRole('tab', { name: 'Parts', exact: true }).click();
    const save = side(page).getByRole('button', { name: 'Save as CSV' });
    await expect.poll(() => save.isEnabled()).toBe(true);
    const { text, name } = await downloaded(page, () => save.click());
    expect(name).not.toMatch(/[<>"]/);
    expect(text.split('\r\n').some((line) => /^[=+@-]/.test(line))).toBe(false);
    hand.calm(errors);
  });

  it('adds up prices, tells one with letters at its field, and gives the list to other programs', async () => {
    const { page, context, errors } = await visit();
    await context.grantPermissions(['clipboard-read']);
    await hand.dismissGuide(page);
    await toSheets(page, 'Parts');
    const table = screen(page).getByRole('table', { name: /^Parts of/ });
    const row = (name: RegExp) => table.getByRole('row', { name });
    await row(/^Gate/).waitFor();
    const total = table.getByRole('row', { name: /^in all/ });

    const gate = row(/^Gate/).getByRole('textbox', { name: /^Unit price of Gate/ });
    await gate.fill('a tenner');
    await gate.press('Enter');
    await hand.reads(row(/^Gate/).getByRole('alert'), /\w/);
    expect(await gate.getAttribute('aria-invalid')).toBe('true');
    await hand.reads(total, /^in all, of what has a figure\s+–/);
    await gate.fill('12.50');
    await gate.press('Enter');
    await hand.reads(total, /12\.50/);
    const clamp = row(/^Hose clamp/).getByRole('textbox', { name: /^Unit price/ });
    await clamp.fill('2');
    await clamp.press('Enter');
    // two in the shop and one to spare
    await hand.reads(total, /18\.50/);
    const weight = row(/^Gate/).getByRole('textbox', { name: /^Unit weight of Gate/ });
    await weight.fill('400 g');
    await weight.press('Enter');
    await hand.reads(total, /400 g/);
    await side(page).getByLabel('Money', { exact: true }).fill('EUR');
    await side(page).getByLabel('Money', { exact: true }).press('Enter');
    await hand.reads(table.getByRole('columnheader', { name: /^price/ }), 'price [EUR]');

    const stock = side(page).getByLabel(/^galvanised steel/);
    await stock.fill('1.5 m');
    await stock.press('Enter');
    await hand.reads(screen(page).getByRole('region', { name: 'Cutting plan' }), /1\.50 m lengths/);

    const save = side(page).getByRole('button', { name: 'Save as CSV' });
    await expect.poll(() => save.isEnabled()).toBe(true);
    const { name, text } = await downloaded(page, () => save.click());
    expect(name).toMatch(/, parts\.csv$/);
    const read = csvParse(text);
    const gateRow = read.find((one) => one['part'] === 'Gate')!;
    expect([gateRow['buy'], gateRow['unit price'], gateRow['price'], gateRow['weight kg']]).toEqual([
      '1',
      '12.5',
      '12.5',
      '0.4',
    ]);
    expect(read.reduce((sum, one) => sum + Number(one['price']), 0)).toBeCloseTo(18.5, 9);
    expect(read.filter((one) => one['unit'] === '1.5 m').length).toBeGreaterThan(0);

    await side(page).getByRole('button', { name: 'Copy parts' }).click();
    await hand.reads(side(page).getByRole('status'), /on the clipboard/);
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    expect(copied.split('\n')).toHaveLength(read.length + 1);
    expect(copied.split('\n')[0]!.split('\t')).toEqual(read.columns);
    hand.calm(errors);
  });

  it('says what an edit changed, against what was saved and against a file', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    const before = await hand.savedText(page);
    await hand.clickRun(page, 'R1');
    const bore = hand.field(page, /diameter/i).first();
    await bore.fill('125 mm');
    await bore.press('Enter');
    await toSheets(page, 'Changes');
    const changed = screen(page).getByRole('region', { name: 'What was changed' });
    await hand.reads(changed, /run R1[\s\S]*diameter[\s\S]*125 mm/i);
    await hand.reads(screen(page).getByRole('region', { name: 'Parts to buy' }), /Hose/);
    await hand.reads(screen(page), /Setting router[\s\S]*R1\s+[\d.]+ m\/s\s+[\d.]+ m\/s/);

    const choice = side(page).getByLabel('The other shop');
    expect(await choice.locator('option').allInnerTexts()).toEqual([
      'as last saved',
      expect.stringMatching(/^1\. before: /) as string,
    ]);
    const chooser = page.waitForEvent('filechooser');
    await side(page)
      .getByRole('button', { name: /Another file/ })
      .click();
    const broken = { name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from('{') };
    await (await chooser).setFiles(broken);
    await hand.reads(side(page).getByRole('status'), /broken\.json cannot be read/);
    const again = page.waitForEvent('filechooser');
    await side(page)
      .getByRole('button', { name: /Another file/ })
      .click();
    const buffer = Buffer.from(before.replace('Tern Street: one router', 'An older shop'));
    await (await again).setFiles({ name: 'older.json', mimeType: 'application/json', buffer });
    await hand.reads(screen(page), /older\.json, An older shop/);
    await hand.reads(changed, /Name of the shop[\s\S]*An older shop[\s\S]*one router/);
    hand.calm(errors);
  });

  for (const theme of ['light', 'dark'] as const) {
    it(`keeps nobody out and stands in its frame, ${theme}`, async () => {
      const { page, errors } = await visit({ colorScheme: theme, viewport: { width: 1100, height: 700 } });
      await hand.dismissGuide(page);
      await page.keyboard.press('6');
      await screen(page).waitFor();
      await only(page, ['Plan', 'All settings']);
      await hand.reads(paper(page), /All settings/);
      await accessible(page, 'summary');
      await tidy(page, 'summary, 1100x700');
      // the panes are one stop of the Tab key, and arrows go through them
      await page.getByRole('tab', { name: 'Summary' }).focus();
      await page.keyboard.press('ArrowRight');
      await screen(page)
        .getByRole('table', { name: /^Parts of/ })
        .waitFor();
      await accessible(page, 'parts');
      await tidy(page, 'parts, 1100x700');
      await page.keyboard.press('ArrowRight');
      await hand.reads(screen(page), /What was changed/);
      await accessible(page, 'changes');
      await tidy(page, 'changes, 1100x700');
      hand.calm(errors);
    });
  }
});
