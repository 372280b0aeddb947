import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { setupFiles } from '../../../electron/files/files.ts';
import { keptJson } from '../../../electron/files/kept-json.ts';
import { MOST_RECENT, checkRecent, setupRecent } from '../../../electron/files/recent.ts';
import { checkRecovery, setupRecovery } from '../../../electron/files/recovery.ts';
import { faultyDisk } from '../faulty-disk.ts';
import { freshFolders, leftovers } from '../folder.ts';

const fresh = freshFolders();
const anyNumber = (raw: unknown) => (typeof raw === 'number' ? raw : null);

describe('a kept value', () => {
  it('comes back, in a folder that it makes, and is forgotten with null', async () => {
    const path = join(fresh(), 'made/later/value.json');
    const kept = keptJson(disk, path, anyNumber);
    expect(await kept.read()).toBeNull();
    await kept.keep(4);
    expect(await keptJson(disk, path, anyNumber).read()).toBe(4);
    await kept.keep(null);
    await kept.keep(null);
    expect(await kept.read()).toBeNull();
  });

  it.each(['', '{', '"words"', '[1]'])('is nothing where the file holds %j', async (text) => {
    const path = join(fresh(), 'value.json');
    writeFileSync(path, text);
    expect(await keptJson(disk, path, anyNumber).read()).toBeNull();
  });

  it('is the last of many that come faster than the disk', async () => {
    const path = join(fresh(), 'value.json');
    const kept = keptJson(disk, path, anyNumber);
    await Promise.all(Array.from({ length: 200 }, (_, i) => kept.keep(i)));
    expect(await kept.read()).toBe(199);
    await Promise.all([kept.keep(1), kept.keep(null)]);
    expect(readdirSync(join(path, '..'))).toEqual([]);
  });

  it('tells of a disk that fails, keeps the old one whole, and works again afterwards', async () => {
    const folder = fresh();
    const path = join(folder, 'value.json');
    await keptJson(disk, path, anyNumber).keep(1);
    await expect(keptJson(faultyDisk('write', 'ENOSPC'), path, anyNumber).keep(2)).rejects.toThrow('ENOSPC');
    expect(await keptJson(disk, path, anyNumber).read()).toBe(1);
    expect(leftovers(folder)).toEqual([]);
    let full = true;
    const moody = {
      ...disk,
      rename: (a: string, b: string) => (full ? Promise.reject(new Error('full')) : disk.rename(a, b)),
    };
    const kept = keptJson(moody as typeof disk, path, anyNumber);
    await expect(kept.keep(3)).rejects.toThrow('full');
    full = false;
    await kept.keep(4);
    expect(await kept.read()).toBe(4);
  });
});

describe('recovery', () => {
  const edit = (text: string, at: number, token: string | null = null) => ({
    text,
    name: 'shop',
    at,
    file: token === null ? null : { token, name: 'shop.json' },
  });
  const begin = async (folder: string) => {
    const files = setupFiles(disk, Date.now);
    const keeper = await setupRecovery(files, keptJson(disk, join(folder, 'recovery.json'), checkRecovery));
    return { files, keeper };
  };

  it('is offered by the next start with its file, whose token is a new one', async () => {
    const folder = fresh();
    writeFileSync(join(folder, 'shop.json'), 'saved');
    const first = await begin(folder);
    const { token } = first.files.grant(join(folder, 'shop.json'));
    await first.keeper.keep(edit('edited', 5, token));
    const second = await begin(folder);
    const found = second.keeper.get()!;
    expect(found).toMatchObject({ text: 'edited', name: 'shop', at: 5, file: { name: 'shop.json' } });
    expect(second.files.pathOf(found.file!.token)).toBe(join(folder, 'shop.json'));
    expect(found.file!.token).not.toBe(token);
  });

  it('is the newest edit, by the order of the edits and not by the clock', async () => {
    const folder = fresh();
    const { keeper } = await begin(folder);
    await Promise.all([
      keeper.keep(edit('one', 100)),
      keeper.keep(edit('two', 300)),
      keeper.keep(edit('three', 200)),
    ]);
    expect((await begin(folder)).keeper.get()!.text).toBe('three');
  });

  it('is forgotten once the work is saved or given up', async () => {
    const folder = fresh();
    const { keeper } = await begin(folder);
    await keeper.keep(edit('one', 1));
    await keeper.settle();
    expect(keeper.get()).toBeNull();
    expect((await begin(folder)).keeper.get()).toBeNull();
    await keeper.keep(edit('two', 2));
    await keeper.keep(null);
    expect((await begin(folder)).keeper.get()).toBeNull();
  });

  it('of an earlier crash stays until the user has decided, also if the program then ends cleanly', async () => {
    const folder = fresh();
    await (await begin(folder)).keeper.keep(edit('crashed', 1));
    const { keeper } = await begin(folder);
    await keeper.settle();
    expect((await begin(folder)).keeper.get()!.text).toBe('crashed');
    await keeper.keep(null);
    expect((await begin(folder)).keeper.get()).toBeNull();
  });

  it('does not take a file by a token that was never given out', async () => {
    const folder = fresh();
    const { keeper } = await begin(folder);
    await keeper.keep(edit('one', 1, 'made-up'));
    expect((await begin(folder)).keeper.get()!.file).toBeNull();
  });

  it.each([
    'null',
    '[]',
    '{"text":1}',
    '{"text":"a","name":"b","at":1,"path":"relative.json"}',
    '{"text":"a","name":"b","at":-1,"path":null}',
  ])('is nothing where the file holds %s', (text) => expect(checkRecovery(JSON.parse(text))).toBeNull());
});

