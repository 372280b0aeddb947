import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { listen } from './browser.ts';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

const EXAMPLE = readFileSync(new URL('../../core/examples/one-router.json', import.meta.url), 'utf8');

/** Longer than the newest edit waits before it is kept [ms]. */
const KEPT_AFTER = 900;

const notice = (page: Page, title: string | RegExp) => page.getByRole('dialog', { name: title });
const shopName = (page: Page) => page.getByRole('banner');

async function rename(page: Page, name: string): Promise<void> {
  await hand.type(page, 'Name', name);
  await hand.reads(shopName(page), name);
}

/** What a stubbed file of the disk does when it is written. */
interface FakeDisk {
  /** Name of the error that writing ends with; null where it is written. */
  fault: string | null;
  lastModified: number;
  written: string[];
  asked: number;
}
declare global {
  interface Window {
    fakeDisk: FakeDisk;
  }
}

/** Puts a disk behind the browser's own pickers; what it does is set by the journey. */
function fakeDisk(): void {
  const disk: FakeDisk = { fault: null, lastModified: 1000, written: [], asked: 0 };
  window.fakeDisk = disk;
  const handle = {
    name: 'shop.json',
    getFile: () =>
      Promise.resolve(new File(disk.written.slice(-1), 'shop.json', { lastModified: disk.lastModified })),
    createWritable: () => {
      if (disk.fault === 'NotAllowedError') return Promise.reject(new DOMException('no', 'NotAllowedError'));
      let text = '';
      return Promise.resolve({
        write: (more: string) => {
          text += more;
          return disk.fault ? Promise.reject(new DOMException('no', disk.fault)) : Promise.resolve();
        },
        close: () => {
          disk.written.push(text);
          disk.lastModified += 1000;
          return Promise.resolve();
        },
        abort: () => Promise.resolve(),
      });
    },
  };
  Object.defineProperty(window, 'showSaveFilePicker', {
    value: () => {
      disk.asked++;
      return Promise.resolve(handle);
    },
  });
}

