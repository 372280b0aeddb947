import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { RELATIONS } from '../../../core/sources/relations.ts';
import { docCommentOf, labelTexts } from '../../rules/doc-comment.ts';
import { ROOT } from '../../rules/project-files.ts';

/** Labels of `@remarks` of an exported function. */
function labelsOf(file: string, fn: string): Map<string, string> {
  const path = join(ROOT, 'core', file);
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const found = source.statements.find(
    (node): node is ts.FunctionDeclaration =>
      ts.isFunctionDeclaration(node) &&
      node.name?.text === fn &&
      ts.getCombinedModifierFlags(node) === ts.ModifierFlags.Export,
  );
  const doc = found && docCommentOf(found);
  if (!doc) throw new Error(`core/${file} exports no function ${fn} with a doc comment`);
  return labelTexts(doc);
}

describe('the table of relations', () => {
  it.each(Object.entries(RELATIONS))('%s says what the doc comment says', (_id, relation) => {
    const labels = labelsOf(relation.file, relation.fn);
    expect(labels.get('Basis')!.startsWith(relation.basis)).toBe(true);
    // names and years of the source are those of the comment; what it says of the program's own tables is left out
    const own = labels.get('Source')!;
    const names = relation.source.match(/\p{Lu}\p{L}{3,}|\b(1[89]|20)\d\d\b/gu) ?? [];
    expect(names.filter((name) => !own.includes(name))).toEqual([]);
    const cited = own.match(/\b(1[89]|20)\d\d\b/g) ?? [];
    expect(cited.filter((year) => !relation.source.includes(year))).toEqual([]);
  });

  it('speaks to people, not of names in the program', () => {
    for (const { what, source } of Object.values(RELATIONS)) {
      expect(`${what} ${source}`).not.toMatch(/`|[A-Z]+_[A-Z]+|\b[a-z]+[A-Z][a-z]/);
    }
  });
});
