import {
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  utimesSync,
} from 'node:fs';
import { statSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MOST_BYTES, isDocumentPath, setupFiles } from '../../../electron/files/files.ts';
import type { Opened } from '../../../electron/files/files.ts';
import { LONGEST_MESSAGE } from '../../../core/document/shell-messages.ts';
import { LONGEST_DOCUMENT } from '../../../core/document/read.ts';
import { faultyDisk } from '../faulty-disk.ts';
import type { Step } from '../faulty-disk.ts';
import { freshFolders } from '../folder.ts';

const fresh = freshFolders();
const never = () => Promise.reject(new Error('the user was asked'));
const files = () => setupFiles(disk, Date.now);
const opened = (result: Opened) => {
  if (!result.ok) throw new Error(result.message);
  return result;
};

describe('which files the page can reach', () => {
  it('none by a token that was never given out', async () => {
    const shop = join(fresh(), 'shop.json');
    writeFileSync(shop, 'old');
    for (const token of ['made-up', shop, '../shop.json', '__proto__', 'constructor']) {
      const saved = await files().save({ token, name: 'shop.json' }, 'new', never);
      expect(saved).toMatchObject({ ok: false, reason: 'gone' });
      expect(await files().changedOutside({ token, name: 'shop.json' })).toBe(false);
    }
    expect(readFileSync(shop, 'utf8')).toBe('old');
  });

  it('the file of a token, whatever name the page puts beside it', async () => {
    const folder = fresh();
    const all = files();
    const { file } = opened(
      await (writeFileSync(join(folder, 'a.json'), '1'), all.read(join(folder, 'a.json'))),
    );
    await all.save({ token: file.token, name: '../../b.json' }, '2', never);
    expect(readdirSync(folder)).toEqual(['a.json']);
    expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe('2');
  });

  it('gives tokens that tell nothing of the path, and the same path the same token', () => {
    const all = files();
    const one = all.grant('/tmp/x/shop.json');
    expect(one.token).toMatch(/^[0-9a-f]{32}$/);
    expect(one.name).toBe('shop.json');
    expect(all.grant('/tmp/x/../x/shop.json').token).toBe(one.token);
    expect(files().grant('/tmp/x/shop.json').token).not.toBe(one.token);
  });

  it.each([
    ['/a/shop.json', true],
    ['/a/Shop.JSON', true],
    ['shop.json', false],
    ['/etc/passwd', false],
    ['/a/shop.json\0.txt', false],
    ['/a/.json', false],
  ])('a document dropped or named from outside: %j is %s', (path, is) => {
    expect(isDocumentPath(path)).toBe(is);
  });
});

describe('reading', () => {
  const readText = async (bytes: Buffer | string) => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, bytes);
    return files().read(path);
  };

  it('gives the text, and takes off a byte-order mark', async () => {
    expect(await readText('{"a":"ü 木"}')).toMatchObject({ ok: true, text: '{"a":"ü 木"}' });
    expect(await readText('\uFEFF{}')).toMatchObject({ ok: true, text: '{}' });
  });

  it.each([
    ['two-byte text', Buffer.from('\uFEFF{}', 'utf16le')],
    ['bytes that are no text', Buffer.from([0x7b, 0xff, 0xfe, 0x80])],
  ])('refuses %s', async (_what, bytes) => {
    expect(await readText(bytes)).toMatchObject({ ok: false, reason: 'unreadable', message: /UTF-8/ });
  });

  it('refuses a file larger than any shop without reading it, and takes the longest document there is', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, '');
    truncateSync(path, MOST_BYTES + 1);
    expect(await setupFiles(faultyDisk('read', 'EIO'), Date.now).read(path)).toMatchObject({
      reason: 'unreadable',
      message: /larger/,
    });
    expect([MOST_BYTES, LONGEST_MESSAGE]).toEqual([LONGEST_DOCUMENT, LONGEST_DOCUMENT]);
  });

  it.runIf(process.platform !== 'win32')('refuses a device and a folder', async () => {
    expect(await files().read('/dev/zero')).toMatchObject({ reason: 'unreadable' });
    expect(await files().read(fresh())).toMatchObject({ reason: 'unreadable', message: /folder/ });
  });

  it('names the file, the cause and the remedy when it is gone', async () => {
    const result = await files().read(join(fresh(), 'no shop.json'));
    expect(result).toMatchObject({ ok: false, reason: 'gone', message: /no shop\.json.*not there/ });
    expect(!result.ok && result.remedy).not.toBe('');
  });
});

