import ts from 'typescript';
import {
  LABELS,
  docCommentOf,
  labelTexts,
  paramTexts,
  textsOf,
  unitMiss,
  type DocComment,
} from './doc-comment.ts';

/** An exported function and its doc comment. */
export interface ExportedFunction {
  readonly name: string;
  readonly node: ts.SignatureDeclaration;
  readonly doc: DocComment | null;
}

/** How the rule asks for other files of the project: the text, or undefined if there is no such file. */
export type ReadText = (path: string) => string | undefined;

const BASES = /^(published|common-practice|from-memory|measured-by-user|assumed|none)\b/;

/** Functions that a file exports and declares itself, whatever the form of the export. */
export function exportedFunctions(program: ts.Program, source: ts.SourceFile): ExportedFunction[] {
  const checker = program.getTypeChecker();
  const module = checker.getSymbolAtLocation(source);
  if (!module) return [];
  const found: ExportedFunction[] = [];
  for (const exported of checker.getExportsOfModule(module)) {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const declaration = symbol.valueDeclaration;
    if (!declaration || declaration.getSourceFile() !== source) continue;
    if (ts.isFunctionDeclaration(declaration)) {
      const first = symbol.declarations!.filter(ts.isFunctionDeclaration)[0]!;
      found.push({ name: exported.name, node: declaration, doc: docCommentOf(first) });
    } else if (ts.isVariableDeclaration(declaration)) {
      const value = declaration.initializer;
      if (!value || !(ts.isArrowFunction(value) || ts.isFunctionExpression(value))) continue;
      found.push({ name: exported.name, node: value, doc: docCommentOf(declaration.parent.parent) });
    }
  }
  return found;
}

/** What the doc comments of a file's exported functions lack, one line each. */
export function docMisses(program: ts.Program, source: ts.SourceFile, readText: ReadText): string[] {
  const misses: string[] = [];
  for (const { name, node, doc } of exportedFunctions(program, source)) {
    const add = (text: string) => misses.push(`${name}: ${text}`);
    if (doc === null) {
      add('has no doc comment');
      continue;
    }
    if (doc.summary === '') add('says nothing before its first tag');
    parameterMisses(program.getTypeChecker(), node, doc).forEach(add);
    if (textsOf(doc, 'returns').join('') === '' && !returnsNothing(program, node)) add('has no @returns');
    if (throwsItself(node) && textsOf(doc, 'throws').join('') === '') add('throws, and has no @throws');
    labelMisses(name, doc, readText).forEach(add);
  }
  return misses;
}

function labelMisses(name: string, doc: DocComment, readText: ReadText): string[] {
  const misses: string[] = [];
  const labels = labelTexts(doc);
  for (const label of LABELS) {
    const text = labels.get(label);
    if (text === undefined) misses.push(`@remarks has no "${label}:"`);
    else if (text === '') misses.push(`"${label}:" is empty`);
    else if (/^none\.?$/.test(text)) misses.push(`"${label}: none" does not say why`);
  }
  const basis = labels.get('Basis');
  if (basis && !BASES.test(basis)) misses.push(`"Basis:" begins with none of the known words: ${basis}`);
  const checked = labels.get('Checked');
  if (checked && !checked.startsWith('none')) {
    const paths = checked.match(/test\/[\w./-]+\.test\.ts/g) ?? [];
    if (paths.length === 0) misses.push(`"Checked:" names no test file: ${checked}`);
    const texts = paths.map((path) => [path, readText(path)] as const);
    for (const [path, text] of texts)
      if (text === undefined) misses.push(`"Checked:" names ${path}, which does not exist`);
    const present = texts.filter(([, text]) => text !== undefined);
    const mention = new RegExp(`\\b${name}\\b`);
    if (present.length > 0 && !present.some(([, text]) => mention.test(text!))) {
      misses.push(`no file that "Checked:" names ever mentions ${name}`);
    }
  }
  return misses;
}

