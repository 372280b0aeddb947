import { readFile } from 'node:fs/promises';
import { expect } from 'vitest';
import type { Locator, Page } from 'playwright-core';

// What a person does with the workbook: looks for things by what they are called, points, clicks and types.

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How long an answer on screen may take [ms]. */
const PATIENCE = 8000;

export const plan = (page: Page): Locator => page.getByRole('application', { name: /^Plan of the shop/ });
export const selection = (page: Page): Locator => page.getByRole('complementary', { name: 'Selection' });
export const findings = (page: Page): Locator => page.getByRole('region', { name: 'Findings' });
export const ledger = (page: Page): Locator => page.getByRole('treegrid');
/** Row of a run in the ledger. */
export const runRow = (page: Page, run: string): Locator =>
  ledger(page).getByRole('row', { name: new RegExp(`^(Fold|Open) ${run}\\b`) });
/** The line that says how the whole shop stands. */
export const summary = (page: Page): Locator =>
  page.getByRole('navigation', { name: 'Screens and settings' }).getByRole('status');

/** A thing, run or gate on the plan, by the beginning of its name. */
export const onPlan = (page: Page, name: RegExp): Locator => plan(page).getByRole('button', { name });

/** A field of the inspector. */
export const field = (page: Page, label: string | RegExp): Locator =>
  selection(page).getByLabel(label, typeof label === 'string' ? { exact: true } : {});

/** Waits until a text reads as it should; says what it read otherwise. */
export async function reads(place: Locator, text: RegExp | string): Promise<string> {
  const matches = (now: string) => (typeof text === 'string' ? now.includes(text) : text.test(now));
  const until = Date.now() + PATIENCE;
  let now = '';
  while (Date.now() < until) {
    now = await place
      .innerText({ timeout: 1000 })
      .catch((cause: Error) => `(nothing: ${cause.message.slice(0, 200)})`);
    if (matches(now)) return now;
    await place.page().waitForTimeout(30);
  }
  throw new Error(`expected ${String(text)}, read: ${now}`);
}

/** Waits until something has a name that matches; answers with the whole name. */
export async function named(page: Page, name: RegExp): Promise<string> {
  const place = onPlan(page, name).first();
  try {
    await place.waitFor({ timeout: PATIENCE });
  } catch {
    const all = await plan(page)
      .getByRole('button')
      .evaluateAll((list) => list.map((e) => e.getAttribute('aria-label') ?? e.textContent));
    throw new Error(`nothing on the plan is named ${String(name)}; there are:\n${all.join('\n')}`);
  }
  return (await place.getAttribute('aria-label'))!;
}

/** Velocity of a run as its name on the plan reads [m/s]. */
export async function velocityOf(page: Page, run: string): Promise<number> {
  const name = await named(page, new RegExp(`^Run ${run}\\b.* m/s`));
  return Number(/([\d.]+) m\/s/.exec(name)![1]);
}

export async function middle(place: Locator): Promise<Spot> {
  const box = await place.boundingBox();
  if (!box) throw new Error('it is not on screen');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** How long a run must have stood still before a person aims at it [ms]. */
const STILL = 200;

/** A place on a run, as a share of its way; runs bend, so that the middle of the picture need not lie on them. */
export async function alongRun(page: Page, run: string, share = 0.5): Promise<Spot> {
  const shape = onPlan(page, new RegExp(`^Run ${run}\\b`));
  await shape.waitFor();
  const look = () =>
    shape.evaluate((group, part) => {
      const path = group.querySelector('path')!;
      const point = path.getPointAtLength(part * path.getTotalLength());
      const { x, y } = point.matrixTransform(path.getScreenCTM()!);
      return { x, y };
    }, share);
  // findings that appear after an edit make the window of the plan smaller, and what is in it moves
  const until = Date.now() + PATIENCE;
  let before = await look();
  for (;;) {
    await page.waitForTimeout(STILL);
    const now = await look();
    if (Math.hypot(now.x - before.x, now.y - before.y) < 0.5 || Date.now() > until) return now;
    before = now;
  }
}

export async function clickRun(page: Page, run: string, share = 0.4): Promise<void> {
  await clickAlong(page, [await alongRun(page, run, share)]);
}

/** Chooses from a menu by its words. */
export async function choose(page: Page, menu: string, item: string | RegExp): Promise<void> {
  await page.getByRole('menuitem', { name: menu, exact: true }).click();
  await page.getByRole('menu', { name: menu }).getByRole('menuitem', { name: item }).click();
}

/** An empty shop, with the guide out of the way. */
export async function emptyShop(page: Page): Promise<void> {
  await choose(page, 'File', 'New, empty shop');
  await reads(summary(page), /incomplete/);
  const guide = page.getByRole('complementary', { name: 'What to try first' });
  await guide.getByRole('button', { name: 'Dismiss' }).click();
}

export async function dismissGuide(page: Page): Promise<void> {
  const guide = page.getByRole('complementary', { name: 'What to try first' });
  await guide.getByRole('button', { name: 'Dismiss' }).click();
}

/** A place of the plan, as shares of its width and height. */
export async function spot(page: Page, across: number, down: number): Promise<Spot> {
  const box = (await plan(page).boundingBox())!;
  return { x: box.x + across * box.width, y: box.y + down * box.height };
}

/** Takes a thing from the tray and clicks where it goes. */
export async function place(page: Page, item: string, at: Spot): Promise<void> {
  const tray = page.getByRole('navigation', { name: 'Things to place' });
  await tray.getByRole('button', { name: item, exact: true }).click();
  await page.mouse.move(at.x, at.y, { steps: 3 });
  await page.mouse.down();
  await page.mouse.up();
}

const ring = (page: Page, end: string) =>
  plan(page).getByRole('button', { name: `Start a run at ${end}`, exact: true });

/** Draws a run with the pointer from one free end over corners to another. */
export async function drawRun(
  page: Page,
  from: string,
  to: string,
  corners: readonly Spot[] = [],
): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Draw run' }).click();
  const start = await middle(ring(page, from));
  const end = await middle(ring(page, to));
  await clickAlong(page, [start, ...corners, end]);
}

export async function clickAlong(page: Page, spots: readonly Spot[]): Promise<void> {
  for (const { x, y } of spots) {
    await page.mouse.move(x, y, { steps: 4 });
    await page.mouse.down();
    await page.mouse.up();
  }
}

/** Types into a field of the inspector and takes it with Enter. */
export async function type(page: Page, label: string | RegExp, text: string): Promise<void> {
  const input = field(page, label);
  await input.fill(text);
  await input.press('Enter');
}

/** Opens a file through the browser's file chooser. */
export async function openFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  // the browser is told to hand choosers over; a frame later it does, also in a page that has just opened
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
  await page.keyboard.press('Control+o');
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** Saves, and reads what was downloaded. */
export async function savedText(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  return readFile(await (await download).path(), 'utf8');
}

/** Nothing may have gone wrong behind the screen. */
export function calm(errors: readonly string[]): void {
  expect(errors, 'errors of the page').toEqual([]);
}
