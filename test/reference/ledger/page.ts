import { PHYSICS } from '../../rules/import-rules.ts';
import { findRelation, type Relation } from '../../rules/relations.ts';
import type { CheckRecord } from './check.ts';
import { rowsOf, type Row } from './rows.ts';

/** What parts the written head of the page from what is made. */
export const MARK = '<!-- `npm run checks` makes all that follows -->';

const LONGEST_TITLE = 90;

const MEMORY: ReadonlySet<string> = new Set(['from-memory', 'common-practice']);

/** A relation with the declarations that name it and their rows. */
interface Entry {
  readonly relation: Relation;
  readonly records: CheckRecord[];
  readonly rows: Row[];
}

/** The page: its head as it is, then a table for each folder and the lists of what is weak. */
export function checksPage(
  head: string,
  measured: ReadonlyMap<string, readonly CheckRecord[]>,
  relations: readonly Relation[],
): string {
  const entries = entriesOf(measured, relations);
  const lines = [head.trimEnd(), '', MARK, ''];
  lines.push(`${entries.length} relations, ${entries.flatMap(({ rows }) => rows).length} checks.`, '');
  lines.push('<!-- prettier-ignore-start -->', '');
  for (const folder of foldersOf(entries)) {
    lines.push(`## ${folder}`, '', ...tableOf(entries.filter((entry) => folderOf(entry) === folder)), '');
  }
  for (const { title, words, holds } of WEAK) {
    const found = entries.filter(holds);
    lines.push(`## ${title}`, '', words, '');
    lines.push(...(found.length > 0 ? found.map(({ relation }) => `- ${titleOf(relation)}`) : ['None.']), '');
  }
  lines.push('<!-- prettier-ignore-end -->', '');
  return lines.join('\n');
}

const valuesOf = ({ records }: Entry) => records.filter(({ kind }) => kind === 'value');
const hasRoute = ({ records }: Entry) => records.some(({ kind }) => kind === 'second-route');

const WEAK: readonly {
  readonly title: string;
  readonly words: string;
  readonly holds: (entry: Entry) => boolean;
}[] = [
  {
    title: 'Rests on memory',
    words: 'No outside value of these was read on its page, reckoned by another program or by hand.',
    holds: (entry) => valuesOf(entry).length > 0 && valuesOf(entry).every(({ basis }) => MEMORY.has(basis)),
  },
  {
    title: 'A second route only',
    words: 'No outside value was found; the same figure was got another way.',
    holds: (entry) => valuesOf(entry).length === 0 && hasRoute(entry),
  },
  {
    title: 'Limits only, no outside value found',
    words: 'What is known is how these behave at the ends of their range.',
    holds: (entry) => valuesOf(entry).length === 0 && !hasRoute(entry),
  },
];

function entriesOf(
  measured: ReadonlyMap<string, readonly CheckRecord[]>,
  relations: readonly Relation[],
): Entry[] {
  const entries = new Map<Relation, Entry>();
  for (const [test, records] of measured) {
    for (const record of records) {
      record.relations.forEach((name, i) => {
        const relation = findRelation(relations, name);
        if (!relation) throw new Error(`${test}: ${name} is no relation`);
        const entry = entries.get(relation) ?? { relation, records: [], rows: [] };
        entries.set(relation, entry);
        entry.records.push(record);
        entry.rows.push({ ...rowsOf(test, [record])[i]!, relation: titleOf(relation) });
      });
    }
  }
  const key = ({ relation: { path, name } }: Entry) => `${path}#${name}`;
  return [...entries.values()].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

const folderOf = ({ relation }: Entry) => relation.path.split('/').slice(0, 2).join('/');

/** Physics in the order of the air's path, then the others by name. */
function foldersOf(entries: readonly Entry[]): string[] {
  const physics = PHYSICS.map((name) => `core/${name}`);
  const found = [...new Set(entries.map(folderOf))].sort();
  return [
    ...physics.filter((name) => found.includes(name)),
    ...found.filter((name) => !physics.includes(name)),
  ];
}

function tableOf(entries: readonly Entry[]): string[] {
  const row = (...cells: string[]) => `| ${cells.join(' | ')} |`;
  return [
    row('relation', 'checked against', 'largest deviation', 'tolerance', 'basis', 'test'),
    row('---', '---', '---', '---', '---', '---'),
    ...entries.flatMap(({ rows }) =>
      rows.map((cells) =>
        row(cells.relation, cells.against, cells.deviation, cells.tolerance, cells.basis, cells.test),
      ),
    ),
  ];
}

/** The first sentence of a relation's doc comment, shortened, and its name. */
export function titleOf({ name, doc }: Pick<Relation, 'name' | 'doc'>): string {
  const [first] = (doc?.summary ?? '').replace(/\s+/g, ' ').split(/[.:;](?= |$)/);
  let title = first!.replaceAll('|', '/');
  while (title.length > LONGEST_TITLE && title.includes(',')) title = title.slice(0, title.lastIndexOf(','));
  return `${title}: \`${name}\``;
}
