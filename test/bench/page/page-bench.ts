import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { BrowserContext, Page } from 'playwright-core';
import { BUILT_PAGE, findBrowser, NOT_RUN, openStage } from '../../journeys/browser.ts';
import buildPage from '../../journeys/build-page.ts';
import * as hand from '../../journeys/hand.ts';
import { floorOf, mainThread_ms } from './page-floor.ts';
import { benchShop } from './bench-shop.ts';

// What a person waits for, measured in the built page in a browser without a screen.
// cold start: from the start of the navigation, in a profile of its own, until the first velocity is painted on a run.
// typing: Enter in the diameter of a run, dragging: a move of the pointer with a port on it; both from the time stamp of
//   the event to the end of the frame in which the run reads another result.
// frames: time between frames while the pointer moves without pause, and how many of them moved the port.
// floor: the same measure of an edit that changes one text and reckons nothing, in the page as it stands with the program
//   asleep, and in an empty page: the wait for the next frame, and what the browser itself takes to paint without a chip.
// processor: time that the page's main thread worked for an edit (thread ticks, so that other load does not count), with
//   the panels that follow it; of typing, filling the field and looking it up by its name are counted too.

const AIM = { start_ms: 1500, size_kB: 350, small_ms: 16, large_ms: 50, frame_ms: 1000 / 60 };
const STARTS = 5;
const EDITS = 40;
const FRAMES_FOR_ms = 2500;

interface Watch {
  /** Latencies so far [ms]. */
  readonly taken: number[];
  frames: number[];
  moved: number;
}
declare global {
  interface Window {
    benchWatch: Watch;
    firstResult_ms: number | null;
  }
}

/** Code that tsx made calls this by name, in the page too. */
const NAMES = 'globalThis.__name ??= (made) => made;';

const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b);
const at = (list: readonly number[], share: number) =>
  sorted(list)[Math.ceil(share * list.length) - 1] ?? NaN;
const ms = (value: number) => `${value.toFixed(1)} ms`;
const verdict = (ok: boolean) => (ok ? 'met' : 'MISSED');

function note(what: string, measured: string): void {
  console.log(`  ${what.padEnd(34)} ${measured}`);
}

function row(what: string, measured: string, aim: string, ok: boolean): void {
  console.log(`  ${what.padEnd(34)} ${measured.padEnd(44)} aim ${aim.padEnd(12)} ${verdict(ok)}`);
}

/** Notes when the first run reads a velocity on the drawing, and is painted. */
function watchStart(): void {
  window.firstResult_ms = null;
  const look = () => {
    const read = [...document.querySelectorAll('svg text')].some((e) => /m\/s/.test(e.textContent ?? ''));
    if (!read) return void requestAnimationFrame(look);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => (window.firstResult_ms = performance.now());
    requestAnimationFrame(() => port2.postMessage(0));
  };
  requestAnimationFrame(look);
}

/** Measures from an event to the end of the frame in which a run of the plan reads another result. */
function watchEdits([run, event]: readonly [string, string]): void {
  const watch: Watch = { taken: [], frames: [], moved: 0 };
  window.benchWatch = watch;
  const shape = document.querySelector(`[data-run="${run}"]`)!;
  let started: number | null = null;
  const after = new MessageChannel();
  let from = 0;
  after.port1.onmessage = () => watch.taken.push(performance.now() - from);
  window.addEventListener(
    event,
    (e) => {
      if (e instanceof KeyboardEvent && e.key !== 'Enter') return;
      started ??= e.timeStamp;
    },
    true,
  );
  new MutationObserver(() => {
    if (started === null) return;
    from = started;
    started = null;
    requestAnimationFrame(() => after.port2.postMessage(0));
  }).observe(shape, { attributes: true, attributeFilter: ['aria-label'] });
}

/** Collects the times between frames, and counts those in which the thing stood elsewhere. */
function watchFrames([thing, forTime]: readonly [string, number]): Promise<Watch> {
  return new Promise((done) => {
    const watch: Watch = { taken: [], frames: [], moved: 0 };
    const shape = document.querySelector(`[data-thing="${thing}"]`)!;
    let last = performance.now();
    let place = '';
    const begun = last;
    const look = (now: number) => {
      watch.frames.push(now - last);
      last = now;
      const here = shape.getAttribute('transform') ?? '';
      if (here !== place) watch.moved++;
      place = here;
      if (now - begun < forTime) requestAnimationFrame(look);
      else done(watch);
    };
    requestAnimationFrame(look);
  });
}

async function until(page: Page, count: number): Promise<void> {
  await page.waitForFunction((n) => window.benchWatch.taken.length >= n, count, {
    polling: 20,
    timeout: 15_000,
  });
}

/** A shop that is looked at from as near as one works, with its first branch in the middle. */
async function openShop(page: Page, text: string, zooms: number): Promise<void> {
  await hand.dismissGuide(page);
  await hand.openFile(page, 'bench.json', text);
  await hand.named(page, /^Run R1.* m\/s/);
  await page.keyboard.press('Escape');
  for (let i = 0; i < zooms; i++) await page.keyboard.press('+');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('go to port-3');
  await page.keyboard.press('Enter');
}

