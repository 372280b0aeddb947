import { closeSync, openSync, readSync } from 'node:fs';
import { LONGEST_DOCUMENT } from '../document/read.ts';
import { BAD_DOCUMENT, fail } from './outcome.ts';
import type { Outcome } from './outcome.ts';

const CHUNK = 1 << 20;

/** Bytes of a file, pipe or device; null where there are more than any shop document has, which some devices never end with. */
function readBytes(path: string): Uint8Array | null {
  const file = openSync(path, 'r');
  try {
    const chunks: Uint8Array[] = [];
    const chunk = Buffer.alloc(CHUNK);
    for (let size = 0; size <= LONGEST_DOCUMENT;) {
      const count = readSync(file, chunk, 0, CHUNK, null);
      if (count === 0) return Buffer.concat(chunks);
      chunks.push(Buffer.from(chunk.subarray(0, count)));
      size += count;
    }
    return null;
  } finally {
    closeSync(file);
  }
}

/** The text of a document's file, or an outcome where it cannot be read. */
export function readText(path: string): string | Outcome {
  const refuse = (why: string, remedy: string) =>
    fail(BAD_DOCUMENT, `${path}: cannot be read (${why})\n  remedy: ${remedy}`);
  let bytes: Uint8Array | null;
  try {
    bytes = readBytes(path);
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown reason';
    return refuse(code, 'check the name and that you may read it');
  }
  if (bytes === null) return refuse(`more than ${LONGEST_DOCUMENT / 1e6} MB`, 'name a shop document');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return refuse('it is not text in UTF-8', 'name a shop document, or save it in UTF-8');
  }
}
