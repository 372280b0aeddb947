import { describe, expect, it } from 'vitest';
import type { DocumentProblem } from '../../../core/document/problem.ts';
import { LONGEST_DOCUMENT, readDocument, readValue } from '../../../core/document/read.ts';
import { solve } from '../../../core/network/solve.ts';
import { BAD_FIELDS } from './bad-fields.ts';
import type { Change } from './bad-fields.ts';
import { fileOf, problemsOf, typedFile } from './samples.ts';

/** Words of a schema library or of a machine, which no message may hold. */
const JARGON =
  /zod|invalid input|expected|received|discriminator|unrecognized|undefined|NaN|regex|Too (big|small)|invalid_|\[object|_m\b|_rad\b|_Pa\b/i;

function readable(problems: readonly DocumentProblem[]): void {
  expect(problems.length).toBeGreaterThan(0);
  for (const { message, remedy } of problems) {
    expect(message).not.toMatch(JARGON);
    expect(message.length).toBeGreaterThan(10);
    expect(message.length).toBeLessThan(600);
    expect(remedy.length).toBeGreaterThan(4);
  }
}

describe('a bad field', () => {
  it.each(BAD_FIELDS)('%s', (_name, change, path, ...words) => {
    const file = typedFile();
    change(file);
    const problems = problemsOf(file);
    readable(problems);
    const found = problems.find((problem) => problem.path === path);
    expect(found, JSON.stringify(problems)).toBeDefined();
    // the place is named in words too
    if (path !== '') expect(found!.message).toContain(path);
    for (const word of words) expect(found!.message).toMatch(word);
  });

  it('is found in a run that is drawn too', () => {
    const file = fileOf('one-router');
    expect(problemsOf(file)).toEqual([]);
    file.runs[0].route.legs[0].length = -1;
    file.runs[0].route.corners[1].z = '4 kg';
    expect(problemsOf(file).map(({ path }) => path)).toEqual([
      'runs[0](R1).route.corners[1].z',
      'runs[0](R1).route.legs[0].length',
    ]);
    // the shape of a file is looked at before its quantities
    file.runs[2].pieces[0].along.at = 2;
    expect(problemsOf(file).map(({ path }) => path)).toEqual(['runs[2](R3).pieces[0].along.at']);
    const bare = fileOf('one-router');
    delete bare.runs[1].material;
    expect(problemsOf(bare).map(({ path }) => path)).toContain('runs[1](R2).route.legs[0].material');
  });

  it('is reported with every other', () => {
    const file = fileOf('one-router');
    file.runs[0].diameter = '4 kg';
    file.things[1].bodyDiameter = -1;
    file.values[0].text = 'reach + 1 kg';
    const paths = problemsOf(file).map((problem) => problem.path);
    expect(paths).toEqual(
      expect.arrayContaining(['values[0]', 'runs[0](R1).diameter', 'things[1](cyclone).bodyDiameter']),
    );
  });
});

describe('named values', () => {
  it('that lean on each other in a circle name the way round', () => {
    const file = fileOf('one-router');
    file.values = [
      { name: 'bore', text: 'reach' },
      { name: 'reach', text: 'bore' },
    ];
    const problems = problemsOf(file);
    readable(problems);
    expect(problems.slice(0, 2).map((p) => p.path)).toEqual(['values[0]', 'values[1]']);
    expect(problems[0]!.message).toMatch(/bore.*circle/);
  });
});

describe('junctions', () => {
  const withWye = (change: Change) => {
    const file = fileOf('five-machines');
    change(file);
    return problemsOf(file);
  };
  const W1 = (file: ReturnType<typeof fileOf>) => file.things.findIndex((t: { id: string }) => t.id === 'W1');
  const at = `things[${W1(fileOf('five-machines'))}](W1)`;

  it('want every leg', () => {
    const problems = withWye((d) => d.runs.splice(1, 1));
    readable(problems);
    expect(problems.find((p) => p.path === at)!.message).toContain('W1.branch');
  });

  it('want every leg once', () => {
    const problems = withWye((d) => (d.runs[1].to = 'W1.main'));
    readable(problems);
    const messages = problems.filter((p) => p.path === at).map((p) => p.message);
    expect(messages.some((m) => /2 runs.*W1\.main/.test(m))).toBe(true);
  });

  it('have no other ends', () => {
    const problems = withWye((d) => (d.runs[1].to = 'W1.left'));
    expect(problems.find((p) => p.path === 'runs[1](R2).to')!.message).toMatch(/W1\.branch/);
  });
});

describe('a bad file', () => {
  const whole = JSON.stringify(fileOf('one-router'));
  const texts: [string, string, RegExp][] = [
    ['empty', '', /empty/],
    ['blank', ' \n\t', /empty/],
    ['cut short', whole.slice(0, whole.length / 2), /not whole/],
    ['not JSON', 'shop: one router', /not whole/],
    ['binary', '\u0000\u0001\ufffd', /not whole/],
    ['a list', '[]', /no shop document/],
    ['nothing', 'null', /no shop document/],
    ['a number', '42', /no shop document/],
    ['too long', ' '.repeat(LONGEST_DOCUMENT + 1), /million characters/],
    ['nested a million deep', '['.repeat(1e6) + ']'.repeat(1e6), /./],
  ];

  it.each(texts)('that is %s is refused as a whole', (_name, text, word) => {
    const read = readDocument(text);
    if (read.ok) throw new Error('it was read');
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]!.path).toBe('');
    expect(read.problems[0]!.message).toMatch(word);
    expect(read.problems[0]!.remedy).not.toBe('');
  });

  it('nested deep inside a field does not throw', () => {
    for (const field of ['"things"', '"air"', '"extra"', '"name"']) {
      const deep = '{"a":'.repeat(2e5) + '1' + '}'.repeat(2e5);
      const read = readDocument(`{"format":"chipdraft-shop","version":1,${field}:${deep}}`);
      expect(read.ok).toBe(false);
    }
  });

  it('with the mark that some editors write first is read', () => {
    expect(readDocument(`\ufeff${whole}`).ok).toBe(true);
  });

  it('leaves the prototype of objects alone', () => {
    const text = whole.replace(
      '"format"',
      '"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"format"',
    );
    const read = readDocument(text);
    expect(read.ok).toBe(false);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('a good file', () => {
  it('takes numbers, texts and both for one quantity', () => {
    for (const diameter of [0.1, '100 mm', 'bore', { text: '100 mm', si: 7 }, { text: null, si: 0.1 }]) {
      const file = fileOf('one-router');
      file.runs[0].diameter = diameter;
      const read = readValue(file);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      // the text decides where the two differ
      expect(read.document.runs[0]!.diameter!.si).toBe(0.1);
    }
  });

  it('keeps names of people and places in any script', () => {
    const file = fileOf('one-router');
    file.name = 'Ткацкая 5 — 工房 🛶';
    file.things[0].name = 'Oberfräse';
    const read = readValue(file);
    expect(read.ok && read.document.name).toBe(file.name);
  });

  it('may call its gates by words of the program', () => {
    const file = fileOf('one-router');
    const names = ['dimension', 'rule', 'si', 'constructor', 'toString'];
    for (const name of names) file.runs[0].pieces.push({ kind: 'gate', id: name });
    file.settings[0].gates = Object.fromEntries(names.slice(0, 3).map((name) => [name, '50 %']));
    const read = readValue(file);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.document.settings[0]!.gates.si!.si).toBe(0.5);
    expect(solve(read.document).ok).toBe(true);
  });

  it('may give a dust rate or a cut without saying which dust', () => {
    const file = fileOf('one-router');
    delete file.things[0].dust;
    expect(problemsOf(file)).toEqual([]);
  });

  it('may use a dust of its own', () => {
    const file = fileOf('bench-line');
    expect(problemsOf(file)).toEqual([]);
    file.dusts = [];
    expect(problemsOf(file).map((p) => p.path)).toEqual(['things[1](rotary).dust']);
  });
});
