import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { setupFiles } from '../../../electron/files/files.ts';
import { keptJson } from '../../../electron/files/kept-json.ts';
import { checkRecovery, setupRecovery } from '../../../electron/files/recovery.ts';
import { documentsIn } from '../../../electron/main/open-requests.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const never = () => Promise.reject(new Error('the user was asked'));

describe('names', () => {
  it.each([
    'two words',
    `it's "quoted"`,
    'two\nlines',
    'Überblick',
    '木工房 план',
    '🪵🌀',
    'עץ',
    '%20',
    '$(x);&',
    ' ',
  ])('%j of a folder and a file: opened, saved, kept and asked for', async (name) => {
    const folder = join(fresh(), `in ${name}`);
    mkdirSync(folder);
    const path = join(folder, `${name}.json`);
    writeFileSync(path, 'one');
    expect(documentsIn(['program', path], '/')).toEqual([path]);
    const files = setupFiles(disk, Date.now);
    const opened = await files.read(path);
    if (!opened.ok) throw new Error(opened.message);
    expect(opened.file.name).toBe(`${name}.json`);
    expect(await files.save(opened.file, 'two', never)).toMatchObject({ ok: true });
    expect(await files.changedOutside(opened.file)).toBe(false);
    const kept = () => keptJson(disk, join(folder, 'settings', 'recovery.json'), checkRecovery);
    const keeper = await setupRecovery(files, kept());
    await keeper.keep({ text: 'three', name, at: 1, file: opened.file });
    const later = setupFiles(disk, Date.now);
    const found = (await setupRecovery(later, kept())).get()!;
    expect(later.pathOf(found.file!.token)).toBe(path);
    expect(readdirSync(folder).sort()).toEqual([`${name}.json`, 'settings'].sort());
    expect(readFileSync(path, 'utf8')).toBe('two');
  });
});

/** Whether this machine lets the test do what only its keeper may, such as protect a file from root. */
function may(...commands: readonly (readonly [string, ...string[]])[]): boolean {
  try {
    for (const [program, ...words] of commands) execFileSync(program, words, { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

describe('places that cannot be written', () => {
  const undo: (() => void)[] = [];
  afterEach(() => {
    for (const step of undo.splice(0).reverse()) step();
  });
  const trySave = async (path: string) => {
    const files = setupFiles(disk, Date.now);
    const opened = await files.read(path);
    if (!opened.ok) throw new Error(opened.message);
    return files.save(opened.file, 'new', never);
  };

  it('a file that the system protects', async ({ skip }) => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, 'old');
    if (!may(['chattr', '+i', path])) return skip('chattr +i is not possible here');
    undo.push(() => may(['chattr', '-i', path]));
    expect(await trySave(path)).toMatchObject({ ok: false, reason: 'read-only' });
    expect(readFileSync(path, 'utf8')).toBe('old');
    expect(readdirSync(join(path, '..'))).toEqual(['shop.json']);
  });

  it('a folder that the system protects', async ({ skip }) => {
    const folder = fresh();
    writeFileSync(join(folder, 'shop.json'), 'old');
    if (!may(['chattr', '+i', folder])) return skip('chattr +i is not possible here');
    undo.push(() => may(['chattr', '-i', folder]));
    expect(await trySave(join(folder, 'shop.json'))).toMatchObject({ ok: false, reason: 'read-only' });
    expect(readdirSync(folder)).toEqual(['shop.json']);
  });

  it('a disk that can only be read', async ({ skip }) => {
    const folder = fresh();
    writeFileSync(join(folder, 'shop.json'), 'old');
    if (!may(['mount', '--bind', folder, folder])) return skip('mount is not possible here');
    undo.push(() => may(['umount', folder]));
    if (!may(['mount', '-o', 'remount,ro,bind', folder])) return skip('mount is not possible here');
    const saved = await trySave(join(folder, 'shop.json'));
    expect(saved).toMatchObject({
      ok: false,
      reason: 'read-only',
      message: expect.stringMatching(/read-only/) as string,
    });
    expect(readFileSync(join(folder, 'shop.json'), 'utf8')).toBe('old');
  });

  it('a disk that is full', async ({ skip }) => {
    const folder = fresh();
    if (!may(['mount', '-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', folder]))
      return skip('mount is not possible here');
    undo.push(() => may(['umount', folder]));
    const path = join(folder, 'shop.json');
    writeFileSync(path, 'old');
    const files = setupFiles(disk, Date.now);
    const saved = await files.write(path, 'x'.repeat(1_000_000));
    expect(saved).toMatchObject({ ok: false, reason: 'disk-full' });
    expect(readFileSync(path, 'utf8')).toBe('old');
    expect(readdirSync(folder)).toEqual(['shop.json']);
    expect(await files.write(path, 'smaller')).toMatchObject({ ok: true });
  });
});

describe('two programs on one file', () => {
  const begin = async (path: string) => {
    const files = setupFiles(disk, Date.now);
    const opened = await files.read(path);
    if (!opened.ok) throw new Error(opened.message);
    return { files, file: opened.file };
  };

  it('the second save does not write over the first unasked, however late it comes', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, 'start');
    const [one, two] = [await begin(path), await begin(path)];
    // both looked, and saw no change
    expect(await one.files.changedOutside(one.file)).toBe(false);
    expect(await two.files.changedOutside(two.file)).toBe(false);
    expect(await one.files.save(one.file, 'of one', never)).toMatchObject({ ok: true });
    expect(await two.files.save(two.file, 'of two', never)).toMatchObject({ ok: false, reason: 'changed' });
    expect(readFileSync(path, 'utf8')).toBe('of one');
    // asked about it, the user says that it may be written over; but not what came after the question
    expect(await two.files.changedOutside(two.file)).toBe(true);
    expect(await one.files.save(one.file, 'of one again', never)).toMatchObject({ ok: true });
    expect(await two.files.save(two.file, 'of two', never)).toMatchObject({ ok: false, reason: 'changed' });
    expect(await two.files.changedOutside(two.file)).toBe(true);
    expect(await two.files.save(two.file, 'of two', never)).toMatchObject({ ok: true });
    expect(await two.files.save(two.file, 'of two again', never)).toMatchObject({ ok: true });
    expect(readFileSync(path, 'utf8')).toBe('of two again');
  });

  it('nor does the save after a crash, where the file was changed in between', async () => {
    const folder = fresh();
    const path = join(folder, 'shop.json');
    writeFileSync(path, 'start');
    const kept = () => keptJson(disk, join(folder, 'settings', 'recovery.json'), checkRecovery);
    const one = await begin(path);
    await (
      await setupRecovery(one.files, kept())
    ).keep({ text: 'edited', name: 'shop', at: 1, file: one.file });
    writeFileSync(path, 'of somebody else');
    const files = setupFiles(disk, Date.now);
    // the list of recent files may know the path first
    files.grant(path);
    const { file } = (await setupRecovery(files, kept())).get()!;
    expect(await files.save(file!, 'edited', never)).toMatchObject({ ok: false, reason: 'changed' });
    expect(await files.changedOutside(file!)).toBe(true);
    expect(readFileSync(path, 'utf8')).toBe('of somebody else');
  });
});
