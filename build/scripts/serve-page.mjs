// Serves the built page to a browser on this machine alone: loopback only, GET and HEAD only, nothing outside the
// folder, no listing. Used by `npm start` where there is no desktop window, and by the journeys.
import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';

const LOOPBACK = '127.0.0.1';

/** The same policy as in the desktop window (electron/main/protocol.ts); a test holds them equal. */
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

/** Kinds of file that the build makes; no other kind is served. */
export const MIME = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

const HEADERS = {
  'Content-Security-Policy': CONTENT_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-store',
};

/** The path below the folder that an address names, or null if it could lead anywhere else. */
function innerPath(address) {
  let path;
  try {
    path = decodeURIComponent(address.split(/[?#]/)[0]);
  } catch {
    return null;
  }
  const parts = path.split('/').slice(1);
  const odd = parts.some((part) => part.startsWith('.') || /[\\:\u0000-\u001f]/.test(part));
  if (!path.startsWith('/') || odd) return null;
  return parts.join('/') === '' ? 'index.html' : parts.join('/');
}

async function answer(folder, hosts, request, response) {
  const say = (status, more = {}) => {
    response.writeHead(status, { ...HEADERS, 'Content-Length': 0, ...more });
    response.end();
  };
  // Another site's name that was made to point here must not read the page.
  if (!hosts.has(request.headers.host)) return say(403);
  if (request.method !== 'GET' && request.method !== 'HEAD') return say(405, { Allow: 'GET, HEAD' });
  const inside = innerPath(request.url);
  const type = inside === null ? undefined : MIME[extname(inside).toLowerCase()];
  if (type === undefined) return say(404);
  const found = await findFile(folder, inside);
  if (found === null) return say(404);
  response.writeHead(200, { ...HEADERS, 'Content-Type': type, 'Content-Length': found.size });
  if (request.method === 'HEAD') return response.end();
  createReadStream(found.path)
    .on('error', () => response.destroy())
    .pipe(response);
}

async function findFile(folder, inside) {
  try {
    const top = await realpath(folder);
    const path = await realpath(join(top, inside));
    const { size } = await stat(path).then((found) => (found.isFile() ? found : { size: -1 }));
    return size >= 0 && path.startsWith(top + sep) ? { path, size } : null;
  } catch (error) {
    if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return null;
    throw error;
  }
}

/**
 * Starts the server on a free port, or on `port`.
 *
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>}
 */
export async function servePage(folder, { port = 0 } = {}) {
  const hosts = new Set();
  const server = createServer((request, response) => {
    answer(folder, hosts, request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500, HEADERS);
      response.end();
    });
  });
  await new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, LOOPBACK, resolve);
  });
  const bound = server.address().port;
  hosts.add(`${LOOPBACK}:${bound}`).add(`localhost:${bound}`);
  return {
    url: `http://${LOOPBACK}:${bound}/`,
    port: bound,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
