import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  readlinkSync,
  readdirSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { utimesSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { spawnSync } from 'node:child_process';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { atomicWrite, linkTarget, removeLeftBehind } from '../../../electron/files/atomic-write.ts';
import { temporaryName, writerOf } from '../../../core/document/temporary-name.ts';
import type { Writer } from '../../../core/document/temporary-name.ts';
import { STEPS, faultyDisk } from '../faulty-disk.ts';
import { freshFolders, leftovers } from '../folder.ts';

const fresh = freshFolders();
const OLD = '{"old":"kept whole"}';
const NEW = '{"new":"written whole"}';

describe('a save that goes well', () => {
  it('replaces the text, leaves nothing beside it and gives the stamp of what is there', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, OLD);
    const stamp = await atomicWrite(disk, path, NEW);
    expect(readFileSync(path, 'utf8')).toBe(NEW);
    expect(readdirSync(join(path, '..'))).toEqual(['shop.json']);
    const there = statSync(path, { bigint: true });
    expect(stamp).toEqual({
      size: there.size,
      ino: there.ino,
      mtimeNs: there.mtimeNs,
      ctimeNs: there.ctimeNs,
    });
  });

  it('makes a file that was not there, with the permissions that the system gives new files', async () => {
    const folder = fresh();
    writeFileSync(join(folder, 'usual'), '');
    await atomicWrite(disk, join(folder, 'new.json'), NEW);
    expect(readFileSync(join(folder, 'new.json'), 'utf8')).toBe(NEW);
    expect(statSync(join(folder, 'new.json')).mode).toBe(statSync(join(folder, 'usual')).mode);
  });

  it.each([
    'two words.json',
    `it's "quoted".json`,
    'Werkstatt-Überblick.json',
    '木工房 план.json',
    '-dash.json',
    'a&b;c$(d).json',
  ])('takes the name %s', async (name) => {
    const folder = join(fresh(), `in ${name}`);
    mkdirSync(folder);
    await atomicWrite(disk, join(folder, name), NEW);
    expect(readdirSync(folder)).toEqual([name]);
    expect(readFileSync(join(folder, name), 'utf8')).toBe(NEW);
  });

  it('takes a name as long as the system allows', async () => {
    const path = join(fresh(), `${'n'.repeat(250)}.json`);
    await atomicWrite(disk, path, NEW);
    expect(readFileSync(path, 'utf8')).toBe(NEW);
  });

  it.runIf(process.platform !== 'win32')('keeps the permissions of the file that it replaces', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, OLD);
    chmodSync(path, 0o640);
    await atomicWrite(disk, path, NEW);
    expect(statSync(path).mode & 0o777).toBe(0o640);
  });

  it.runIf(process.platform !== 'win32')(
    'keeps a symbolic link and writes where it leads, link by link',
    async () => {
      const folder = fresh();
      mkdirSync(join(folder, 'real'));
      writeFileSync(join(folder, 'real/shop.json'), OLD);
      symlinkSync('real/shop.json', join(folder, 'first.json'));
      symlinkSync('first.json', join(folder, 'second.json'));
      await atomicWrite(disk, join(folder, 'second.json'), NEW);
      expect(lstatSync(join(folder, 'second.json')).isSymbolicLink()).toBe(true);
      expect(readlinkSync(join(folder, 'first.json'))).toBe('real/shop.json');
      expect(readFileSync(join(folder, 'real/shop.json'), 'utf8')).toBe(NEW);
      expect(leftovers(folder).concat(leftovers(join(folder, 'real')))).toEqual([]);
    },
  );

  it.runIf(process.platform !== 'win32')(
    'follows a link whose file is gone, and refuses links in a circle',
    async () => {
      const folder = fresh();
      symlinkSync('later.json', join(folder, 'link.json'));
      await atomicWrite(disk, join(folder, 'link.json'), NEW);
      expect(readFileSync(join(folder, 'later.json'), 'utf8')).toBe(NEW);
      symlinkSync('b', join(folder, 'a'));
      symlinkSync('a', join(folder, 'b'));
      await expect(linkTarget(disk, join(folder, 'a'))).rejects.toMatchObject({ code: 'ELOOP' });
    },
  );
});

