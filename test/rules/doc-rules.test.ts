import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { docMisses, exportedFunctions } from './doc-rules.ts';
import { agrees, exampleCode, exampleMisses } from './example-rules.ts';

const OPTIONS: ts.CompilerOptions = {
  strict: true,
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  lib: ['lib.es2023.d.ts'],
  types: [],
  noEmit: true,
};
const PATH = '/made/core/air/thing.ts';

/** A program of one made-up file. */
function compile(text: string): { program: ts.Program; source: ts.SourceFile } {
  const host = ts.createCompilerHost(OPTIONS);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (name) => name === PATH || fileExists.call(host, name);
  host.getSourceFile = (name, ...rest) =>
    name === PATH
      ? ts.createSourceFile(name, text, ts.ScriptTarget.ES2023, true)
      : getSourceFile.call(host, name, ...rest);
  const program = ts.createProgram([PATH], OPTIONS, host);
  return { program, source: program.getSourceFile(PATH)! };
}

const REMARKS = [
  'Range: any.',
  'Outside: none: it holds everywhere.',
  'Leaves out: friction.',
  'Limits: zero gives zero.',
  'Basis: from-memory (page not seen).',
  'Source: somebody, 1990.',
  'Checked: test/reference/thing.test.ts.',
];
const PARAMS = ['@param length_m - length [m]', '@param factor - factor [-]'];

interface Made {
  params?: string[];
  remarks?: string[];
  returns?: string;
  throws?: string;
  code?: string;
  before?: string;
}

/** A function that keeps the template, with parts replaced. */
function made({
  params = PARAMS,
  remarks = REMARKS,
  returns = '@returns area [m2]',
  ...rest
}: Made = {}): string {
  const lines = ['Area of a thing.', '', ...params, returns, rest.throws ?? '', '', '@remarks', ...remarks];
  const code =
    rest.code ??
    'export function area(length_m: number, factor: number): number { return length_m * factor; }';
  return `${rest.before ?? ''}\n/**\n${lines.map((line) => ` * ${line}`).join('\n')}\n */\n${code}\n`;
}

const FILES = new Map([
  ['test/reference/thing.test.ts', 'area(1, 2)'],
  ['test/reference/other.test.ts', 'something else'],
]);
const missesOf = (text: string) => {
  const { program, source } = compile(text);
  return docMisses(program, source, (path) => FILES.get(path));
};
const without = (label: string) => REMARKS.filter((line) => !line.startsWith(label));
const INPUT = 'export function area(input: Input): number { return input.length_m; }';

