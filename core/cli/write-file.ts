import { existsSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fail, USAGE } from './outcome.ts';
import type { Outcome } from './outcome.ts';

/** Why a file could not be written and what would mend it, by the code of the system. */
const REASONS: Readonly<Record<string, readonly [why: string, remedy: string]>> = {
  ENOENT: ['its folder is not there', 'make the folder, or name another'],
  ENOTDIR: ['its folder is not a folder', 'name a folder that is one'],
  EISDIR: ['it is a folder', 'name a file in it'],
  EACCES: ['you may not write there', 'choose a folder of your own, or ask for the right to write'],
  EPERM: ['you may not write there', 'choose a folder of your own, or ask for the right to write'],
  EROFS: ['that disk can only be read', 'choose a folder on another disk'],
  ENOSPC: ['the disk is full', 'make room, or choose another disk'],
  ENAMETOOLONG: ['its name is too long', 'choose a shorter name'],
};

const codeOf = (cause: unknown): string =>
  cause instanceof Error && 'code' in cause ? String(cause.code) : 'unknown reason';

/** An outcome that says why a file could not be written. */
export function cannotWrite(path: string, cause: unknown): Outcome {
  const code = codeOf(cause);
  const [why, remedy] = REASONS[code] ?? [code, `see whether ${dirname(path)} can be written`];
  return fail(USAGE, `${path}: cannot be written: ${why}\n  remedy: ${remedy}`);
}

/** Writes a file whole or leaves the old one as it was; an outcome where it cannot. */
export function writeWhole(path: string, content: string | Uint8Array): Outcome | null {
  const temporary = `${path}.${process.pid}.tmp`;
  try {
    writeFileSync(temporary, content, { flush: true });
    renameSync(temporary, path);
    return null;
  } catch (cause) {
    if (existsSync(temporary)) rmSync(temporary);
    return cannotWrite(path, cause);
  }
}
