import type { DocumentProblem } from '../../../core/document/problem.ts';
import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { solve } from '../../../core/network/solve.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import type { ExampleId } from '../../../core/examples/index.ts';

/** A file of an example that a test may change at will. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export const fileOf = (id: ExampleId): any => structuredClone(EXAMPLES[id]);

/** The one-router shop with its lengths and bends typed piece by piece, as in a document without a drawing. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export function typedFile(): any {
  const file = fileOf('one-router');
  const hose = { material: 'hose-smooth-bore' };
  const elbow = { kind: 'elbow', style: 'smooth', angle: '90 deg', radiusRatio: 1.5 };
  const straight = (length: string) => ({ kind: 'straight', length });
  const pieces: Record<string, object[]> = {
    R1: [
      { ...straight('reach'), id: 'hose', ...hose },
      { kind: 'hose-bend', angle: '120 deg', radius: '300 mm', ...hose },
      { kind: 'gate', id: 'G1' },
      straight('1.8 m'),
      elbow,
      straight('0.6 m'),
    ],
    R2: [straight('0.4 m'), elbow, straight('0.5 m')],
    R3: [straight('0.5 m'), { kind: 'reducer', to: '160 mm', angle: '20 deg' }],
    R4: [],
  };
  for (const run of file.runs) {
    delete run.route;
    run.pieces = pieces[run.id];
  }
  return file;
}

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
