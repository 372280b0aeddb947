import { mkdirSync } from 'node:fs';
import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import type { BrowserContext, Page } from 'playwright-core';
import { browserMissing, NOT_RUN, openStage } from './browser.ts';
import type { Stage } from './browser.ts';

/** A window on the workbook, with what went wrong behind the screen. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly errors: string[];
  /** Address of the page. */
  readonly address: string;
}

/** Opens the workbook as a new user would meet it. */
export type Visiting = (options?: Parameters<Stage['page']>[0]) => Promise<Visit>;

/** Where a journey that failed leaves what was on screen. */
const PICTURES = 'node_modules/.cache/journeys';

/** A group of journeys that share a browser; each visit has a profile of its own and is closed after its journey. */
export function journeys(title: string, body: (visit: Visiting) => void): void {
  const missing = browserMissing();
  describe.skipIf(missing)(missing ? `${title}: ${NOT_RUN}` : title, () => {
    let stage: Stage;
    let open: Visit[] = [];
    beforeAll(async () => {
      stage = await openStage();
    });
    afterAll(() => stage.close());
    afterEach(async ({ task }) => {
      const visits = open;
      open = [];
      for (const [i, { page, context }] of visits.entries()) {
        if (task.result?.state === 'fail') {
          mkdirSync(PICTURES, { recursive: true });
          const path = `${PICTURES}/${task.name.replace(/\W+/g, '-')}-${i}.png`;
          await page.screenshot({ path, timeout: 5000 }).catch(() => undefined);
        }
        await context.close();
      }
    });
    body(async (options) => {
      const visit: Visit = { ...(await stage.page(options)), address: stage.address };
      open.push(visit);
      return visit;
    });
  });
}
