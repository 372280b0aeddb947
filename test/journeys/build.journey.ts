import { expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

/** The first shop, drawn with the pointer; shares of a plan that shows some 16 m across. */
async function buildByPointer(page: Page): Promise<void> {
  const at = (across: number, down: number) => hand.spot(page, across, down);
  await hand.place(page, 'Machine port', await at(0.32, 0.38));
  await hand.place(page, 'Cyclone', await at(0.5, 0.38));
  await hand.place(page, 'Fan', await at(0.5, 0.6));
  await hand.place(page, 'Filter', await at(0.63, 0.6));
  await hand.place(page, 'Exhaust', await at(0.75, 0.6));
  await hand.drawRun(page, 'Machine port port-1', 'Cyclone cyclone-1, in');
  await hand.drawRun(page, 'Cyclone cyclone-1, out', 'Fan fan-1, in', [
    await at(0.4, 0.47),
    await at(0.4, 0.6),
  ]);
  await hand.drawRun(page, 'Fan fan-1, out', 'Filter filter-1, in');
  await hand.drawRun(page, 'Filter filter-1, out', 'Exhaust exhaust-1');
}

journeys('the first shop', (visit) => {
  it('is built from a blank page to a velocity that holds', async () => {
    const { page, errors } = await visit();
    await hand.reads(hand.summary(page), 'every run holds');
    await hand.choose(page, 'File', 'New, empty shop');
    await hand.reads(hand.summary(page), /incomplete/);
    await hand.reads(page.getByRole('complementary', { name: 'What to try first' }), 'what to do first');
    await hand.dismissGuide(page);
    await buildByPointer(page);
    await hand.reads(hand.summary(page), 'every run holds');

    // the machine: its name, its dust, and how much of it
    await hand.onPlan(page, /^Machine port port-1/).click();
    await hand.type(page, 'Name', 'Band saw');
    await hand.field(page, 'Dust class').selectOption({ label: 'Sawdust, dry' });
    await hand.type(page, 'Dust rate', '2 kg/h');
    // the duct: its bore and what it is made of
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Inside diameter', '4 in');
    await hand.field(page, 'Material').selectOption({ label: 'smooth-bore hose with wire helix' });

    const name = await hand.named(page, /^Run R1, [\d.]+ m\/s, needs [\d.]+ m\/s, holds$/);
    const [velocity, needed] = [.../([\d.]+) m\/s, needs ([\d.]+)/.exec(name)!].slice(1).map(Number);
    expect(velocity).toBeGreaterThan(needed!);
    await hand.onPlan(page, /^Machine port port-1, Band saw/).waitFor();

    await page.getByRole('tab', { name: 'Ledger' }).click();
    const row = hand.runRow(page, 'R1');
    await hand.reads(row, /holds/);
    await hand.reads(row, velocity!.toFixed(1));
    hand.calm(errors);
  });

  it('is taken back step by step to the blank page, and done again', async () => {
    const { page, errors } = await visit();
    await hand.emptyShop(page);
    const blank = await hand.savedText(page);
    await buildByPointer(page);
    await hand.clickRun(page, 'R1');
    await hand.type(page, 'Inside diameter', '4 in');
    const built = await hand.savedText(page);
    expect(built).not.toBe(blank);
    expect(built).toContain('"4 in"');

    const undo = page.getByRole('button', { name: 'Undo' });
    const redo = page.getByRole('button', { name: 'Redo' });
    let steps = 0;
    // half of it on another screen
    while (await undo.isEnabled()) {
      if (steps === 5) await page.getByRole('tab', { name: 'Ledger' }).click();
      await undo.click();
      steps++;
      if (steps > 60) throw new Error('there is no end of steps to take back');
    }
    expect(steps).toBe(10);
    await page.getByRole('tab', { name: 'Plan' }).click();
    expect(
      await hand
        .plan(page)
        .getByRole('button', { name: /^(Run|Fan|Machine port)/ })
        .count(),
    ).toBe(0);
    expect(await hand.savedText(page)).toBe(blank);

    while (await redo.isEnabled()) {
      await redo.click();
      steps--;
    }
    expect(steps).toBe(0);
    await hand.reads(hand.summary(page), 'every run holds');
    expect(await hand.savedText(page)).toBe(built);
    hand.calm(errors);
  });

  it('is built by keyboard alone', async () => {
    const { page, errors } = await visit();
    const { keyboard } = page;
    const press = async (...keys: string[]) => {
      for (const key of keys) await keyboard.press(key);
    };
    /** Tab until the focus stands on something of that name. */
    const tabTo = async (name: string | RegExp, back = false) => {
      for (let i = 0; i < 120; i++) {
        const now = await page.evaluate(() => {
          const e = document.activeElement as HTMLElement | null;
          const own =
            e?.getAttribute('aria-label') ?? (e as HTMLInputElement | null)?.labels?.[0]?.textContent;
          return (own ?? e?.textContent ?? '').trim();
        });
        if (typeof name === 'string' ? now === name : name.test(now)) return;
        await keyboard.press(back ? 'Shift+Tab' : 'Tab');
      }
      throw new Error(`Tab never came to ${String(name)}`);
    };
    const command = async (words: string) => {
      await press('Control+k');
      await keyboard.type(words);
      await press('Enter');
    };

    await command('new, empty');
    await hand.reads(hand.summary(page), /incomplete/);
    await tabTo('Dismiss');
    await press('Enter');
    for (const [item, right, down] of [
      ['Machine port', -9, -4],
      ['Cyclone', 0, -4],
      ['Fan', 0, 4],
      ['Filter', 4, 4],
      ['Exhaust', 7, 4],
    ] as const) {
      await tabTo(item);
      await press('Enter');
      await hand.named(page, new RegExp(`^${item} \\S+-1`));
      const keys = (steps: number, more: string, less: string) =>
        press(...Array<string>(Math.abs(steps)).fill(steps > 0 ? more : less));
      await keys(right, 'ArrowRight', 'ArrowLeft');
      await keys(down, 'ArrowDown', 'ArrowUp');
    }
    // runs: go to a thing by name, press R, and choose where it ends
    for (const [from, to] of [
      ['port-1', 'Cyclone cyclone-1, in'],
      ['cyclone-1', 'Fan fan-1, in'],
      ['fan-1', 'Filter filter-1, in'],
      ['filter-1', 'Exhaust exhaust-1'],
    ] as const) {
      await command(`go to ${from}`);
      await press('r');
      const list = page.getByRole('listbox', { name: 'Connect to…' });
      await list.waitFor();
      const wanted = list.getByRole('option', { name: to });
      for (let i = 0; (await wanted.getAttribute('aria-selected')) !== 'true'; i++) {
        if (i > 12) throw new Error(`the list never came to ${to}`);
        await press('ArrowDown');
      }
      await press('Enter');
      await list.waitFor({ state: 'hidden' });
    }
    await hand.reads(hand.summary(page), 'every run holds');
    await command('go to run r1');
    await press('F2');
    await tabTo('Inside diameter');
    await press('Control+a');
    await keyboard.type('110 mm');
    await press('Enter');
    const name = await hand.named(page, /^Run R1, [\d.]+ m\/s, needs [\d.]+ m\/s, (holds|too slow)/);
    expect(name).toMatch(/m\/s/);
    await command('ledger');
    await hand.reads(
      hand
        .ledger(page)
        .getByRole('row', { name: /^Straight duct/ })
        .first(),
      '110',
    );
    hand.calm(errors);
  });
});
