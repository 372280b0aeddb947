import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './project-files.ts';
import { documentsOf, isExcerpt, play, shownIn } from './readme-session.ts';

const read = (name: string) => readFileSync(join(ROOT, name), 'utf8');

describe('the session rule itself', () => {
  const real = ['a', 'b', 'c', 'd', 'e'];

  it.each([
    ['the whole', ['a', 'b', 'c', 'd', 'e']],
    ['a gap in the middle', ['a', '...', 'd', 'e']],
    ['gaps at either end', ['...', 'b', 'c', '...']],
    ['two stretches', ['...', 'b', '...', 'd', '...']],
    ['a gap that leaves nothing out', ['a', 'b', '...', 'c', 'd', 'e']],
    ['only a gap', ['...']],
  ])('accepts %s', (_, shown) => expect(isExcerpt(shown, real)).toBe(true));

  it.each([
    ['a changed line', ['a', 'b', 'x', 'd', 'e']],
    ['an end that is left out without a gap', ['a', 'b', 'c']],
    ['a start that is left out without a gap', ['b', 'c', 'd', 'e']],
    ['a line that is left out within a stretch', ['...', 'b', 'd', '...']],
    ['the wrong order', ['...', 'd', '...', 'b', '...']],
    ['a line more', ['a', 'b', 'c', 'd', 'e', 'f']],
    ['nothing', []],
    ['a line twice', ['...', 'b', '...', 'b', '...']],
  ])('refuses %s', (_, shown) => expect(isExcerpt(shown, real)).toBe(false));

  it('finds documents, commands and what they print, and says so where one is not what it was', () => {
    const page = [
      'Save this as `made-up.json`:\n',
      '```json\n{ "format": "chipdraft-shop" }\n```\n',
      "```console\n$ sed 's/chip/clip/' made-up.json > worse.json\n$ npm run -s book -- check worse.json",
      'worse.json:\n...\n$ echo $?\n2\n$ rm -rf made-up.json\n```',
    ].join('\n');
    expect([...documentsOf(page).keys()]).toEqual(['made-up.json']);
    expect(shownIn(page).map(({ printed }) => printed.length)).toEqual([0, 2, 1, 0]);
    const played = play(page);
    expect(played.map(({ shown, real: now }) => now && isExcerpt(shown.printed, now))).toEqual([
      true,
      true,
      true,
      null,
    ]);
    expect(played[1]!.real!.join('\n')).toContain('clipdraft-shop');
  });
});

describe('README.md', () => {
  const page = read('README.md');
  const played = play(page);

  it('shows a session', () => {
    expect(played.length).toBeGreaterThanOrEqual(5);
    expect(documentsOf(page).size).toBeGreaterThanOrEqual(2);
  });

  it.each(played.map(({ shown, real }) => [`line ${shown.at}: ${shown.command}`, shown, real] as const))(
    'prints what it shows, %s',
    (_, shown, real) => {
      expect(real, 'this command is not known to the test').not.toBeNull();
      const now = real!.join('\n');
      expect(isExcerpt(shown.printed, real!), `the program now prints:\n${now}`).toBe(true);
    },
  );
});

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  const page = read(name);

  it('names only scripts that there are', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const named = [...page.matchAll(/npm run (?:-s )?([\w-]+)/g)].map((match) => match[1]!);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((script) => !Object.hasOwn(scripts, script))).toEqual([]);
  });

  it('names only files and folders that there are', () => {
    const named = [...page.matchAll(/(?:`|\]\()((?:core|electron|renderer|test|build)\/[\w./-]*)[`)]/g)];
    expect(named.length).toBeGreaterThan(5);
    expect(named.map((match) => match[1]!).filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });
});
