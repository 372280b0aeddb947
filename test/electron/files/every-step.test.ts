import { readFileSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Disk } from '../../../electron/files/atomic-write.ts';
import { setupFiles } from '../../../electron/files/files.ts';
import { keptJson } from '../../../electron/files/kept-json.ts';
import { checkRecovery, setupRecovery } from '../../../electron/files/recovery.ts';
import { freshFolders, leftovers } from '../folder.ts';
import { CODES, nthFault } from '../nth-fault.ts';
import type { Code } from '../nth-fault.ts';

const fresh = freshFolders();
const [OLD, NEW, NEXT] = ['{"old":"whole"}', '{"new":"written whole"}', '{"next":"after it"}'];
const never = () => Promise.reject(new Error('the user was asked'));

/** A disk that can be put in the place of another while a program runs. */
function changing(now: Disk): { disk: Disk; put(next: Disk): void } {
  let current = now;
  const through =
    (name: keyof Disk) =>
    (...given: unknown[]) =>
      (current[name] as (...all: unknown[]) => unknown)(...given);
  const names = ['open', 'rename', 'unlink', 'stat', 'readlink', 'readdir', 'mkdir'] as const;
  const made = Object.fromEntries(names.map((name) => [name, through(name)])) as unknown as Disk;
  return { disk: made, put: (next) => void (current = next) };
}

/** Steps of one save that goes well, so that each can fail in turn. */
async function stepsOf(work: (disk: Disk) => Promise<unknown>): Promise<readonly string[]> {
  const counted = nthFault(Infinity, 'EIO');
  await work(counted.disk);
  return counted.steps;
}

async function saveOnce(using: Disk): Promise<unknown> {
  const path = join(fresh(), 'shop.json');
  writeFileSync(path, OLD);
  const counted = changing(disk);
  const files = setupFiles(counted.disk, Date.now);
  const opened = await files.read(path);
  if (!opened.ok) throw new Error(opened.message);
  counted.put(using);
  return files.save(opened.file, NEW, never);
}

/** A save with a fault at one step; then the disk is well again. */
async function trySave(step: number, code: Code, times: number): Promise<void> {
  const folder = fresh();
  const path = join(folder, 'shop.json');
  writeFileSync(path, OLD);
  const swap = changing(disk);
  const files = setupFiles(swap.disk, Date.now);
  const opened = await files.read(path);
  if (!opened.ok) throw new Error(opened.message);
  const faulty = nthFault(step, code, times);
  swap.put(faulty.disk);
  const saved = await files.save(opened.file, NEW, never);
  const text = readFileSync(path, 'utf8');
  expect([OLD, NEW]).toContain(text);
  if (saved.ok) expect(text).toBe(NEW);
  else {
    expect(saved.message).toContain('shop.json');
    expect(saved.remedy.length).toBeGreaterThan(5);
  }
  swap.put(disk);
  // what the program did itself is no change by somebody else, and the next save takes what was left along
  expect(await files.changedOutside(opened.file)).toBe(false);
  expect(await files.save(opened.file, NEXT, never)).toMatchObject({ ok: true });
  expect(readFileSync(path, 'utf8')).toBe(NEXT);
  expect(leftovers(folder)).toEqual([]);
}

describe('a save', () => {
  it('takes the steps that are to fail', async () => {
    const steps = await stepsOf(saveOnce);
    for (const step of [
      'open',
      'file.writeFile',
      'file.chmod',
      'file.sync',
      'file.close',
      'rename',
      'stat',
      'readdir',
    ])
      expect(steps).toContain(step);
    // the file and its folder
    expect(steps.filter((step) => step === 'file.sync')).toHaveLength(2);
  });

  it.each(CODES)(
    'of which any one step fails with %s: old or new, whole, and nothing piles up',
    async (code) => {
      const steps = await stepsOf(saveOnce);
      for (let step = 0; step < steps.length; step++) await trySave(step, code, 1);
    },
  );

  it.each(CODES)(
    'from any step on with %s, tidying too: old or new, whole, and nothing piles up',
    async (code) => {
      const steps = await stepsOf(saveOnce);
      for (let step = 0; step < steps.length; step++) await trySave(step, code, Infinity);
    },
  );
});

describe('the edit that is kept against a crash', () => {
  const edit = (text: string, at: number) => ({ text, name: 'shop', at, file: null });
  const begin = async (folder: string, using: Disk) =>
    setupRecovery(setupFiles(using, Date.now), keptJson(using, join(folder, 'recovery.json'), checkRecovery));

  it.each(CODES)(
    'is the old or the new one whichever step fails with %s, and the next one is kept',
    async (code) => {
      const steps = await stepsOf(async (counted) => (await begin(fresh(), counted)).keep(edit('one', 1)));
      expect(steps.length).toBeGreaterThan(10);
      for (const times of [1, Infinity]) {
        for (let step = 0; step < steps.length; step++) {
          const folder = fresh();
          await (await begin(folder, disk)).keep(edit('one', 1));
          const swap = changing(disk);
          const keeper = await begin(folder, swap.disk);
          swap.put(nthFault(step, code, times).disk);
          const failed = await keeper.keep(edit('two', 2)).then(
            () => false,
            () => true,
          );
          swap.put(disk);
          const found = (await begin(folder, disk)).get()!.text;
          expect(failed ? ['one', 'two'] : ['two']).toContain(found);
          expect(leftovers(folder)).toEqual([]);
          await keeper.keep(edit('three', 3));
          expect((await begin(folder, disk)).get()!.text).toBe('three');
          expect(leftovers(folder)).toEqual([]);
        }
      }
    },
  );

  it.each(CODES)('does not keep the program from starting where it cannot be read: %s', async (code) => {
    const folder = fresh();
    await (await begin(folder, disk)).keep(edit('one', 1));
    for (let step = 0; step < 8; step++) {
      const keeper = await begin(folder, nthFault(step, code, Infinity).disk);
      expect([null, 'one']).toContain(keeper.get()?.text ?? null);
    }
    expect((await begin(folder, disk)).get()!.text).toBe('one');
  });
});
