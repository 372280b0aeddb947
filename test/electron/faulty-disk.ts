import * as real from 'node:fs/promises';
import type { Disk } from '../../electron/files/atomic-write.ts';

/** The steps of a save that can fail, in their order. */
export const STEPS = ['open', 'write', 'chmod', 'sync', 'close', 'rename'] as const;
export type Step = (typeof STEPS)[number] | 'sync-folder' | 'open-folder' | 'read';

const fault = (code: string, step: Step) => Object.assign(new Error(`${code}: ${step}`), { code });

/** The real disk, but one step fails with a code of the operating system. Half of a write is done before it fails. */
export function faultyDisk(step: Step, code: string): Disk {
  const failing = <T>(at: Step, work: () => Promise<T>) =>
    at === step ? Promise.reject(fault(code, at)) : work();
  const wrap = (file: real.FileHandle, folder: boolean): real.FileHandle =>
    new Proxy(file, {
      get(target, key) {
        const own = Reflect.get(target, key) as unknown;
        if (typeof own !== 'function') return own;
        const call = own.bind(target) as (...given: unknown[]) => Promise<unknown>;
        if (key === 'writeFile' && step === 'write') {
          return async (text: string) => {
            await target.write(text.slice(0, Math.floor(text.length / 2)));
            throw fault(code, step);
          };
        }
        if (key === 'readFile') return (...given: unknown[]) => failing('read', () => call(...given));
        if (key === 'chmod') return (...given: unknown[]) => failing('chmod', () => call(...given));
        if (key === 'sync') return () => failing(folder ? 'sync-folder' : 'sync', () => call());
        if (key === 'close') {
          return async () => {
            await call();
            if (step === 'close' && !folder) throw fault(code, step);
          };
        }
        return call;
      },
    });
  return {
    ...real,
    open: (async (path: string, flags: string, mode?: number) => {
      const folder = flags === 'r' && (await real.stat(path)).isDirectory();
      return failing(folder ? 'open-folder' : 'open', async () =>
        wrap(await real.open(path, flags, mode), folder),
      );
    }) as Disk['open'],
    rename: (from, to) => failing('rename', () => real.rename(from, to)),
  };
}
