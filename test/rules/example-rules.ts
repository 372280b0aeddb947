import ts from 'typescript';
import { textsOf, type DocComment } from './doc-comment.ts';

/** Values that an example may use, by name. */
export type Scope = Readonly<Record<string, unknown>>;

/** A literal that a comment shows after an expression: a number with its digits, a text, true, false or null. */
const SHOWN = /^\/\/\s*(-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?|true|false|null|'[^']*'|"[^"]*")(?=$|[\s,;[(])/i;

/** Whether a value is the one shown; a number must agree when rounded to the digits shown. */
export function agrees(value: unknown, shown: string): boolean {
  if (/^['"]/.test(shown)) return value === shown.slice(1, -1);
  if (/^(true|false|null)$/.test(shown)) return String(value) === shown && typeof value !== 'string';
  if (typeof value !== 'number' || !Number.isFinite(value)) return false;
  const [mantissa, exponent] = shown.toLowerCase().split('e');
  const decimals = (mantissa!.split('.')[1] ?? '').length;
  const half = 0.5 * 10 ** (Number(exponent ?? 0) - decimals);
  return Math.abs(value - Number(shown)) <= half * (1 + 1e-9);
}

/** The code of a doc comment's examples, fences taken off. */
export function exampleCode(doc: DocComment): string[] {
  return textsOf(doc, 'example').flatMap((text) =>
    [...text.matchAll(/```\w*\n([\s\S]*?)```/g)].map((match) => match[1]!),
  );
}

/**
 * Runs an example and compares each `expression; // literal` with its value.
 * Returns what is wrong, one line each; an example that shows nothing is wrong too.
 */
export function exampleMisses(code: string, scope: Scope): string[] {
  const source = ts.createSourceFile('example.ts', code, ts.ScriptTarget.ES2022, true);
  const misses: string[] = [];
  const shown: { text: string; literal: string }[] = [];
  const body = source.statements.map((statement) => {
    const text = statement.getText();
    if (ts.isImportDeclaration(statement)) return '';
    if (!ts.isExpressionStatement(statement)) return text;
    const comment = (ts.getTrailingCommentRanges(code, statement.end) ?? []).map(({ pos, end }) =>
      code.slice(pos, end),
    );
    const literal = SHOWN.exec(comment[0] ?? '')?.[1];
    if (literal === undefined) return text;
    shown.push({ text, literal });
    return `__show(${shown.length - 1}, (${statement.expression.getText()}));`;
  });
  if (shown.length === 0) return [`example shows no value as "expression; // digits": ${code.trim()}`];
  const values = new Map<number, unknown>();
  try {
    const js = ts.transpile(`{\n${body.join('\n')}\n}`, { target: ts.ScriptTarget.ES2022 });
    const names = Object.keys(scope);
    const run = new Function('__show', ...names, `'use strict';\n${js}`) as (...values: unknown[]) => void;
    run((i: number, value: unknown) => values.set(i, value), ...names.map((name) => scope[name]));
  } catch (error) {
    misses.push(`example stops with ${String(error)}: ${code.trim()}`);
  }
  shown.forEach(({ text, literal }, i) => {
    if (!values.has(i)) return;
    if (!agrees(values.get(i), literal))
      misses.push(`example shows ${text} as ${literal}, and it is ${String(values.get(i))}`);
  });
  return misses;
}
