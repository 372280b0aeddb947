import * as real from 'node:fs/promises';
import type { Disk } from '../../electron/files/atomic-write.ts';

/** What the operating system says when a step fails. */
export const CODES = ['ENOSPC', 'EACCES', 'EROFS', 'EIO', 'EXDEV', 'EBUSY'] as const;
export type Code = (typeof CODES)[number];

export interface CountedDisk {
  readonly disk: Disk;
  /** Steps so far, by name, in their order. */
  readonly steps: readonly string[];
}

/**
 * The real disk, of which every call is a step: opening, writing, flushing, closing, renaming, removing, asking, of files
 * and of folders. From step `first` on it fails `times` steps with a code; half of a failing write is done before.
 */
export function nthFault(first: number, code: Code, times = 1): CountedDisk {
  const steps: string[] = [];
  const step = async <T>(
    name: string,
    work: () => Promise<T>,
    before?: () => Promise<unknown>,
  ): Promise<T> => {
    const number = steps.push(name) - 1;
    if (number < first || number >= first + times) return work();
    await before?.();
    throw Object.assign(new Error(`${code}: ${name}`), { code });
  };
  const wrap = (file: real.FileHandle): real.FileHandle =>
    new Proxy(file, {
      get(target, key) {
        const own = Reflect.get(target, key) as unknown;
        if (typeof own !== 'function') return own;
        const call = own.bind(target) as (...given: unknown[]) => Promise<unknown>;
        const name = `file.${String(key)}`;
        if (key === 'writeFile') {
          return (text: string, ...more: unknown[]) =>
            step(
              name,
              () => call(text, ...more),
              () => target.write(text.slice(0, Math.floor(text.length / 2))),
            );
        }
        // a close that fails has closed all the same
        if (key === 'close') return () => step(name, () => call(), call);
        if (['sync', 'chmod', 'stat', 'readFile', 'datasync'].includes(String(key)))
          return (...given: unknown[]) => step(name, () => call(...given));
        return own.bind(target) as unknown;
      },
    });
  const plain = <K extends 'rename' | 'unlink' | 'stat' | 'readlink' | 'readdir' | 'mkdir'>(name: K) =>
    ((...given: unknown[]) =>
      step(name, () => (real[name] as (...all: unknown[]) => Promise<unknown>)(...given))) as never;
  const disk: Disk = {
    open: ((path: string, flags: string, mode?: number) =>
      step('open', async () => wrap(await real.open(path, flags, mode)))) as Disk['open'],
    rename: plain('rename'),
    unlink: plain('unlink'),
    stat: plain('stat'),
    readlink: plain('readlink'),
    readdir: plain('readdir'),
    mkdir: plain('mkdir'),
  };
  return { disk, steps };
}