describe('the doc rule itself', () => {
  it('accepts a function that keeps the template', () => {
    expect(missesOf(made())).toEqual([]);
  });

  const refused: [string, string, string][] = [
    ['no doc comment', 'export function area(x: number): number { return x; }', 'no doc comment'],
    ['no doc comment on an arrow', 'export const area = (x: number) => x;', 'no doc comment'],
    [
      'no doc comment, exported by name',
      'function area(x: number) { return x; }\nexport { area };',
      'no doc comment',
    ],
    ['no unit', made({ params: ['@param length_m - length', PARAMS[1]!] }), 'length_m has no [unit]'],
    [
      'no unit on a bare name',
      made({ params: [PARAMS[0]!, '@param factor - factor'] }),
      'factor has no [unit]',
    ],
    ['unit against suffix', made({ params: ['@param length_m - length [mm]', PARAMS[1]!] }), 'not [m]'],
    ['no @param', made({ params: [PARAMS[0]!] }), 'factor has no @param'],
    ['no @returns', made({ returns: '' }), 'no @returns'],
    [
      'throws without @throws',
      made({
        code: `export function area(length_m: number, factor: number): number { if (factor < 0) throw new Error('x'); return length_m; }`,
      }),
      'no @throws',
    ],
    [
      'an unknown suffix',
      made({
        params: ['@param length_xyz - length [m]', PARAMS[1]!],
        code: 'export const area = (length_xyz: number, factor: number) => length_xyz * factor;',
      }),
      'no known unit',
    ],
    [
      'number or null without unit',
      made({
        params: ['@param length_m - length', PARAMS[1]!],
        code: 'export const area = (length_m: number | null, factor?: number) => [length_m, factor];',
      }),
      'length_m has no [unit]',
    ],
    [
      'list of numbers without unit',
      made({
        params: ['@param length_m - lengths', PARAMS[1]!],
        code: 'export const area = (length_m: readonly number[], factor: number) => [length_m, factor];',
      }),
      'length_m has no [unit]',
    ],
    [
      'field without unit',
      made({
        params: ['@param input - what'],
        before: 'interface Input { /** Length. */ readonly length_m: number }',
        code: INPUT,
      }),
      'input.length_m has no [unit]',
    ],
    [
      'field against suffix',
      made({
        params: ['@param input - what'],
        before: 'interface Input { /** Length [Pa]. */ readonly length_m: number }',
        code: INPUT,
      }),
      'not [m]',
    ],
    [
      'inline field without unit',
      made({
        params: ['@param input - what'],
        code: 'export function area(input: { length_m: number }): number { return input.length_m; }',
      }),
      'input.length_m has no [unit]',
    ],
    [
      'nested field without unit',
      made({
        params: ['@param input - what'],
        before:
          'interface P { x: number }\ninterface Input { readonly points: readonly P[]; /** [m] */ length_m: number }',
        code: INPUT,
      }),
      'input.points[].x has no [unit]',
    ],
    [
      'Checked names no such file',
      made({ remarks: [...without('Checked'), 'Checked: test/reference/gone.test.ts.'] }),
      'does not exist',
    ],
    [
      'Checked names no file',
      made({ remarks: [...without('Checked'), 'Checked: by eye.'] }),
      'names no test file',
    ],
    [
      'Checked file is about something else',
      made({ remarks: [...without('Checked'), 'Checked: test/reference/other.test.ts.'] }),
      'ever mentions area',
    ],
    ['unknown basis', made({ remarks: [...without('Basis'), 'Basis: sure.'] }), 'known words'],
    ['none without why', made({ remarks: [...without('Limits'), 'Limits: none.'] }), 'does not say why'],
    ['empty label', made({ remarks: [...without('Limits'), 'Limits:'] }), 'is empty'],
  ];
  it.each(refused)('refuses %s', (_, text, says) => {
    expect(missesOf(text).join('\n')).toContain(says);
  });

  it.each(REMARKS.map((line) => line.split(':')[0]!))('refuses remarks without %s', (label) => {
    expect(missesOf(made({ remarks: without(label) }))).toEqual([`area: @remarks has no "${label}:"`]);
  });

  const accepted: [string, Made][] = [
    [
      'units in the interface',
      { before: 'interface Input { /** Length [m]. */ readonly length_m: number }' },
    ],
    [
      'units in the @param text',
      {
        params: ['@param input - `length_m`, inside [m]'],
        before: 'interface Input { readonly length_m: number }',
      },
    ],
    [
      'units in a dotted @param',
      {
        params: ['@param input - what', '@param input.length_m - [m]'],
        before: 'interface Input { readonly length_m: number }',
      },
    ],
  ];
  it.each(accepted)('accepts %s', (_, parts) => {
    expect(missesOf(made({ params: ['@param input - what'], code: INPUT, ...parts }))).toEqual([]);
  });

  it('looks at exports only, and at functions only', () => {
    const { program, source } = compile('function a() {}\nexport const B = 2;\nexport function c() { a(); }');
    expect(exportedFunctions(program, source).map(({ name }) => name)).toEqual(['c']);
  });
});

describe('the example rule itself', () => {
  const scope = { third: (x: number) => x / 3, word: () => 'margin' };

  it('compares to the digits shown, no more', () => {
    expect(agrees(1 / 3, '0.33')).toBe(true);
    expect(agrees(1 / 3, '0.34')).toBe(false);
    expect(agrees(1 / 3, '0.3334')).toBe(false);
    expect(agrees(1.8134e-5, '1.81e-5')).toBe(true);
    expect(agrees(1.8134e-5, '1.82e-5')).toBe(false);
    expect(agrees(12.4, '12')).toBe(true);
    expect(agrees(NaN, '0')).toBe(false);
    expect(agrees('0.33', '0.33')).toBe(false);
    expect(agrees(true, 'true')).toBe(true);
    expect(agrees('true', 'true')).toBe(false);
  });

  it('runs statements in order and reports what differs', () => {
    expect(exampleMisses("const x = third(2);\nx; // 0.6667\nword(); // 'margin'\n", scope)).toEqual([]);
    expect(exampleMisses('third(1); // 0.34', scope)).toHaveLength(1);
    expect(exampleMisses("third(1); // 0.33 [-]\nword(); // 'beyond'", scope)).toHaveLength(1);
    expect(exampleMisses('third(1) as number; // 0.333, a third', scope)).toEqual([]);
  });

  it('refuses an example that shows nothing or stops', () => {
    expect(exampleMisses('third(1);', scope)).toHaveLength(1);
    expect(exampleMisses('third(1); // about a third', scope)).toHaveLength(1);
    expect(exampleMisses('missing(1); // 3', scope).join('')).toContain('missing is not defined');
  });

  it('takes the code out of the fences', () => {
    const text = '```ts\nthird(1); // 0.33\n```';
    expect(exampleCode({ summary: '', tags: [{ tag: 'example', text }] })).toEqual(['third(1); // 0.33\n']);
  });
});
