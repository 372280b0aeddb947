import type { Protocol } from 'electron';
import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';
import { codeOf } from '../files/file-failure.ts';

export const SCHEME = 'app';
export const HOST = 'chipdraft';
export const START_PAGE = `${SCHEME}://${HOST}/index.html`;

/**
 * What the page may load and do: its own files only. No inline script, no `eval`, no other origin. Style attributes
 * are allowed because the drawing places its parts by them; style elements are not.
 */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "style-src-attr 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** What a page that is printed may do: show itself. */
export const PRINT_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";
/** Where pages that are printed stand; the built page has no such folder. */
export const PRINT_FOLDER = '/print/';

/** Types of the files that the build makes; a file of any other kind is not served. */
export const MIME: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

/** Whether an address is one of the app's own page. */
export function isOwnAddress(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, host } = new URL(address);
  return protocol === `${SCHEME}:` && host === HOST;
}

/** Before the program is ready: makes the scheme a proper origin, so that the content policy and storage hold. */
export function registerScheme(protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void {
  protocol.registerSchemesAsPrivileged([
    {
      scheme: SCHEME,
      privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true, bypassCSP: false },
    },
  ]);
}

/** Serves the built page, and nothing outside its folder; beside it the pages that are being printed. */
export function setupProtocol(
  protocol: Pick<Protocol, 'handle'>,
  pageFolder: string,
  prints: ReadonlyMap<string, string> = new Map(),
): void {
  protocol.handle(SCHEME, ({ method, url }) => {
    const page = method === 'GET' ? prints.get(url) : undefined;
    if (page === undefined) return serve(pageFolder, method, url);
    const body = new Uint8Array(new TextEncoder().encode(page));
    return answer(200, body, MIME['.html'], PRINT_POLICY);
  });
}

/** The answer to one request for a file of the page. */
export async function serve(pageFolder: string, method: string, address: string): Promise<Response> {
  if (method !== 'GET' && method !== 'HEAD') return answer(405, null);
  if (!isOwnAddress(address)) return answer(404, null);
  const inside = innerPath(new URL(address).pathname);
  const type = inside === null ? undefined : MIME[extname(inside).toLowerCase()];
  if (inside === null || type === undefined) return answer(404, null);
  try {
    const folder = await realpath(pageFolder);
    const file = await realpath(join(folder, inside));
    // A link that leads out of the folder is as good as a path that does.
    if (!file.startsWith(folder + sep)) return answer(404, null);
    return answer(200, method === 'HEAD' ? null : new Uint8Array(await readFile(file)), type);
  } catch (error) {
    const code = codeOf(error);
    return answer(code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR' ? 404 : 500, null);
  }
}

/** The path below the page's folder that an address names, or null if it could lead anywhere else. */
export function innerPath(pathname: string): string | null {
  let path: string;
  try {
    path = decodeURIComponent(pathname);
  } catch {
    return null;
  }
  const parts = path.split('/').slice(1);
  const odd = parts.some((part) => part.startsWith('.') || /[\\:\u0000-\u001f]/.test(part));
  if (!path.startsWith('/') || odd) return null;
  return parts.join('/') === '' ? 'index.html' : parts.join('/');
}

function answer(
  status: number,
  body: Uint8Array<ArrayBuffer> | null,
  type?: string,
  policy = CONTENT_POLICY,
): Response {
  const headers = new Headers({
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cache-Control': 'no-cache',
  });
  if (type !== undefined) headers.set('Content-Type', type);
  return new Response(body, { status, headers });
}
