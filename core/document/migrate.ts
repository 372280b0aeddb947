import { shown } from './issue-text.ts';
import type { DocumentProblem } from './problem.ts';
import { FORMAT_VERSION } from './schema.ts';

/** Turns a document of one version into the next; the list grows at its end and is never rewritten. */
type Migration = (older: Record<string, unknown>) => Record<string, unknown>;

/** `MIGRATIONS[v]` turns version `v` into `v + 1`. */
const MIGRATIONS: Readonly<Record<number, Migration>> = {
  // version 2 brought fans with tests, motor and rotor; an older shop has none
  1: (older) => ({ ...older, version: 2 }),
};

export type Migrated =
  | { readonly ok: true; readonly value: Record<string, unknown> }
  | { readonly ok: false; readonly problem: DocumentProblem };

const refuse = (path: string, message: string, remedy: string): Migrated => ({
  ok: false,
  problem: { path, message, remedy },
});

const typed = (value: unknown) => (value === undefined ? 'is missing' : `is ${shown(value)}`);

/** Checks format and version before anything else, and brings an older document up to this version. */
export function migrate(raw: unknown): Migrated {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refuse('', 'the file holds no shop document', 'open a Chipdraft shop document');
  }
  let value = raw as Record<string, unknown>;
  if (value.format !== 'chipdraft-shop') {
    return refuse(
      'format',
      `format: ${typed(value.format)}, so this is not a Chipdraft shop document`,
      'set "format": "chipdraft-shop"',
    );
  }
  const version = value.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refuse(
      'version',
      `version: ${typed(version)}, but must be a whole number, 1 or more`,
      `set "version": ${FORMAT_VERSION}`,
    );
  }
  if (version > FORMAT_VERSION) {
    return refuse(
      'version',
      `version: the document is of version ${version}, this Chipdraft reads up to ${FORMAT_VERSION}`,
      'open it with a newer Chipdraft',
    );
  }
  for (let v = version; v < FORMAT_VERSION; v++) value = MIGRATIONS[v]!(value);
  return { ok: true, value };
}
