/** One thing that is wrong with a document: where, what, and what would mend it. */
export interface DocumentProblem {
  /** Path of the field, such as `runs[2](R3).pieces[0].length`; empty for the whole file. */
  readonly path: string;
  readonly message: string;
  readonly remedy: string;
}

/** Longest path that is told whole; no field of a shop lies that deep. */
const LONGEST_PATH = 300;

/** Path of a field in words a person can follow: list places carry the id that stands there. */
export function pathText(document: unknown, path: readonly PropertyKey[]): string {
  let text = '';
  let value: unknown = document;
  for (const key of path) {
    value =
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined;
    if (typeof key === 'number') {
      text += `[${key}]`;
      const id: unknown = typeof value === 'object' && value !== null && 'id' in value ? value.id : undefined;
      if (typeof id === 'string') text += `(${id.slice(0, 40)})`;
    } else text += text === '' ? String(key) : `.${String(key)}`;
  }
  return text.length <= LONGEST_PATH ? text : `${text.slice(0, LONGEST_PATH - 60)}…${text.slice(-60)}`;
}

/** Last name in a path. */
export function nameOf(path: readonly PropertyKey[]): string {
  for (let i = path.length - 1; i >= 0; i--) if (typeof path[i] === 'string') return `"${String(path[i])}"`;
  return 'a value';
}