async function edits(page: Page, context: BrowserContext, aim_ms: number, what: string): Promise<void> {
  const worked = await mainThread_ms(page, context);
  const port = hand.onPlan(page, /^Machine port port-3\b/);
  const branch = await page.evaluate(() => {
    // of runs outside the window nothing is drawn
    const runs = [...document.querySelectorAll<SVGGElement>('[data-run]:has(path)')];
    const port = document.querySelector('[data-thing="port-3"]')!.getBoundingClientRect();
    const gap = (e: Element) => {
      const box = e.getBoundingClientRect();
      return Math.hypot(box.left - port.right, box.bottom - (port.top + port.bottom) / 2);
    };
    return runs.sort((a, b) => gap(a) - gap(b))[0]!.dataset['run']!;
  });

  // dragging, one move at a time
  const spot = await hand.middle(port);
  await page.evaluate(watchEdits, [branch, 'pointermove'] as const);
  await page.mouse.move(spot.x, spot.y);
  await page.keyboard.down('Alt');
  await page.mouse.down();
  await page.evaluate(() => (window.benchWatch.taken.length = 0));
  const beforeDrags = await worked();
  for (let i = 1; i <= EDITS; i++) {
    await page.mouse.move(spot.x - (i % 2 === 0 ? 0 : 60), spot.y + (i % 3) * 3);
    await until(page, i);
  }
  const drag_ms = ((await worked()) - beforeDrags) / EDITS;
  const drags = await page.evaluate(() => window.benchWatch.taken);
  // dragging without pause
  const watching = page.evaluate(watchFrames, ['port-3', FRAMES_FOR_ms] as const);
  const begun = Date.now();
  for (let i = 0; Date.now() - begun < FRAMES_FOR_ms; i++) {
    await page.mouse.move(spot.x - 40 + 40 * Math.cos(i / 8), spot.y + 20 * Math.sin(i / 8));
  }
  const { frames, moved } = await watching;
  await page.mouse.up();
  await page.keyboard.up('Alt');

  // typing
  await hand.clickRun(page, branch, 0.2);
  const bore = hand.field(page, 'Inside diameter');
  await page.evaluate(watchEdits, [branch, 'keydown'] as const);
  const beforeTyping = await worked();
  for (let i = 1; i <= EDITS; i++) {
    await bore.fill(i % 2 === 0 ? '100 mm' : '120 mm');
    await bore.press('Enter');
    await until(page, i);
  }
  const type_ms = ((await worked()) - beforeTyping) / EDITS;
  const typed = await page.evaluate(() => window.benchWatch.taken);

  for (const [name, list, processor_ms] of [
    ['typing', typed, type_ms],
    ['dragging', drags, drag_ms],
  ] as const) {
    const [p50, p95] = [at(list, 0.5), at(list, 0.95)];
    row(
      `${what}, ${name}`,
      `p50 ${ms(p50)}, p95 ${ms(p95)} of ${list.length}`,
      `p95 ${aim_ms} ms`,
      p95 < aim_ms,
    );
    note(`  processor, an edit`, ms(processor_ms));
  }
  await floors(page, what);
  const mean = frames.reduce((sum, f) => sum + f, 0) / frames.length;
  row(
    `${what}, frames of a drag`,
    `${(1000 / mean).toFixed(0)} a second, p95 ${ms(at(frames, 0.95))}, ${moved} of ${frames.length} moved it`,
    '60 a second',
    mean < AIM.frame_ms * 1.03,
  );
}

async function floors(page: Page, what: string): Promise<void> {
  for (const event of ['keydown', 'pointermove'] as const) {
    const list = await floorOf(page, event, EDITS);
    note(
      `  floor of ${event === 'keydown' ? 'typing' : 'dragging'}, ${what.replace(/,.*/, '')}`,
      `p50 ${ms(at(list, 0.5))}, p95 ${ms(at(list, 0.95))}`,
    );
  }
}

/** Measures the built page and prints a table; says so where there is no browser. */
export async function pageBench(): Promise<void> {
  console.log('\nthe page in a browser');
  if (findBrowser() === null) {
    console.log(`  ${NOT_RUN}`);
    return;
  }
  await buildPage();
  const folder = BUILT_PAGE ?? fileURLToPath(new URL('../../../dist/renderer', import.meta.url));
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((f) => f.isFile());
  const size_kB =
    files.reduce((sum, f) => sum + gzipSync(readFileSync(join(f.parentPath, f.name))).length, 0) / 1000;
  row(
    'size of everything, gzip',
    `${size_kB.toFixed(0)} kB in ${files.length} files`,
    `${AIM.size_kB} kB`,
    size_kB < AIM.size_kB,
  );

  const stage = await openStage();
  try {
    const starts: number[] = [];
    for (let i = 0; i < STARTS; i++) {
      const { page, context } = await stage.page();
      await context.addInitScript(NAMES);
      await context.addInitScript(watchStart);
      // the first visit of this profile warms nothing: the server forbids keeping anything
      await page.goto(stage.address);
      await page.waitForFunction(() => window.firstResult_ms !== null);
      starts.push(await page.evaluate(() => window.firstResult_ms!));
      await context.close();
    }
    const start = at(starts, 0.5);
    row(
      'first result from a cold start',
      `median ${ms(start)}, longest ${ms(Math.max(...starts))}`,
      `${AIM.start_ms} ms`,
      start < AIM.start_ms,
    );

    const empty = await stage.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const blank = await empty.newPage();
    await blank.setContent('<svg width="900" height="600"><text x="20" y="20">0</text></svg>');
    await blank.evaluate(NAMES);
    await floors(blank, 'an empty page');
    await empty.close();

    for (const [pieces, aim_ms, zooms] of [
      [60, AIM.small_ms, 0],
      [500, AIM.large_ms, 9],
    ] as const) {
      const shop = benchShop(pieces);
      const { page, context, errors } = await stage.page();
      await page.evaluate(NAMES);
      await openShop(page, shop.text, zooms);
      await edits(page, context, aim_ms, `${shop.pieces} pieces, ${shop.branches} branches`);
      if (errors.length > 0) throw new Error(`the page reports: ${errors.join('; ')}`);
      await context.close();
    }
  } finally {
    await stage.close();
  }
}
