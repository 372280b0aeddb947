import ts from 'typescript';
import type { CheckKind } from '../reference/ledger/check.ts';
import { againstText, bareName, keyOf, rowsOnPage } from '../reference/ledger/rows.ts';
import type { FileSet } from './project-files.ts';
import { findRelation, needsCheck, type Relation } from './relations.ts';

/** A call of `against`, as it is written. */
export interface Declaration {
  readonly path: string;
  readonly relations: readonly string[];
  readonly source: string;
  readonly basis: string;
  readonly kind: string;
}

/** The declarations in test files, and what cannot be read without running, one line each. */
export function declarationsIn(files: FileSet): { declarations: Declaration[]; misses: string[] } {
  const declarations: Declaration[] = [];
  const misses: string[] = [];
  for (const [path, text] of files) {
    const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
    const visit = (node: ts.Node): void => {
      if (
        ts.isCallExpression(node) &&
        ts.isIdentifier(node.expression) &&
        node.expression.text === 'against'
      ) {
        const at = `${path}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
        const read = declarationOf(path, node);
        if (!read) misses.push(`${at}: against() wants one object of literal texts`);
        else if (!standsOpen(node)) misses.push(`${at}: against() stands inside a function or a loop`);
        else declarations.push(read);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { declarations, misses };
}

function declarationOf(path: string, call: ts.CallExpression): Declaration | null {
  const [claim] = call.arguments;
  if (!claim || !ts.isObjectLiteralExpression(claim)) return null;
  const texts = new Map<string, readonly string[]>();
  for (const property of claim.properties) {
    if (!ts.isPropertyAssignment(property) || !ts.isIdentifier(property.name)) return null;
    const { initializer } = property;
    const parts = ts.isArrayLiteralExpression(initializer) ? [...initializer.elements] : [initializer];
    const read = parts.map(literalText);
    if (read.includes(null)) return null;
    texts.set(property.name.text, read as string[]);
  }
  const [source, basis, kind] = ['source', 'basis', 'kind'].map((name) => texts.get(name)?.[0]);
  const relations = texts.get('relation') ?? [];
  if (!source || !basis || !kind || relations.length === 0) return null;
  return { path, relations, source, basis, kind };
}

function literalText(node: ts.Expression): string | null {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (!ts.isBinaryExpression(node) || node.operatorToken.kind !== ts.SyntaxKind.PlusToken) return null;
  const [left, right] = [literalText(node.left), literalText(node.right)];
  return left === null || right === null ? null : left + right;
}

/** Whether nothing is around a call but declarations and the functions of `describe`. */
function standsOpen(call: ts.Node): boolean {
  for (let node = call.parent; node; node = node.parent) {
    if (ts.isIterationStatement(node, false) || ts.isIfStatement(node)) return false;
    if (ts.isFunctionLike(node) && !isDescribed(node)) return false;
  }
  return true;
}

const isDescribed = (node: ts.Node) =>
  ts.isCallExpression(node.parent) &&
  ts.isIdentifier(node.parent.expression) &&
  node.parent.expression.text === 'describe';

/** Declarations of what core does not export, one line each. */
export function unknownRelations(
  relations: readonly Relation[],
  declarations: readonly Declaration[],
): string[] {
  return declarations.flatMap(({ path, relations: said }) =>
    said
      .filter((name) => !findRelation(relations, name))
      .map((name) => `${path}: ${name} is no exported function of physics, or several; else name its file`),
  );
}

/** Relations that claim something and that nothing checks; and those listed as waiting that are checked. */
export function uncheckedRelations(
  relations: readonly Relation[],
  declarations: readonly Declaration[],
  notYet: readonly string[],
): string[] {
  const said = declarations.flatMap((declaration) => declaration.relations);
  const checked = new Set(said.map((name) => findRelation(relations, name)));
  const waiting = new Set(notYet.map((name) => findRelation(relations, name)));
  return [
    ...relations
      .filter((relation) => needsCheck(relation) && !checked.has(relation) && !waiting.has(relation))
      .map(({ path, name }) => `${path}#${name} has no check in test/reference`),
    ...notYet.flatMap((name) => {
      const relation = findRelation(relations, name);
      if (!relation || !needsCheck(relation)) return [`${name} waits for no check`];
      return checked.has(relation) ? [`${name} has a check: take it off the list`] : [];
    }),
  ];
}

/** Where the page lists other checks than the files declare, one line each. */
export function pageMisses(page: string, declarations: readonly Declaration[]): string[] {
  const declared = declarations.flatMap(({ path, relations, kind, source }) =>
    relations.map((name) =>
      keyOf({
        relation: bareName(name),
        against: againstText(kind as CheckKind, source),
        test: path.replace(/^.*\//, '').replace(/\.test\.ts$/, ''),
      }),
    ),
  );
  const printed = rowsOnPage(page).map(keyOf);
  return [
    ...declared.filter((key) => !printed.includes(key)).map((key) => `not on the page: ${key}`),
    ...printed.filter((key) => !declared.includes(key)).map((key) => `on the page only: ${key}`),
    ...declared.filter((key, i) => declared.indexOf(key) !== i).map((key) => `declared twice: ${key}`),
  ];
}
