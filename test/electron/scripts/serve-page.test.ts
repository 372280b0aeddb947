import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { CONTENT_POLICY, MIME, servePage } from '../../../build/scripts/serve-page.mjs';
import type { ServedPage } from '../../../build/scripts/serve-page.mjs';
import * as desktop from '../../../electron/main/protocol.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const open: ServedPage[] = [];
afterEach(async () => {
  for (const page of open.splice(0)) await page.close();
});

async function serve() {
  const top = fresh();
  const folder = join(top, 'renderer');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  mkdirSync(join(top, 'renderer-secret'));
  writeFileSync(join(top, 'secret.json'), 'secret');
  writeFileSync(join(top, 'renderer-secret/secret.json'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<p>page</p>');
  writeFileSync(join(folder, '.hidden.json'), 'secret');
  writeFileSync(join(folder, 'notes.txt'), 'of a kind that is not served');
  for (const ending of Object.keys(MIME)) writeFileSync(join(folder, 'assets', `file${ending}`), ending);
  symlinkSync(join(top, 'secret.json'), join(folder, 'out.json'));
  symlinkSync(join(top, 'renderer-secret/secret.json'), join(folder, 'sibling.json'));
  const page = await servePage(folder);
  open.push(page);
  return page;
}

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** Asks with the path as it is written, which a browser or `fetch` would tidy first. */
function ask(
  page: ServedPage,
  path: string,
  method = 'GET',
  host = `127.0.0.1:${page.port}`,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: page.port, path, method, headers: { host } },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8').on('data', (part: string) => (text += part));
        answer.on('end', () => resolve({ status: answer.statusCode!, headers: answer.headers, text }));
      },
    );
    sent.on('error', reject).end();
  });
}

describe('the page as served to a browser', () => {
  it('has the rules of the desktop window', () => {
    expect([CONTENT_POLICY, MIME]).toEqual([desktop.CONTENT_POLICY, desktop.MIME]);
  });

  it('comes with the policy, its type, and no leave to be kept', async () => {
    const page = await serve();
    const { status, headers, text } = await ask(page, '/');
    expect([status, text]).toEqual([200, '<p>page</p>']);
    expect(headers).toMatchObject({
      'content-security-policy': CONTENT_POLICY,
      'content-type': 'text/html; charset=utf-8',
      'content-length': '11',
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
    });
    for (const [ending, type] of Object.entries(MIME)) {
      const file = await ask(page, `/assets/file${ending}?v=1`);
      expect([file.status, file.headers['content-type'], file.text]).toEqual([200, type, ending]);
    }
  });

  const outside = [
    ...[
      '/../secret.json',
      '/%2e%2e/secret.json',
      '/..%2fsecret.json',
      '/..%5csecret.json',
      '/assets/../../secret.json',
    ],
    ...[
      '//etc/passwd',
      '/%2fetc%2fpasswd',
      '/.hidden.json',
      '/out.json',
      '/sibling.json',
      '/..%2frenderer-secret%2fsecret.json',
    ],
    ...[
      '/index.html%00.json',
      '/C:/x.json',
      '/%',
      '/%ff.json',
      '/notes.txt',
      '/none.js',
      '/index.html/x.js',
      '/assets',
      '/assets/',
    ],
  ];
  it.each(outside)('does not give %s', async (path) => {
    const { status, headers, text } = await ask(await serve(), path);
    expect([status, text]).toEqual([404, '']);
    expect(headers['content-security-policy']).toBe(CONTENT_POLICY);
  });

  it('answers GET and HEAD alone', async () => {
    const page = await serve();
    expect(await ask(page, '/', 'HEAD')).toMatchObject({ status: 200, text: '' });
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
      expect((await ask(page, '/', method)).status).toBe(405);
  });

  it('answers to this machine by name, and to no name that another site made point here', async () => {
    const page = await serve();
    expect((await ask(page, '/', 'GET', `localhost:${page.port}`)).status).toBe(200);
    for (const host of ['example.org', `example.org:${page.port}`, '127.0.0.1']) {
      expect((await ask(page, '/', 'GET', host)).status).toBe(403);
    }
  });

  it('is not to be reached from another machine', async () => {
    const page = await serve();
    const outward = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
    const reached = outward
      .filter(({ internal, family }) => !internal && family === 'IPv4')
      .map(({ address }) => address);
    for (const host of [...reached, '127.0.0.2']) {
      const error = await new Promise<string>((resolve) => {
        const line = connect(page.port, host, () => (line.destroy(), resolve('connected')));
        line.on('error', (cause: NodeJS.ErrnoException) => resolve(cause.code ?? ''));
      });
      expect(`${host} ${error}`).not.toContain('connected');
    }
  });

  it('takes a free port each time, and lets it go', async () => {
    const [a, b] = [await serve(), await serve()];
    expect(a.port).not.toBe(b.port);
    await a.close();
    await expect(ask(a, '/')).rejects.toThrow('ECONNREFUSED');
    await expect(servePage(fresh(), { port: b.port })).rejects.toThrow('EADDRINUSE');
  });
});
