import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BUILT_PAGE } from './browser.ts';
import * as hand from './hand.ts';
import { journeys } from './journeys.ts';

const FOLDER = BUILT_PAGE ?? fileURLToPath(new URL('../../dist/renderer', import.meta.url));
const PATH = '/shop tools/chipdraft/';
/** What any web server knows of kinds of file, and no more: no header of ours. */
const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain',
};

/** A plain server of the built page below a path of its own, that keeps what was asked of it. */
function plainServer() {
  const asked: { readonly path: string; readonly status: number }[] = [];
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url!, 'http://any').pathname);
    const say = (status: number, headers: Record<string, string>, body?: Uint8Array) => {
      asked.push({ path, status });
      response.writeHead(status, headers).end(body);
    };
    if (`${path}/` === PATH) return say(301, { Location: encodeURI(PATH) });
    if (!path.startsWith(PATH) || path.includes('..')) return say(404, {});
    const file = path.slice(PATH.length) || 'index.html';
    readFile(join(FOLDER, file)).then(
      (body) => say(200, { 'Content-Type': KINDS[extname(file)] ?? 'application/octet-stream' }, body),
      () => say(404, {}),
    );
  });
  return { server, asked };
}

journeys('the page on a web server of somebody else', (visit) => {
  const { server, asked } = plainServer();
  let origin = '';
  beforeAll(async () => {
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    origin = `http://127.0.0.1:${(server.address() as { port: number }).port}`;
  });
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });

  it('works below a path with no other network, and goes on when the server is gone', async () => {
    const { page, context, errors } = await visit();
    await page.goto('about:blank');
    const elsewhere: string[] = [];
    await context.route(
      (address) => address.origin !== origin,
      (route) => {
        elsewhere.push(route.request().url());
        return route.abort();
      },
    );
    // without the last slash, as a person types it
    await page.goto(origin + encodeURI(PATH.slice(0, -1)));
    await hand.reads(hand.summary(page), 'every run holds');
    await hand.dismissGuide(page);
    await hand.choose(page, 'File', /five machines/);
    await hand.reads(hand.summary(page), 'every run holds');
    for (const screen of ['Ledger', 'Curves', 'Fan bench', 'Plan']) {
      await page.getByRole('tab', { name: screen }).click();
      await page.getByRole('region', { name: screen }).first().waitFor();
    }
    expect(page.workers().map((worker) => worker.url().startsWith(origin + encodeURI(PATH)))).toEqual([true]);

    const before = asked.length;
    server.closeAllConnections();
    await context.setOffline(true);
    await hand.choose(page, 'File', 'New, empty shop');
    await hand.reads(hand.summary(page), /incomplete/);
    await hand.choose(page, 'File', /one router/);
    await hand.reads(hand.summary(page), 'every run holds');

    expect(asked.length).toBe(before);
    expect(elsewhere).toEqual([]);
    expect(asked.filter(({ path }) => !path.startsWith(PATH.slice(0, -1)))).toEqual([]);
    expect(asked.filter(({ status }) => status >= 400)).toEqual([]);
    expect(asked.length).toBeGreaterThan(4);
    hand.calm(errors);
  });

  it('comes with the notices of what it is made with', async () => {
    const answer = await fetch(`${origin}${encodeURI(PATH)}THIRD-PARTY.txt`);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toMatch(/^svelte [\d.]+\nLicence: MIT$/m);
  });
});
