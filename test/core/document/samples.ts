import type { DocumentProblem } from '../../../core/document/problem.ts';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { solve } from '../../../core/network/solve.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import type { ExampleId } from '../../../core/examples/index.ts';

/** A file of an example that a test may change at will. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export const fileOf = (id: ExampleId): any => structuredClone(EXAMPLES[id]);

/** An example, read. */
export function documentOf(id: ExampleId): ShopDocument {
  const read = readValue(EXAMPLES[id]);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

/** Everything that is wrong with a file, found when it is read or when it is compiled. */
export function problemsOf(file: unknown): readonly DocumentProblem[] {
  const read = readValue(file);
  if (!read.ok) return read.problems;
  const solved = solve(read.document);
  return solved.ok ? [] : solved.problems;
}