// Tests may run as root, whom no permission stops: the system's refusals are put in by hand, at the step where they come.
describe('failures in words', () => {
  const rows: [Step, string, string, RegExp][] = [
    ['open', 'EROFS', 'read-only', /disk is read-only/],
    ['open', 'EACCES', 'read-only', /not allowed/],
    ['open', 'EPERM', 'read-only', /not allowed/],
    ['write', 'ENOSPC', 'disk-full', /full/],
    ['write', 'EDQUOT', 'disk-full', /used up/],
    ['sync', 'EIO', 'not-possible-here', /EIO/],
    ['rename', 'EBUSY', 'unreadable', /another program/],
    ['open', 'ENOENT', 'gone', /not there any more/],
  ];
  it.each(rows)('%s fails with %s: %s', async (step, code, reason, words) => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, 'old');
    const saved = await setupFiles(faultyDisk(step, code), Date.now).write(path, 'new');
    expect(saved).toMatchObject({ ok: false, reason, message: expect.stringMatching(words) as string });
    expect(!saved.ok && saved.message).toContain('shop.json');
    expect(!saved.ok && saved.remedy.length).toBeGreaterThan(10);
    expect(readFileSync(path, 'utf8')).toBe('old');
  });

  it('calls a permission that is missing for reading unreadable', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, 'old');
    const result = await setupFiles(faultyDisk('open', 'EACCES'), Date.now).read(path);
    expect(result).toMatchObject({ reason: 'unreadable', message: /reading it is not allowed/ });
  });

  it('never tells the page a folder', async () => {
    const folder = fresh();
    const result = await files().write(join(folder, 'none/shop.json'), 'x');
    expect(JSON.stringify(result)).not.toContain(folder);
  });
});

describe('saving', () => {
  it('asks where only for a document without a file, and a refusal is no failure to tell', async () => {
    const folder = fresh();
    const all = files();
    const saved = await all.save(null, 'one', () => Promise.resolve(join(folder, 'a b.json')));
    expect(saved).toMatchObject({ ok: true, file: { name: 'a b.json' } });
    expect(await all.save(saved.ok ? saved.file : null, 'two', never)).toEqual(saved);
    expect(readFileSync(join(folder, 'a b.json'), 'utf8')).toBe('two');
    expect(await all.save(null, 'x', () => Promise.resolve(null))).toMatchObject({
      ok: false,
      reason: 'cancelled',
    });
  });

  it('of many saves at once the last one stays', async () => {
    const path = join(fresh(), 'shop.json');
    // The disk is slowest with the first of them, which would otherwise come last.
    let delay_ms = 80;
    const slow = (from: string, to: string) =>
      new Promise((resolve) => setTimeout(resolve, (delay_ms -= 20))).then(() => disk.rename(from, to));
    const all = setupFiles({ ...disk, rename: slow as typeof disk.rename }, Date.now);
    await Promise.all(['one', 'two', 'three', 'four'].map((text) => all.write(path, text)));
    expect(readFileSync(path, 'utf8')).toBe('four');
  });

  it('goes on after a save that failed', async () => {
    const folder = fresh();
    const all = files();
    const [bad, good] = await Promise.all([
      all.write(join(folder, 'no/a.json'), '1'),
      all.write(join(folder, 'a.json'), '2'),
    ]);
    expect([bad.ok, good.ok]).toEqual([false, true]);
  });
});

describe('a file that somebody else changed', () => {
  const begin = async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, 'first');
    const all = files();
    const { file } = opened(await all.read(path));
    return { path, all, file };
  };

  it('is not seen where nothing happened, nor after the program itself saved', async () => {
    const { all, file } = await begin();
    expect(await all.changedOutside(file)).toBe(false);
    await all.save(file, 'second', never);
    expect(await all.changedOutside(file)).toBe(false);
  });

  it('is seen by its text, also with the same length and the old time put back', async () => {
    const { path, all, file } = await begin();
    const { atime, mtime } = statSync(path);
    writeFileSync(path, 'FIRST');
    utimesSync(path, atime, mtime);
    expect(await all.changedOutside(file)).toBe(true);
    expect(await all.changedOutside(file)).toBe(true);
  });

  it('is seen when another file took its place, or when it is gone', async () => {
    const { path, all, file } = await begin();
    writeFileSync(`${path}.other`, 'other');
    renameSync(`${path}.other`, path);
    expect(await all.changedOutside(file)).toBe(true);
    rmSync(path);
    expect(await all.changedOutside(file)).toBe(true);
  });

  it('is not seen when it was only touched or replaced by an equal one', async () => {
    const { path, all, file } = await begin();
    utimesSync(path, 1000, 1000);
    expect(await all.changedOutside(file)).toBe(false);
    rmSync(path);
    writeFileSync(path, 'first');
    expect(await all.changedOutside(file)).toBe(false);
  });

  it.runIf(process.platform !== 'win32')('is seen through a symbolic link', async () => {
    const folder = fresh();
    mkdirSync(join(folder, 'real'));
    writeFileSync(join(folder, 'real/shop.json'), 'one');
    symlinkSync('real/shop.json', join(folder, 'link.json'));
    const all = files();
    const { file } = opened(await all.read(join(folder, 'link.json')));
    expect(await all.changedOutside(file)).toBe(false);
    writeFileSync(join(folder, 'real/shop.json'), 'two');
    expect(await all.changedOutside(file)).toBe(true);
  });
});
