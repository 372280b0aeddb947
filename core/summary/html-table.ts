import { el } from './markup.ts';
import type { Attributes, Child, Markup } from './markup.ts';

/** A column of a table on paper. */
export interface PaperColumn {
  readonly head: string;
  /** Stands under the head. */
  readonly unit?: string;
  readonly align?: 'right';
}

export interface PaperRow {
  readonly cells: readonly Child[];
  /** A row that heads those below: one cell over the whole width. */
  readonly group?: boolean;
  readonly strong?: boolean;
  /** What the row is about, for whoever looks it up. */
  readonly about?: string;
}

/** A table of no more rows stays on one page, unless `flowing` is among its classes. */
const KEPT_ROWS = 16;

/** A table whose head comes again on each page, and whose rows are never split. */
export function htmlTable(
  columns: readonly PaperColumn[],
  rows: readonly (PaperRow | readonly Child[])[],
  attributes: Attributes = {},
): Markup {
  const side = (i: number): Attributes => ({ class: columns[i]?.align === 'right' ? 'r' : null });
  const keep =
    rows.length <= KEPT_ROWS &&
    !String(attributes.class ?? '')
      .split(' ')
      .includes('flowing')
      ? { class: ['keep', attributes.class ?? ''].join(' ').trim() }
      : {};
  return el(
    'table',
    { ...attributes, ...keep },
    el(
      'thead',
      {},
      el(
        'tr',
        {},
        columns.map(({ head, unit }, i) =>
          el('th', { scope: 'col', ...side(i) }, head, unit ? [el('br'), el('small', {}, unit)] : null),
        ),
      ),
    ),
    el(
      'tbody',
      {},
      rows.map((row) => {
        const { cells, group = false, strong = false, about = null } = 'cells' in row ? row : { cells: row };
        if (group) {
          return el(
            'tr',
            { class: 'group', 'data-about': about },
            el('th', { colspan: columns.length, scope: 'rowgroup' }, cells),
          );
        }
        return el(
          'tr',
          { 'data-about': about, class: strong ? 'strong' : null },
          cells.map((cell, i) => el('td', side(i), cell)),
        );
      }),
    ),
  );
}

/** Words and what they stand at, in two columns without a head. */
export const pairs = (rows: readonly (readonly [string, Child])[]): Markup =>
  el(
    'table',
    { class: 'pairs keep' },
    el(
      'tbody',
      {},
      rows.map(([name, value]) => el('tr', {}, el('th', { scope: 'row' }, name), el('td', {}, value))),
    ),
  );