describe('a save of which one step fails', () => {
  const cases = STEPS.flatMap((step) => ['EIO', 'ENOSPC'].map((code) => [step, code] as const));
  it.each(cases)(
    '%s fails with %s: the old file is whole and nothing is left beside it',
    async (step, code) => {
      const path = join(fresh(), 'shop.json');
      writeFileSync(path, OLD);
      await expect(atomicWrite(faultyDisk(step, code), path, NEW)).rejects.toMatchObject({ code });
      expect(readFileSync(path, 'utf8')).toBe(OLD);
      expect(readdirSync(join(path, '..'))).toEqual(['shop.json']);
    },
  );

  it.each(STEPS.filter((step) => step !== 'chmod'))(
    '%s fails for a new file: no file is there',
    async (step) => {
      const folder = fresh();
      await expect(atomicWrite(faultyDisk(step, 'EIO'), join(folder, 'new.json'), NEW)).rejects.toThrow(
        'EIO',
      );
      expect(readdirSync(folder)).toEqual([]);
    },
  );

  it('tells of a folder that fails to flush, though the new file is whole', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, OLD);
    await expect(atomicWrite(faultyDisk('sync-folder', 'EIO'), path, NEW)).rejects.toThrow('EIO');
    expect(readFileSync(path, 'utf8')).toBe(NEW);
    expect(leftovers(join(path, '..'))).toEqual([]);
  });

  it.each([
    ['open-folder', 'EISDIR'],
    ['sync-folder', 'EINVAL'],
  ] as const)('takes it that some disks cannot flush a folder: %s %s', async (step, code) => {
    const path = join(fresh(), 'shop.json');
    await atomicWrite(faultyDisk(step, code), path, NEW);
    expect(readFileSync(path, 'utf8')).toBe(NEW);
  });
});

describe('what is not replaced', () => {
  it('a write-protected file', async () => {
    const path = join(fresh(), 'shop.json');
    writeFileSync(path, OLD);
    chmodSync(path, 0o444);
    await expect(atomicWrite(disk, path, NEW)).rejects.toMatchObject({ code: 'EACCES' });
    expect(readFileSync(path, 'utf8')).toBe(OLD);
  });

  it('a folder, and a file in a folder that is not there', async () => {
    const folder = fresh();
    mkdirSync(join(folder, 'inner'));
    await expect(atomicWrite(disk, join(folder, 'inner'), NEW)).rejects.toMatchObject({ code: 'EISDIR' });
    await expect(atomicWrite(disk, join(folder, 'no/shop.json'), NEW)).rejects.toMatchObject({
      code: 'ENOENT',
    });
    expect(readdirSync(folder)).toEqual(['inner']);
  });
});

describe('temporary files of a killed program', () => {
  it('are removed once they are old; anything else stays', async () => {
    const folder = fresh();
    const names = ['.chipdraft-save-0123456789abcdef.tmp', '.chipdraft-save-fedcba9876543210.tmp'];
    const others = ['shop.json', '.chipdraft-save-short.tmp', 'x.chipdraft-save-0123456789abcdef.tmp'];
    for (const name of [...names, ...others]) writeFileSync(join(folder, name), '');
    const hour = 3600;
    utimesSync(join(folder, names[0]!), Date.now() / 1000 - hour, Date.now() / 1000 - hour);
    for (const name of others) utimesSync(join(folder, name), 0, 0);
    await removeLeftBehind(disk, folder, Date.now());
    expect(readdirSync(folder).sort()).toEqual([names[1]!, ...others].sort());
    await removeLeftBehind(disk, join(folder, 'no such folder'), Date.now());
  });

  it('are removed at once where this machine knows that their program runs no more', async () => {
    const folder = fresh();
    let own = '';
    const watching: typeof disk = {
      ...disk,
      rename: (from, to) => ((own = basename(String(from))), disk.rename(from, to)),
    };
    await atomicWrite(watching, join(folder, 'shop.json'), NEW);
    const { host } = writerOf(own) as Writer;
    const gone = spawnSync(process.execPath, ['-e', '']).pid;
    const name = (of: string, pid: number) => temporaryName({ host: of, pid }, '0123456789abcdef');
    for (const one of [name(host, gone), name(host, process.ppid), name('00000000', gone)])
      writeFileSync(join(folder, one), '');
    await removeLeftBehind(disk, folder, Date.now());
    expect(readdirSync(folder).sort()).toEqual(
      [name(host, process.ppid), name('00000000', gone), 'shop.json'].sort(),
    );
  });
});
