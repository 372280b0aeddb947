import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  CONTENT_POLICY,
  innerPath,
  isOwnAddress,
  registerScheme,
  serve,
} from '../../../electron/main/protocol.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const AT = 'app://chipdraft';

/** A page folder beside a file that nobody may have. */
function page(): string {
  const top = fresh();
  const folder = join(top, 'renderer');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  mkdirSync(join(top, 'renderer-secret'));
  writeFileSync(join(top, 'secret.json'), 'secret');
  writeFileSync(join(top, 'renderer-secret/secret.json'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<p>page</p>');
  writeFileSync(join(folder, 'assets/a b-ü.js'), 'code');
  writeFileSync(join(folder, '.hidden.json'), 'secret');
  writeFileSync(join(folder, 'notes.txt'), 'of a kind that is not served');
  symlinkSync(join(top, 'secret.json'), join(folder, 'out.json'));
  symlinkSync(join(top, 'renderer-secret/secret.json'), join(folder, 'sibling.json'));
  return folder;
}

describe('the page as served to the window', () => {
  it('comes with its type, the content policy and the other guards', async () => {
    const folder = page();
    for (const path of ['/', '/index.html', '/index.html?x=1#y']) {
      const answer = await serve(folder, 'GET', AT + path);
      expect(answer.status).toBe(200);
      expect(await answer.text()).toBe('<p>page</p>');
      expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
      expect(answer.headers.get('content-security-policy')).toBe(CONTENT_POLICY);
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    }
    const script = await serve(folder, 'GET', `${AT}/assets/a%20b-%C3%BC.js`);
    expect([script.status, script.headers.get('content-type')]).toEqual([
      200,
      'text/javascript; charset=utf-8',
    ]);
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
      '/%2e%2e%2fsecret.json',
      '//etc/passwd',
      '/%2fetc%2fpasswd',
      '/assets/..%2f..%2fsecret.json',
      '/.hidden.json',
    ],
    ...[
      '/out.json',
      '/sibling.json',
      '/..%2frenderer-secret%2fsecret.json',
      '/index.html%00.json',
      '/C:/x.json',
      '/%',
      '/%ff.json',
    ],
    ...['/notes.txt', '/assets', '/assets/', '/none.js', '/index.html/x.js'],
  ];
  it.each(outside)('does not give %s', async (path) => {
    const answer = await serve(page(), 'GET', AT + path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toBe('');
    expect(answer.headers.get('content-security-policy')).toBe(CONTENT_POLICY);
  });

  it('answers no other host and no other method', async () => {
    const folder = page();
    expect((await serve(folder, 'GET', 'app://other/index.html')).status).toBe(404);
    expect((await serve(folder, 'POST', `${AT}/index.html`)).status).toBe(405);
    const head = await serve(folder, 'HEAD', `${AT}/index.html`);
    expect([head.status, await head.text()]).toEqual([200, '']);
  });

  it('finds the path inside, or none', () => {
    expect(['/', '/a/b.js', '/../a', '/a//b', 'a'].map(innerPath)).toEqual([
      'index.html',
      'a/b.js',
      null,
      'a//b',
      null,
    ]);
  });

  it('is an origin of its own, for which the content policy holds', () => {
    const schemes: unknown[] = [];
    registerScheme({ registerSchemesAsPrivileged: (made) => void schemes.push(...made) });
    expect(schemes).toEqual([
      {
        scheme: 'app',
        privileges: {
          standard: true,
          secure: true,
          supportFetchAPI: true,
          codeCache: true,
          bypassCSP: false,
        },
      },
    ]);
  });
});

describe('the content policy', () => {
  const rules = new Map(
    CONTENT_POLICY.split('; ').map((rule) => [rule.split(' ')[0]!, rule.split(' ').slice(1)]),
  );
  it('starts from nothing, and lets scripts come from the page alone', () => {
    expect(rules.get('default-src')).toEqual(["'none'"]);
    expect(rules.get('script-src')).toEqual(["'self'"]);
    expect(rules.get('connect-src')).toEqual(["'self'"]);
    for (const name of ['base-uri', 'form-action', 'frame-ancestors'])
      expect(rules.get(name)).toEqual(["'none'"]);
  });
  it('names no other origin, no eval and no inline script', () => {
    expect(CONTENT_POLICY).not.toMatch(/https?:|\*|unsafe-eval|filesystem:/);
    const inline = [...rules]
      .filter(([, sources]) => sources.includes("'unsafe-inline'"))
      .map(([name]) => name);
    expect(inline).toEqual(['style-src-attr']);
  });
});

describe('an address of the app', () => {
  it.each([
    ['app://chipdraft/index.html', true],
    ['app://chipdraft/', true],
    ['app://chipdraft.evil/', false],
    ['app://evil/chipdraft', false],
    ['app://chipdraft@evil/', false],
    ['app://chipdraft:8080/', false],
    ['https://chipdraft/', false],
    ['file:///index.html', false],
    ['about:blank', false],
    ['', false],
  ])('%s: %s', (address, own) => expect(isOwnAddress(address)).toBe(own));
});
