import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { docMisses, exportedFunctions } from './doc-rules.ts';
import { exampleCode, exampleMisses } from './example-rules.ts';
import { PHYSICS } from './import-rules.ts';
import { ROOT, projectFiles } from './project-files.ts';

const isPhysics = (path: string) =>
  PHYSICS.some((folder) => path.startsWith(`core/${folder}/`)) && path.endsWith('.ts');
const PHYSICS_FILES = projectFiles('core').filter(isPhysics);

/** Modules whose exports an example may use without importing them: physics, units and catalogue. */
const EXAMPLE_FILES = projectFiles('core').filter(
  (path) => isPhysics(path) || (/^core\/(quantities|catalogue)\//.test(path) && path.endsWith('.ts')),
);

const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile(join(ROOT, 'tsconfig.json'), ts.sys.readFile).config,
  ts.sys,
  ROOT,
);

describe('the doc comments of the physics folders', () => {
  let program: ts.Program;
  const modules = new Map<string, Record<string, unknown>>();
  const broken = new Map<string, string>();

  beforeAll(async () => {
    program = ts.createProgram(
      PHYSICS_FILES.map((path) => join(ROOT, path)),
      options,
    );
    for (const path of EXAMPLE_FILES) {
      try {
        modules.set(path, (await import(/* @vite-ignore */ join(ROOT, path))) as Record<string, unknown>);
      } catch (error) {
        broken.set(path, String(error));
      }
    }
  }, 60_000);

  const functionsOf = (path: string) => exportedFunctions(program, program.getSourceFile(join(ROOT, path))!);
  const readText = (path: string) =>
    existsSync(join(ROOT, path)) ? readFileSync(join(ROOT, path), 'utf8') : undefined;

  it('are seen', () => {
    expect(PHYSICS_FILES.length).toBeGreaterThan(5);
    expect(PHYSICS_FILES.flatMap(functionsOf).length).toBeGreaterThan(20);
    expect(functionsOf('core/fan/air-power.ts').map(({ name }) => name)).toEqual([
      'airPower',
      'fanEfficiency',
    ]);
  });

  it.each(PHYSICS_FILES)('%s says what it must', (path) => {
    expect(docMisses(program, program.getSourceFile(join(ROOT, path))!, readText)).toEqual([]);
  });

  it.each(PHYSICS_FILES)('%s shows the digits that it gives', (path) => {
    expect(broken.get(path)).toBeUndefined();
    const scope = Object.assign({}, ...modules.values(), modules.get(path)) as Record<string, unknown>;
    const misses = functionsOf(path).flatMap(({ name, doc }) => {
      const examples = doc === null ? [] : exampleCode(doc);
      if (examples.length === 0) return [`${name}: has no example`];
      return examples.flatMap((code) => exampleMisses(code, scope)).map((miss) => `${name}: ${miss}`);
    });
    expect(misses).toEqual([]);
  });
});