function parameterMisses(checker: ts.TypeChecker, node: ts.SignatureDeclaration, doc: DocComment): string[] {
  const misses: string[] = [];
  const texts = paramTexts(doc);
  for (const parameter of node.parameters) {
    if (!ts.isIdentifier(parameter.name)) {
      misses.push('takes its parameter apart in the signature: give it a name and a @param');
      continue;
    }
    const name = parameter.name.text;
    const text = texts.get(name);
    if (text === undefined) misses.push(`parameter ${name} has no @param`);
    const type = checker.getTypeAtLocation(parameter);
    if (isNumeric(checker, type)) {
      const miss = unitMiss(name, text ?? '');
      if (miss) misses.push(`parameter ${name} ${miss}`);
    } else fieldMisses(checker, type, name, texts, new Set()).forEach((miss) => misses.push(miss));
  }
  return misses;
}

/** Units of the numeric fields of a parameter's type, and of the project's own types within it. */
function fieldMisses(
  checker: ts.TypeChecker,
  type: ts.Type,
  path: string,
  texts: ReadonlyMap<string, string>,
  seen: Set<ts.Type>,
): string[] {
  const misses: string[] = [];
  for (const part of partsOf(type)) {
    if (seen.has(part)) continue;
    seen.add(part);
    if (checker.isArrayType(part) || checker.isTupleType(part)) {
      for (const element of checker.getTypeArguments(part as ts.TypeReference)) {
        misses.push(...fieldMisses(checker, element, `${path}[]`, texts, seen));
      }
      continue;
    }
    if (!(part.flags & ts.TypeFlags.Object)) continue;
    for (const field of checker.getPropertiesOfType(part)) {
      const declaration = field.declarations?.[0];
      if (!declaration || !isOwn(declaration)) continue;
      const fieldType = checker.getTypeOfSymbol(field);
      const fieldPath = `${path}.${field.name}`;
      if (isNumeric(checker, fieldType)) {
        const own = docCommentOf(declaration);
        const said = [
          own?.summary,
          texts.get(fieldPath),
          saidIn(texts.get(path.split(/[.[]/)[0]!), field.name),
        ];
        const miss = unitMiss(field.name, said.filter(Boolean).join(' '));
        if (miss) misses.push(`field ${fieldPath} ${miss}`);
      } else misses.push(...fieldMisses(checker, fieldType, fieldPath, texts, seen));
    }
  }
  return misses;
}

/** The part of a @param text from a field's name to the next bracketed unit. */
function saidIn(text: string | undefined, field: string): string | undefined {
  return text && new RegExp(`\\b${field}\\b[^[]*\\[[^\\]]+\\]`).exec(text)?.[0];
}

/** A declaration of the project, not of a library. */
function isOwn(declaration: ts.Declaration): boolean {
  const source = declaration.getSourceFile();
  return !source.fileName.includes('/node_modules/') && !/\/?lib\.[\w.]+\.d\.ts$/.test(source.fileName);
}

const NOTHING = ts.TypeFlags.Null | ts.TypeFlags.Undefined | ts.TypeFlags.Void;
const partsOf = (type: ts.Type) =>
  (type.isUnion() ? type.types : [type]).filter((part) => !(part.flags & NOTHING));

/** A number, or a list of numbers; null and undefined beside it do not matter. */
function isNumeric(checker: ts.TypeChecker, type: ts.Type): boolean {
  const parts = partsOf(type);
  return (
    parts.length > 0 &&
    parts.every((part) => {
      if (part.flags & ts.TypeFlags.NumberLike) return true;
      if (!checker.isArrayType(part) && !checker.isTupleType(part)) return false;
      const elements = checker.getTypeArguments(part as ts.TypeReference);
      return elements.length > 0 && elements.every((element) => isNumeric(checker, element));
    })
  );
}

function returnsNothing(program: ts.Program, node: ts.SignatureDeclaration): boolean {
  const checker = program.getTypeChecker();
  const signature = checker.getSignatureFromDeclaration(node);
  return signature !== undefined && (checker.getReturnTypeOfSignature(signature).flags & NOTHING) !== 0;
}

/** Whether the body throws, or calls one of the `requireX` guards of core/quantities. */
function throwsItself(node: ts.Node): boolean {
  if (ts.isThrowStatement(node)) return true;
  if (
    ts.isCallExpression(node) &&
    ts.isIdentifier(node.expression) &&
    /^require[A-Z]/.test(node.expression.text)
  )
    return true;
  return ts.forEachChild(node, (child) => throwsItself(child) || undefined) ?? false;
}
