import { shownShare, type CheckKind, type CheckRecord } from './check.ts';

/** One row of the page: a relation and one check of it. */
export interface Row {
  /** Bare name of the function. */
  readonly relation: string;
  readonly against: string;
  readonly deviation: string;
  readonly tolerance: string;
  readonly basis: string;
  /** Name of the test file without its ending. */
  readonly test: string;
}

/** Below it a deviation is rounding, which differs between machines. */
const ROUNDING = 1e-12;

const KIND_WORDS: Readonly<Record<CheckKind, string>> = {
  value: '',
  limit: 'limit: ',
  'second-route': 'second route: ',
};

/** What the column `checked against` says of a declaration. */
export const againstText = (kind: CheckKind, source: string) => `${KIND_WORDS[kind]}${source}`;

/** `name` of `core/folder/file.ts#name`. */
export const bareName = (said: string) => said.replace(/^.*#/, '');

/** A deviation with two significant digits. */
export function shownDeviation(largest: number, unit: string | null): string {
  if (largest < ROUNDING) return 'below 1e-12';
  const rounded = Number(largest.toPrecision(2));
  return unit === null ? shownShare(rounded) : `${rounded} ${unit}`.trim();
}

/** Whether a printed deviation and a measured one are the same but for the last digit or for rounding. */
export function sameDeviation(printed: string, largest: number, unit: string | null): boolean {
  if (printed === shownDeviation(largest, unit)) return true;
  const parts = /^(below )?([\d.e+-]+)(?: (.+))?$/.exec(printed);
  if (!parts) return false;
  const value = Number(parts[2]);
  if (!parts[1] && (parts[3] ?? '') !== (unit ?? (printed.endsWith(' %') ? '%' : ''))) return false;
  const share = unit === null && printed.endsWith(' %') ? value / 100 : value;
  if (Math.max(share, largest) < 10 * ROUNDING) return true;
  if (parts[1]) return false;
  const lastDigit = 10 ** (Math.floor(Math.log10(share)) - 1);
  return Math.abs(largest - share) <= 1.55 * lastDigit;
}

/** The rows of one test file. */
export function rowsOf(test: string, records: readonly CheckRecord[]): Row[] {
  return records.flatMap((record) => {
    const { relations, kind, source, basis, deviation, tolerance, held } = record;
    const parts = deviation ? [shownDeviation(deviation.largest, deviation.unit)] : [];
    if (held.length > 0) parts.push(`holds: ${held.join(', ')}`);
    const cells = { deviation: parts.join('; '), tolerance: tolerance ?? '', basis, test };
    return relations.map((said) => ({
      relation: bareName(said),
      against: againstText(kind, source),
      ...cells,
    }));
  });
}

/** The rows that a page prints. */
export function rowsOnPage(page: string): Row[] {
  return page.split('\n').flatMap((line) => {
    const cells = line.split('|').map((cell) => cell.trim());
    const relation = /`(\w+)`$/.exec(cells[1] ?? '')?.[1];
    if (cells.length !== 8 || relation === undefined) return [];
    const [, , against, deviation, tolerance, basis, test] = cells as [string, ...string[]];
    return [{ relation, against, deviation, tolerance, basis, test } as Row];
  });
}

export const keyOf = ({ relation, against, test }: Pick<Row, 'relation' | 'against' | 'test'>) =>
  `${relation}, ${against}, ${test}`;

/** Where what a test file measured differs from the page, one line each. */
export function differences(test: string, records: readonly CheckRecord[], page: string): string[] {
  const printed = new Map(
    rowsOnPage(page)
      .filter((row) => row.test === test)
      .map((row) => [keyOf(row), row]),
  );
  const found: string[] = [];
  for (const record of records) {
    if (record.deviation === null && record.held.length === 0) found.push(`never measured: ${record.source}`);
    for (const row of rowsOf(test, [record])) {
      const key = keyOf(row);
      const there = printed.get(key);
      printed.delete(key);
      if (!there) found.push(`not on the page, or declared twice: ${key}`);
      else if (!agrees(there, row, record))
        found.push(
          `${key}: page ${[there.deviation, there.tolerance, there.basis].join(' | ')}, ` +
            `now ${[row.deviation, row.tolerance, row.basis].join(' | ')}`,
        );
    }
  }
  for (const key of printed.keys()) found.push(`on the page, no longer declared: ${key}`);
  return found;
}

function agrees(there: Row, row: Row, { deviation }: CheckRecord): boolean {
  if (there.tolerance !== row.tolerance || there.basis !== row.basis) return false;
  if (there.deviation === row.deviation || !deviation) return there.deviation === row.deviation;
  const split = (cell: string) => cell.split('; ');
  const [printed, ...held] = split(there.deviation);
  const [, ...heldNow] = split(row.deviation);
  return held.join() === heldNow.join() && sameDeviation(printed!, deviation.largest, deviation.unit);
}
