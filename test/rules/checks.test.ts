import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { declarationsIn, pageMisses, uncheckedRelations, unknownRelations } from './check-rules.ts';
import { NOT_YET } from './not-yet.ts';
import { ROOT, readFiles } from './project-files.ts';
import { coreFiles, needsCheck, relationsIn } from './relations.ts';

const relation = (name: string, source: string) =>
  `/**\n * Made up.\n *\n * @remarks\n * Source: ${source}.\n */\nexport function ${name}(): number {\n  return 1;\n}\n`;
const declared = (relations: string, more = '') =>
  `against({ relation: ${relations}, source: 'a ' + 'book', basis: 'published', kind: 'limit'${more} });`;
const inTest = (text: string) => declarationsIn(new Map([['test/reference/made.test.ts', text]]));

describe('the rule of checks itself', () => {
  const made = relationsIn(
    new Map([
      ['core/air/made.ts', relation('wind', 'a book') + relation('area', 'none, geometry')],
      ['core/duct/made.ts', `${relation('drag', 'a book')}export const lift = () => 2;\nfunction own() {}\n`],
      ['core/upkeep/made.ts', `${relation('march', 'a book')}export class Clock {}\n`],
    ]),
  );
  const misses = (text: string, notYet: string[] = []) =>
    uncheckedRelations(made, inTest(text).declarations, notYet);
  const rest = declared("['drag', 'lift', 'core/upkeep/made.ts#march']");

  it('sees what is exported, and wants a check where a source is named or none is denied', () => {
    expect(made.map(({ name }) => name)).toEqual(['wind', 'area', 'drag', 'lift', 'march', 'Clock']);
    expect(made.filter(needsCheck).map(({ name }) => name)).toEqual(['wind', 'drag', 'lift', 'march']);
  });

  it('fails for a relation without a check', () => {
    expect(misses(rest)).toEqual(['core/air/made.ts#wind has no check in test/reference']);
    expect(misses(rest + declared("'wind'"))).toEqual([]);
    expect(misses(`describe('x', () => { ${declared("'wind'")} });${rest}`)).toEqual([]);
    expect(misses(`// ${declared("'wind'")}\n${rest}`)).toHaveLength(1);
  });

  it('lets one wait only while it has no check', () => {
    expect(misses(rest, ['wind'])).toEqual([]);
    expect(misses(rest + declared("'wind'"), ['wind'])).toEqual(['wind has a check: take it off the list']);
    expect(misses(rest + declared("'wind'"), ['area'])).toEqual(['area waits for no check']);
  });

  it('reads no declaration that is made up while running', () => {
    expect(inTest(declared('name')).misses).toHaveLength(1);
    expect(inTest(declared('`${x}wind`')).misses).toHaveLength(1);
    expect(inTest(declared("'wind'", ', ...more')).misses).toHaveLength(1);
    expect(inTest(`it('x', () => { ${declared("'wind'")} });`).misses).toHaveLength(1);
    expect(inTest(`for (const x of y) ${declared("'wind'")}`).misses).toHaveLength(1);
    expect(inTest(`describe.each([1])('x', () => { ${declared("'wind'")} });`).misses).toHaveLength(1);
    expect(inTest(declared("'wind'")).misses).toEqual([]);
  });

  it('knows what no relation is', () => {
    const unknown = (name: string) => unknownRelations(made, inTest(declared(`'${name}'`)).declarations);
    for (const name of ['wind', 'core/air/made.ts#wind', 'core/upkeep/made.ts#Clock'])
      expect(unknown(name)).toEqual([]);
    for (const name of ['gust', 'core/duct/made.ts#wind', 'march', 'own'])
      expect(unknown(name)).toHaveLength(1);
  });

  it('compares the page with what is declared', () => {
    const { declarations } = inTest(declared("'wind'"));
    const line = (test: string) =>
      `| Made up: \`wind\` | limit: a book | holds: x |  | published | ${test} |`;
    expect(pageMisses(line('made'), declarations)).toEqual([]);
    expect(pageMisses('', declarations)).toEqual(['not on the page: wind, limit: a book, made']);
    expect(pageMisses(`${line('made')}\n${line('gone')}`, declarations)).toHaveLength(1);
    expect(pageMisses(line('made'), [...declarations, ...declarations])).toHaveLength(1);
  });
});

describe('the project', () => {
  const relations = relationsIn(coreFiles());
  const { declarations, misses } = declarationsIn(
    readFiles((path) => /^test\/reference\/[^/]*\.test\.ts$/.test(path)),
  );

  it('is seen', () => {
    expect(relations.filter(needsCheck).length).toBeGreaterThan(150);
    expect(declarations.length).toBeGreaterThan(20);
  });

  it('declares its checks so that they can be read', () => {
    expect(misses).toEqual([]);
    expect(unknownRelations(relations, declarations)).toEqual([]);
  });

  it('has no relation without a check', () => {
    expect(uncheckedRelations(relations, declarations, Object.values(NOT_YET).flat())).toEqual([]);
  });

  it('lists all checks on their page: else `npm run checks`', () => {
    const page = readFileSync(join(ROOT, 'test/reference/README.md'), 'utf8');
    expect(pageMisses(page, declarations)).toEqual([]);
  });
});
