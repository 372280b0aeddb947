import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { chmodSync, lstatSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli.ts';
import { writeWhole } from '../../core/cli/write-file.ts';
import { applyCommand, blankDocument } from '../../core/document/commands/index.ts';
import type { Command } from '../../core/document/commands/index.ts';
import { LONGEST_DOCUMENT, MOST_PROBLEMS, readDocument, readValue } from '../../core/document/read.ts';
import { readMessage, SHELL_MESSAGES } from '../../core/document/shell-messages.ts';
import { MOST } from '../../core/document/schema.ts';
import { temporaryName } from '../../core/document/temporary-name.ts';
import { EXAMPLES } from '../../core/examples/index.ts';
import { solve } from '../../core/network/solve.ts';
import { resolveNamedValues } from '../../core/quantities/named-values.ts';
import { partsList } from '../../core/summary/parts/parts-list.ts';
import { summaryHtml } from '../../core/summary/summary.ts';
import { upkeep } from '../../core/upkeep/upkeep.ts';
import { checkRecovery } from '../../electron/files/recovery.ts';
import { readMakerTable } from '../../renderer/fan-bench/maker-table.ts';
import { prepareWorker } from './messages.ts';

// What the fuzzing found, each mended and kept by name.

// eslint-disable-next-line @typescript-eslint/no-explicit-any
const fileOf = (id: keyof typeof EXAMPLES): any => structuredClone(EXAMPLES[id]);
const problemsOf = (raw: unknown) => {
  const read = readDocument(typeof raw === 'string' ? raw : JSON.stringify(raw));
  return read.ok ? [] : read.problems;
};
const ESCAPE = '\u001b[2J';

describe('documents', () => {
  it.each(['toString', 'valueOf'])('a group with a length that has a %s of its own is refused', (name) => {
    const file = fileOf('one-router');
    file.note = { length: { [name]: null } };
    // who is asked what it is worth is asked by `toString` first
    const says = name === 'toString' ? /no field may have this name/ : /where a text is meant/;
    expect(problemsOf(file)[0]!.message).toMatch(says);
    expect(readMessage(SHELL_MESSAGES.openRecent.takes, [{ length: { [name]: null } }])).toBeNull();
    expect(checkRecovery({ text: { length: { [name]: null } }, name: '', at: 0, path: null })).toBeNull();
    const edit = { kind: 'setUnderlay', underlay: file.note } as unknown as Command;
    expect(applyCommand(blankDocument('si'), edit).ok).toBe(false);
  });

  it('fields called __proto__ are refused, wherever they hide', () => {
    const text = JSON.stringify(fileOf('one-router')).replace(
      '"gates":{',
      '"gates":{"__proto__":{"si":1,"text":null},',
    );
    expect(problemsOf(text)[0]!.message).toMatch(/__proto__: no field may have this name/);
  });

  it('ids of the catalogue are no longer than a finding can tell', () => {
    const file = fileOf('one-router');
    file.runs[0].material = 'x'.repeat(10_000);
    const [problem] = problemsOf(file);
    expect(problem!.message).toMatch(/at most 80/);
    expect(problem!.message.length).toBeLessThan(300);
  });

  it('of many problems the first are told, and how many more there are', () => {
    const file = fileOf('one-router');
    file.things = Array.from({ length: 5000 }, () => ({ kind: 'port', odd: 1 }));
    const problems = problemsOf(file);
    expect(problems).toHaveLength(MOST_PROBLEMS + 1);
    expect(problems.at(-1)!.message).toMatch(/^and \d+ more/);
  });

  it('too long a text is refused with its size and the limit', () => {
    const [problem] = problemsOf(' '.repeat(LONGEST_DOCUMENT + 1));
    expect(problem!.message).toMatch(/51 million characters, at most 50 million/);
    expect(problem!.remedy).not.toBe('');
  });

  it('nested lists by the million are refused at a look, and brackets in texts do not count', () => {
    const file = fileOf('one-router');
    file.note = '['.repeat(100) + '\\"{{{';
    expect(problemsOf(file)).toEqual([]);
    file.note = null;
    const nested = `[${Array.from({ length: 20_000 }, () => '['.repeat(500) + ']'.repeat(500)).join(',')}]`;
    const text = JSON.stringify(file).replace('"note":null', `"note":${nested}`);
    const started = performance.now();
    expect(problemsOf(text)[0]!.message).toMatch(/more than 64 deep/);
    expect(performance.now() - started).toBeLessThan(1000);
  });

  it('values that go round in a circle are refused', () => {
    const round = fileOf('one-router');
    round.note = round;
    expect(readValue(round).ok).toBe(false);
  });

  it('a duct thinner than the roughness of its wall is a problem of its field, not a fault', () => {
    const file = fileOf('one-router');
    file.values[0].text = '1e-10 mm';
    const read = readValue(file);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const solved = solve(read.document);
    expect(solved.ok).toBe(false);
    expect(!solved.ok && solved.problems[0]!.message).toMatch(/diameter.*twice the roughness/);
  });

  it('a filter that wants cleaning every few minutes is told, not followed for ever', () => {
    const file = fileOf('bench-line');
    file.things[1].cut.feed = '400 m/s';
    file.runs[1].route.legs[0].length = '160000 m';
    const read = readValue(file);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const followed = upkeep(read.document, 8);
    expect(followed.ok && followed.result.stopped?.message).toMatch(/cleaned more often/);
    expect(followed.ok && followed.result.solves).toBeLessThan(5000);
  });
});

describe('paper', () => {
  it('fifty thousand kilometres of duct are counted, not cut', () => {
    const file = fileOf('bench-line');
    file.runs[4].route.corners[0].z = '50000000 m';
    const read = readValue(file);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const started = performance.now();
    const list = partsList(read.document);
    const duct = list.rows.find(({ cutting }) => cutting?.bars.length === 0)!;
    expect(duct.buy).toBeGreaterThan(5e7 / duct.cutting!.stock_m);
    expect(list.notes.join(' ')).toMatch(/too long for a plan of cuts/);
    expect(performance.now() - started).toBeLessThan(2000);
  });

  it('a shop drawn far too long and wide is put on paper all the same, at once', () => {
    const file = fileOf('five-machines');
    file.things[2].at.x = '100000000 ft';
    file.runs[6].diameter = '400000000 in';
    const read = readValue(file);
    if (!read.ok) throw new Error(read.problems[0]!.message);
    const started = performance.now();
    const options = { sections: ['plan'], date: '', version: '0', paper: 'a4', units: 'us' } as const;
    expect(summaryHtml(read.document, options).html.length).toBeLessThan(1_000_000);
    expect(performance.now() - started).toBeLessThan(20_000);
  });
});

describe('named values', () => {
  it('a circle of hundreds is told by its first and last names, at once', () => {
    const rows = Array.from({ length: 500 }, (_, i) => ({ name: `n${i}`, text: `n${(i + 1) % 500} * 2` }));
    const { errors } = resolveNamedValues(rows);
    expect(errors).toHaveLength(500);
    expect(Math.max(...errors.map(({ message }) => message.length))).toBeLessThan(300);
    expect(errors[0]!.message).toContain('…');
  });
});

describe('commands', () => {
  it.each([
    { kind: 'place', thing: 'toString', at: { x: 0, y: 0 } },
    { kind: 'place', thing: 'port', at: { x: 0, y: 0 }, preset: 'x'.repeat(10_000) },
    { kind: 'align', ids: ['router', 'fan'], edge: '__proto__' },
    { kind: 'align', ids: ['router', 'fan'], edge: '' },
  ])('%j is refused in words', (command) => {
    const read = readValue(EXAMPLES['one-router']);
    if (!read.ok) throw new Error('not read');
    const result = applyCommand(read.document, command as unknown as Command);
    expect(result.ok).toBe(false);
    expect(!result.ok && result.message.length).toBeLessThan(1100);
  });

  it.each(['settings', 'fans'] as const)('no edit makes more %s than can be opened again', (list) => {
    let shop = blankDocument('si');
    const add = (i: number): Command =>
      list === 'fans' ? { kind: 'addFan' } : { kind: 'addSetting', setting: `s${i}` };
    for (let i = shop[list].length; i < MOST[list]; i++) {
      const result = applyCommand(shop, add(i));
      if (!result.ok) throw new Error(result.message);
      shop = result.document;
    }
    expect(applyCommand(shop, add(9999))).toMatchObject({
      ok: false,
      message: expect.stringContaining(String(MOST[list])) as string,
    });
  });

  it('many things are placed and counted at once, and not one too many', () => {
    const blank = blankDocument('si');
    const first = applyCommand(blank, { kind: 'place', thing: 'joint', at: { x: 0, y: 0 } });
    if (!first.ok) throw new Error(first.message);
    const [joint] = first.document.things;
    const things = Array.from({ length: MOST.things - 1 }, (_, i) => ({ ...joint!, id: `joint-${i + 1}` }));
    const clip = { ...blank, things };
    const full = applyCommand(first.document, { kind: 'paste', clip });
    if (!full.ok) throw new Error(full.message);
    expect(full.document.things).toHaveLength(MOST.things);
    const more = applyCommand(full.document, { kind: 'place', thing: 'joint', at: { x: 0, y: 0 } });
    expect(more).toMatchObject({ ok: false, message: expect.stringContaining('20000') as string });
  });
});

describe('pasted tables', () => {
  it.each([
    ['sqrt('.repeat(40_000), /at most 200000|more than 200 characters/],
    ['1\t2\n'.repeat(501), /501 rows, at most 500/],
    [`${'('.repeat(5000)}\t1`, /more than 200 characters/],
  ])('%# are refused with the limit', (text, says) => {
    const started = performance.now();
    expect(readMakerTable(text, 'si')).toMatchObject({ points: [], problems: [expect.stringMatching(says)] });
    expect(performance.now() - started).toBeLessThan(2000);
  });
});

describe('the worker', () => {
  it.each([undefined, null, 7, 'solve'])('is not brought down by %s', async (message) => {
    const port = await prepareWorker();
    expect(() => port.onmessage!({ data: message })).not.toThrow();
  });
});

describe('the command line', () => {
  const folder = mkdtempSync(join(tmpdir(), 'chipdraft-found-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const shop = (change: (file: Record<string, unknown>) => void, name = 'shop.json') => {
    const file = fileOf('one-router');
    change(file);
    writeFileSync(join(folder, name), JSON.stringify(file));
    return join(folder, name);
  };

  it('gives a terminal no orders, from names or from arguments', () => {
    const path = shop((file) => (file['name'] = `odd ${ESCAPE}\u202e\u009b name`));
    for (const words of [
      ['check', path],
      ['solve', path],
      ['solve', path, '--json'],
      [`a${ESCAPE}`],
      ['check', 'a\r\nb.json'],
      ['check', `${ESCAPE}.json`],
    ]) {
      const { out, err } = runCommand(words);
      expect(out + err).not.toMatch(/[\0-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e]/);
    }
    const { out } = runCommand(['solve', path, '--json']);
    expect((JSON.parse(out) as { document: string }).document).toContain(`${ESCAPE}\u202e\u009b`);
  });

  it.runIf(process.platform !== 'win32')('ends with devices that never end', () => {
    expect(runCommand(['check', '/dev/zero'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('50 MB') as string,
    });
  });

  it('refuses bytes that are no text', () => {
    writeFileSync(join(folder, 'latin.json'), Buffer.from([0x7b, 0xe9, 0xff, 0x7d]));
    expect(runCommand(['check', join(folder, 'latin.json')]).err).toMatch(/UTF-8/);
  });

  it.each(['a b', `it's "quoted"`, 'two\nlines', '木工房 план', 'emoji 🪵🌀', '-dash', 'n'.repeat(245)])(
    'reads from and writes to %j',
    (name) => {
      const path = shop(() => undefined, `${name}.json`.slice(-250));
      const out = join(folder, `${name}.html`);
      const done = runCommand(['summary', path, '--out', out]);
      expect(done).toMatchObject({ code: 0, err: '' });
      expect(statSync(out).size).toBeGreaterThan(1000);
      expect(readdirSync(folder).filter((file) => file.includes('.tmp'))).toEqual([]);
    },
  );

  it.runIf(process.platform !== 'win32')(
    'keeps links and rights of the file that it writes, and leaves protected ones',
    () => {
      const real = join(folder, 'real.html');
      writeFileSync(real, 'old');
      chmodSync(real, 0o640);
      symlinkSync('real.html', join(folder, 'link.html'));
      expect(writeWhole(join(folder, 'link.html'), 'new')).toBeNull();
      expect(lstatSync(join(folder, 'link.html')).isSymbolicLink()).toBe(true);
      expect([readFileSync(real, 'utf8'), statSync(real).mode & 0o777]).toEqual(['new', 0o640]);
      chmodSync(real, 0o440);
      expect(writeWhole(real, 'more')?.err).toMatch(/may not write/);
      expect(readFileSync(real, 'utf8')).toBe('new');
    },
  );

  it('sweeps away what a killed command left, and not what another machine is writing', () => {
    const theirs = temporaryName({ host: '00000000', pid: 1 }, 'a'.repeat(16));
    expect(writeWhole(join(folder, 'own.html'), 'x')).toBeNull();
    writeFileSync(join(folder, theirs), '');
    expect(writeWhole(join(folder, 'own.html'), 'y')).toBeNull();
    expect(readdirSync(folder)).toContain(theirs);
  });
});