describe('recent files', () => {
  const begin = async (folder: string) => {
    const files = setupFiles(disk, Date.now);
    let [time, changes] = [0, 0];
    const kept = keptJson(disk, join(folder, 'settings/recent.json'), checkRecent);
    const recent = await setupRecent(
      files,
      kept,
      () => ++time,
      () => ++changes,
    );
    return { files, recent, changes: () => changes };
  };

  it('stand newest first, each once, and no more than the menu holds', async () => {
    const folder = fresh();
    const { recent, changes } = await begin(folder);
    for (let i = 0; i < MOST_RECENT + 3; i++) await recent.add(join(folder, `${i}.json`));
    await recent.add(join(folder, '5.json'));
    expect(recent.list().map(({ name }) => name)).toEqual(
      ['5', '10', '9', '8', '7', '6', '4', '3'].map((n) => `${n}.json`),
    );
    expect(changes()).toBe(MOST_RECENT + 4);
    expect((await begin(folder)).recent.list().map(({ name }) => name)[0]).toBe('5.json');
  });

  it('open by their token, and by no other; one that is gone leaves the list', async () => {
    const folder = fresh();
    const { files, recent } = await begin(folder);
    for (const name of ['a.json', 'b.json']) {
      writeFileSync(join(folder, name), name);
      await recent.add(join(folder, name));
    }
    const a = recent.list().find(({ name }) => name === 'a.json')!;
    expect(await recent.open(a.token)).toMatchObject({ ok: true, text: 'a.json', file: { token: a.token } });
    expect(recent.list()[0]!.name).toBe('a.json');
    rmSync(join(folder, 'a.json'));
    expect(await recent.open(a.token)).toMatchObject({ ok: false, reason: 'gone' });
    expect(recent.list().map(({ name }) => name)).toEqual(['b.json']);
    expect(await recent.open('made-up')).toMatchObject({ ok: false, reason: 'gone' });
    writeFileSync(join(folder, 'other.json'), '');
    expect(await recent.open(files.grant(join(folder, 'other.json')).token)).toMatchObject({ ok: false });
  });

  it('take what is usable out of an old or broken settings file', async () => {
    expect(checkRecent({})).toBeNull();
    expect(
      checkRecent([
        null,
        3,
        { path: 'relative', at: 1 },
        { path: '/a.json', at: 'x' },
        { path: '/b.json', at: 2, more: 1 },
      ]),
    ).toEqual([{ path: '/b.json', at: 2 }]);
    const folder = fresh();
    mkdirSync(join(folder, 'settings'));
    writeFileSync(join(folder, 'settings/recent.json'), '{"half');
    const { recent } = await begin(folder);
    expect(recent.list()).toEqual([]);
    await recent.add('/a.json');
    expect(JSON.parse(readFileSync(join(folder, 'settings/recent.json'), 'utf8'))).toHaveLength(1);
  });
});
