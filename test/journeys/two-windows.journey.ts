import { expect, it } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { listen } from './browser.ts';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

/** Longer than the newest edit waits before it is kept [ms]. */
const KEPT_AFTER = 900;

const notice = (page: Page, title: string | RegExp) => page.getByRole('dialog', { name: title });
const shopName = (page: Page) => page.getByRole('banner');

async function rename(page: Page, name: string): Promise<void> {
  await hand.type(page, 'Name', name);
  await hand.reads(shopName(page), name);
}

/** Pickers that hand out one real file of the browser's own disk, which all windows of a profile share. */
function sharedFile(): void {
  const handle = () =>
    navigator.storage.getDirectory().then((folder) => folder.getFileHandle('shop.json', { create: true }));
  Object.defineProperty(window, 'showSaveFilePicker', { value: handle });
  Object.defineProperty(window, 'showOpenFilePicker', { value: () => handle().then((one) => [one]) });
}

const onDisk = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory();
    return (await (await folder.getFileHandle('shop.json')).getFile()).text();
  });

async function another(context: BrowserContext, address: string): Promise<{ page: Page; errors: string[] }> {
  const page = await context.newPage();
  const errors = listen(page);
  await page.goto(address);
  await hand.reads(hand.summary(page), /holds|hold/);
  return { page, errors };
}

async function kill(context: BrowserContext, page: Page): Promise<void> {
  const crashed = page.waitForEvent('crash');
  const session = await context.newCDPSession(page);
  void session.send('Page.crash').catch(() => undefined);
  await crashed;
}

const save = async (page: Page) => {
  await page.keyboard.press('Control+s');
  await shopName(page).getByText('(changed)').waitFor({ state: 'hidden' });
};

journeys('two windows', (visit) => {
  it('on one file: the second save asks before it writes over the first', async () => {
    const { page: first, context, address, errors } = await visit();
    await context.addInitScript(sharedFile);
    await first.goto(address);
    await rename(first, 'Larch Lane');
    await save(first);
    const { page: second, errors: later } = await another(context, address);
    await second.keyboard.press('Control+o');
    await hand.reads(shopName(second), 'Larch Lane');

    await rename(first, 'Alder Lane');
    await save(first);
    await rename(second, 'Birch Lane');
    await second.keyboard.press('Control+s');
    const question = notice(second, 'The file was changed on disk');
    await question.getByRole('button', { name: 'Do not save' }).click();
    expect(await onDisk(first)).toContain('"Alder Lane"');
    await hand.reads(shopName(second), /Birch Lane\s*\(changed\)/);

    // asked once more, and while the question stands the first window saves again
    await second.keyboard.press('Control+s');
    await question.waitFor();
    await rename(first, 'Alder Lane 2');
    await save(first);
    await question.getByRole('button', { name: 'Save over it' }).click();
    await question.waitFor();
    expect(await onDisk(first)).toContain('"Alder Lane 2"');
    await question.getByRole('button', { name: 'Save over it' }).click();
    await shopName(second).getByText('(changed)').waitFor({ state: 'hidden' });
    expect(await onDisk(first)).toContain('"Birch Lane"');
    hand.calm([...errors, ...later]);
  });

  it('keep their edits apart: what one saves or gives up does not take the other one along', async () => {
    const { page: first, context, address, errors } = await visit();
    await rename(first, 'Larch Lane');
    await first.waitForTimeout(KEPT_AFTER);
    const { page: second, errors: later } = await another(context, address);
    // the first window lives, so that nothing is offered
    expect(await notice(second, 'Unsaved edits were found').count()).toBe(0);
    await rename(second, 'Alder Lane');
    await second.waitForTimeout(KEPT_AFTER);
    const download = second.waitForEvent('download');
    await second.keyboard.press('Control+s');
    await download;
    await second.waitForTimeout(KEPT_AFTER);
    await kill(context, first);
    const { page: third, errors: last } = await another(context, address);
    const offer = notice(third, 'Unsaved edits were found');
    await offer.getByRole('button', { name: 'Take them up' }).click();
    await hand.reads(shopName(third), 'Larch Lane');
    hand.calm([...errors, ...later, ...last]);
  });
});

journeys('a page that is killed', (visit) => {
  /** Moments after the last edit: before, about and after the time when it is kept [ms]. */
  const MOMENTS = [0, 200, 390, 450, 700, KEPT_AFTER];
  it('at any moment offers the newest edit that was kept, whole', async () => {
    const { page, context, address, errors } = await visit();
    let now = page;
    let kept = -1;
    for (const [i, moment] of MOMENTS.entries()) {
      await rename(now, `Edit ${i} a`);
      await now.waitForTimeout(KEPT_AFTER);
      await rename(now, `Edit ${i} b`);
      await now.waitForTimeout(moment);
      await kill(context, now);
      const next = await context.newPage();
      await next.goto(address);
      await notice(next, 'Unsaved edits were found').getByRole('button', { name: 'Take them up' }).click();
      // the last edit where it had been kept, else the one before
      const read = await hand.reads(shopName(next), new RegExp(`Edit ${i} [ab]`));
      if (moment === KEPT_AFTER) expect(read).toContain(`Edit ${i} b`);
      await hand.reads(hand.summary(next), 'every run holds');
      kept = i;
      now = next;
    }
    expect(kept).toBe(MOMENTS.length - 1);
    hand.calm(errors);
  });
});
