import type { DocumentProblem } from '../../core/document/problem.ts';

/** Where a problem of the document sends the reader: an id and the path from there; null for the whole shop. */
export interface Place {
  readonly id: string;
  readonly path: readonly (string | number)[] | null;
}

/** Reads a path text, such as `runs[2](R3).pieces[0].length`; the last id that is named is the place. */
export function placeOf(problem: Pick<DocumentProblem, 'path'>): Place | null {
  const named = [...problem.path.matchAll(/\(([^)]+)\)/g)].at(-1);
  if (named === undefined) return null;
  const rest = problem.path.slice(named.index + named[0].length);
  const path = [...rest.matchAll(/\.([A-Za-z]\w*)|\[(\d+)\]/g)].map(([, key, index]) => key ?? Number(index));
  return { id: named[1]!, path: path.length > 0 ? path : null };
}

/** A problem's message without the path that it starts with, which the list shows as a name. */
export function plainMessage(problem: DocumentProblem): string {
  const start = `${problem.path}: `;
  return problem.path !== '' && problem.message.startsWith(start)
    ? problem.message.slice(start.length)
    : problem.message;
}
