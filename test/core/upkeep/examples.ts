import { readFileSync } from 'node:fs';
import { readDocument } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';

/** The example shops by file name. */
export const EXAMPLES = ['one-router', 'five-machines', 'bench-line'] as const;

export function exampleDocument(name: (typeof EXAMPLES)[number]): ShopDocument {
  const read = readDocument(
    readFileSync(new URL(`../../../core/examples/${name}.json`, import.meta.url), 'utf8'),
  );
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.document;
}