journeys('files', (visit) => {
  it('refuse a broken document and a newer one in words, and leave the open shop alone', async () => {
    const { page, errors } = await visit();
    await hand.dismissGuide(page);
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Name', 'Kept name');
    await hand.named(page, /^Run R1 Kept name/);
    const open = async (name: string, text: string, says: RegExp) => {
      const chooser = page.waitForEvent('filechooser');
      await page.keyboard.press('Control+o');
      const question = notice(page, 'Keep your changes?');
      await question.getByRole('button', { name: 'Discard them' }).click();
      await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
      const said = notice(page, `${name} cannot be opened`);
      await said.waitFor();
      await hand.reads(said, says);
      await hand.reads(said, 'The open shop is as it was.');
      await said.getByRole('button', { name: 'Close' }).click();
      await hand.named(page, /^Run R1 Kept name/);
      await hand.reads(shopName(page), '(changed)');
    };
    await open('cut-off.json', EXAMPLE.slice(0, 400), /not whole JSON/);
    await open('empty.json', '', /the file is empty/);
    await open('poem.json', '{"verse": "a plank of larch"}', /Chipdraft|format/i);
    await open('newer.json', EXAMPLE.replace(/"version": \d+/, '"version": 99'), /newer|99/);
    await open('short.json', EXAMPLE.replace(/"diameter": "[^"]*"/, '"diameter": "3 kg"'), /diameter/);
    hand.calm(errors);
  });

  it('open what was saved, as it was saved', async () => {
    const { page, errors } = await visit();
    await rename(page, 'Larch Lane');
    const text = await hand.savedText(page);
    await hand.choose(page, 'File', /five machines/);
    await hand.reads(shopName(page), /five machines/);
    await hand.openFile(page, 'larch.json', text);
    await hand.reads(shopName(page), 'Larch Lane');
    await hand.reads(hand.summary(page), 'every run holds');
    expect(await hand.savedText(page)).toBe(text);
    hand.calm(errors);
  });

  it('are marked as changed until they are saved, and asked about before they are left', async () => {
    const { page, errors } = await visit();
    expect(await shopName(page).innerText()).not.toContain('(changed)');
    await rename(page, 'Larch Lane');
    await hand.reads(shopName(page), '(changed)');
    expect(await page.title()).toContain('•');
    const text = await hand.savedText(page);
    expect(text).toContain('"Larch Lane"');
    await shopName(page).getByText('(changed)').waitFor({ state: 'hidden' });
    expect(await page.title()).not.toContain('•');

    await rename(page, 'Alder Lane');
    await hand.choose(page, 'File', 'New, empty shop');
    const question = notice(page, 'Keep your changes?');
    await hand.reads(question, '"larch-lane.json" has changes that are not saved');
    await question.getByRole('button', { name: 'Keep editing' }).click();
    await hand.reads(shopName(page), 'Alder Lane');
    // put aside with Escape is the same
    await hand.choose(page, 'File', 'New, empty shop');
    await question.waitFor();
    await page.keyboard.press('Escape');
    await question.waitFor({ state: 'hidden' });
    await hand.reads(shopName(page), 'Alder Lane');
    await hand.choose(page, 'File', 'New, empty shop');
    const download = page.waitForEvent('download');
    await question.getByRole('button', { name: 'Save' }).click();
    await download;
    await hand.reads(shopName(page), 'New shop');
    hand.calm(errors);
  });

  it('that cannot be written are told about, and nothing is lost', async () => {
    const { page, errors, context, address } = await visit();
    await context.addInitScript(fakeDisk);
    await page.goto(address);
    await rename(page, 'Larch Lane');
    for (const [fault, says] of [
      ['QuotaExceededError', 'the disk is full'],
      ['NotAllowedError', 'writing is not allowed there'],
    ] as const) {
      await page.evaluate((name) => (window.fakeDisk.fault = name), fault);
      await page.keyboard.press('Control+s');
      const said = notice(page, 'The shop was not saved');
      await hand.reads(said, says);
      await hand.reads(said, 'Nothing is lost');
      await page.keyboard.press('Escape');
      await said.waitFor({ state: 'hidden' });
      await hand.reads(shopName(page), /Larch Lane\s*\(changed\)/);
    }
    expect(await page.evaluate(() => window.fakeDisk.written)).toEqual([]);
    await page.evaluate(() => (window.fakeDisk.fault = null));
    await page.keyboard.press('Control+s');
    await shopName(page).getByText('(changed)').waitFor({ state: 'hidden' });
    expect(await page.evaluate(() => window.fakeDisk.written.at(-1))).toContain('"Larch Lane"');
    hand.calm(errors);
  });

  it('that another program changed are not written over unasked', async () => {
    const { page, errors, context, address } = await visit();
    await context.addInitScript(fakeDisk);
    await page.goto(address);
    await rename(page, 'Larch Lane');
    await page.keyboard.press('Control+s');
    await shopName(page).getByText('(changed)').waitFor({ state: 'hidden' });
    await rename(page, 'Alder Lane');
    await page.evaluate(() => (window.fakeDisk.lastModified += 5));
    await page.keyboard.press('Control+s');
    const question = notice(page, 'The file was changed on disk');
    await hand.reads(question, 'shop.json was changed by another program');
    await question.getByRole('button', { name: 'Do not save' }).click();
    expect(await page.evaluate(() => window.fakeDisk.written.length)).toBe(1);
    await hand.reads(shopName(page), /Alder Lane\s*\(changed\)/);
    await page.keyboard.press('Control+s');
    await question.getByRole('button', { name: 'Save over it' }).click();
    await shopName(page).getByText('(changed)').waitFor({ state: 'hidden' });
    expect(await page.evaluate(() => window.fakeDisk.written.at(-1))).toContain('"Alder Lane"');
    hand.calm(errors);
  });

  it('give back the newest edit after the page was killed', async () => {
    const { page, context, errors, address } = await visit();
    await hand.dismissGuide(page);
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Name', 'Edit before the crash');
    await hand.named(page, /^Run R1 Edit before the crash/);
    await page.waitForTimeout(KEPT_AFTER);
    const crashed = page.waitForEvent('crash');
    const session = await context.newCDPSession(page);
    void session.send('Page.crash').catch(() => undefined);
    await crashed;

    const after = await context.newPage();
    const later = listen(after);
    await after.goto(address);
    const offer = notice(after, 'Unsaved edits were found');
    await hand.reads(offer, 'one router');
    await offer.getByRole('button', { name: 'Take them up' }).click();
    await hand.named(after, /^Run R1 Edit before the crash.*m\/s/);
    await hand.reads(shopName(after), '(changed)');

    // taken up is not yet saved: closing again must not lose it either
    await after.waitForTimeout(KEPT_AFTER);
    await after.close();
    const third = await context.newPage();
    await third.goto(address);
    await notice(third, 'Unsaved edits were found').getByRole('button', { name: 'Discard them' }).click();
    expect(await hand.named(third, /^Run R1/)).not.toContain('crash');
    await third.reload();
    await hand.reads(hand.summary(third), 'every run holds');
    expect(await notice(third, 'Unsaved edits were found').count()).toBe(0);
    hand.calm([...errors, ...later]);
  });
});
