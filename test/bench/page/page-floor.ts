/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import type { BrowserContext, Page } from 'playwright-core';

declare global {
  interface Window {
    floorTaken: number[];
    floorKind?: string;
  }
}

/** Keeps every event from the program, and changes one text of the drawing at each of a kind. */
function sleepAndWatch(kind: 'keydown' | 'pointermove'): void {
  window.floorTaken = [];
  const asleep = window.floorKind !== undefined;
  window.floorKind = kind;
  if (asleep) return;
  const text = document.querySelector('svg.drawing .labels text') ?? document.querySelector('svg text')!;
  const after = new MessageChannel();
  let from = 0;
  let count = 0;
  after.port1.onmessage = () => window.floorTaken.push(performance.now() - from);
  const kinds = ['pointermove', 'pointerdown', 'pointerup', 'mousemove', 'keydown', 'keypress', 'keyup'];
  for (const name of kinds) {
    window.addEventListener(
      name,
      (event) => {
        event.stopImmediatePropagation();
        if (name.startsWith('key')) event.preventDefault();
        if (name !== window.floorKind) return;
        from = event.timeStamp;
        text.textContent = String(++count);
        requestAnimationFrame(() => after.port2.postMessage(0));
      },
      true,
    );
  }
}

/** Time from an event to the end of the frame with a changed text, in a page whose program sleeps; it sleeps on [ms]. */
export async function floorOf(
  page: Page,
  kind: 'keydown' | 'pointermove',
  count: number,
): Promise<readonly number[]> {
  await page.evaluate(sleepAndWatch, kind);
  for (let i = 1; i <= count; i++) {
    if (kind === 'keydown') await page.keyboard.press('Enter');
    else await page.mouse.move(500 + (i % 2) * 60, 400);
    await page.waitForFunction((n) => window.floorTaken.length >= n, i, { polling: 20, timeout: 15_000 });
  }
  return page.evaluate(() => window.floorTaken);
}

/** A clock of the time that the page's main thread has worked, whatever else the machine did [ms]. */
export async function mainThread_ms(page: Page, context: BrowserContext): Promise<() => Promise<number>> {
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1000 * metrics.find(({ name }) => name === 'TaskDuration')!.value;
  };
}
