import ts from 'typescript';
import { docCommentOf, labelTexts, type DocComment } from './doc-comment.ts';
import { PHYSICS } from './import-rules.ts';
import { readFiles, type FileSet } from './project-files.ts';

/** A function or class that core exports, and its doc comment. */
export interface Relation {
  readonly path: string;
  readonly name: string;
  readonly doc: DocComment | null;
}

/** Files in which relations stand: physics, and what is reckoned with it. */
export function coreFiles(): FileSet {
  return readFiles((path) => path.startsWith('core/') && path.endsWith('.ts'));
}

/** Functions and classes that the files declare and export. Read file by file, without their types. */
export function relationsIn(files: FileSet): Relation[] {
  const found: Relation[] = [];
  for (const [path, text] of files) {
    const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
    const listed = new Set(source.statements.flatMap(namesInExportList));
    const seen = new Set<string>();
    const add = (name: string, node: ts.Statement) => {
      const exported = listed.has(name) || hasExport(node);
      if (exported && !seen.has(name)) found.push({ path, name, doc: docCommentOf(node) });
      if (exported) seen.add(name); // overloads: the first has the comment
    };
    for (const node of source.statements) {
      if (ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node)) {
        if (node.name) add(node.name.text, node);
      } else if (ts.isVariableStatement(node)) {
        for (const { name, initializer } of node.declarationList.declarations) {
          if (!ts.isIdentifier(name) || !initializer) continue;
          if (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer)) add(name.text, node);
        }
      }
    }
  }
  return found;
}

const hasExport = (node: ts.Statement) =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false);

function namesInExportList(node: ts.Statement): string[] {
  if (!ts.isExportDeclaration(node) || node.moduleSpecifier || !node.exportClause) return [];
  if (!ts.isNamedExports(node.exportClause)) return [];
  return node.exportClause.elements.map(({ name, propertyName }) => (propertyName ?? name).text);
}

/** Whether a relation claims something about the world: it names a source. Outside physics only such with the label. */
export function needsCheck({ path, doc }: Relation): boolean {
  const source = doc && labelTexts(doc).get('Source');
  if (isPhysics(path)) return !source?.startsWith('none');
  return Boolean(source) && !source!.startsWith('none');
}

/** Whether a file lies in one of the physics folders. */
export const isPhysics = (path: string) => PHYSICS.some((folder) => path.startsWith(`core/${folder}/`));

/** The relation that a declaration names; a bare name is looked for in physics only. Null if none or several. */
export function findRelation(relations: readonly Relation[], said: string): Relation | null {
  const [path, name] = said.includes('#') ? said.split('#') : [null, said];
  const fit = relations.filter(
    (relation) =>
      relation.name === name && (path === null ? isPhysics(relation.path) : relation.path === path),
  );
  return fit.length === 1 ? fit[0]! : null;
}
