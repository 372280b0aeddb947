import { isDeepStrictEqual } from 'node:util';
import { readDocument, readValue } from '../../core/document/read.ts';
import type { ReadResult } from '../../core/document/read.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import { writeDocument } from '../../core/document/write.ts';
import { solve } from '../../core/network/solve.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import { must, mustBeFinite, mustRead } from './target.ts';

/** Most reasons that a person is told at once. */
const MOST_PROBLEMS = 1000;

function refused(read: Extract<ReadResult, { ok: false }>): string {
  must(read.problems.length > 0, 'refused without a reason');
  must(read.problems.length <= MOST_PROBLEMS, `${read.problems.length} problems`);
  for (const { message, remedy } of read.problems) mustRead(message, remedy);
  return 'refused';
}

/** Reads a text: refused in words, or a document that is written and read again as the same. */
export function readText(text: string): string {
  return follow(readDocument(text), () => readDocument(text, { allowIncomplete: true }));
}

export function readAny(raw: unknown): string {
  return follow(readValue(raw), () => readValue(raw, { allowIncomplete: true }));
}

function follow(read: ReadResult, incomplete: () => ReadResult): string {
  if (!read.ok) {
    refused(read);
    const open = incomplete();
    if (!open.ok) return refused(open);
    for (const { message, remedy } of open.gaps) mustRead(message, remedy);
    mustStay(open.document);
    return 'read with gaps';
  }
  mustStay(read.document);
  return solved(read.document);
}

function mustStay(document: ShopDocument): void {
  const text = writeDocument(document);
  const again = readDocument(text, { allowIncomplete: true });
  if (!again.ok) throw new Error(`what was written cannot be read: ${again.problems[0]?.message ?? ''}`);
  must(isDeepStrictEqual(again.document, document), 'what was written reads as another');
}

/** Solves a document that was read: finite figures, or a reason in words. */
export function solved(document: ShopDocument): string {
  const result = solve(document);
  if (!result.ok) {
    for (const { message, remedy } of result.problems) mustRead(message, remedy);
    return 'read, not compiled';
  }
  const { settings } = result.solution;
  must(settings.length === settingNames(document).length, 'a setting has no result');
  mustBeFinite(result.solution, 'solution');
  for (const setting of settings) {
    for (const { message, remedy } of setting.findings) mustRead(message, remedy);
    must(setting.converged || (setting.reasonText ?? '') !== '', 'no solution and no reason');
  }
  return settings.every(({ converged }) => converged) ? 'solved' : 'read, no solution';
}
