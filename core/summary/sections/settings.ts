import { NO_VALUE } from '../../quantities/print.ts';
import { settingTable } from '../figures/charts/setting-table.ts';
import type { SettingCell } from '../figures/charts/setting-table.ts';
import { STATUS_LOOKS } from '../figures/charts/status.ts';
import type { RunStatus } from '../figures/charts/status.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Child, Markup } from '../markup.ts';

/** Settings beside each other that a page has room for. */
const COLUMNS = 6;

/** Every run that something is asked of, in every setting, with word and mark. */
export function settingsSection({ solution, units, nameOf }: SummaryFacts): Markup {
  const { settings } = solution;
  const groups: (readonly (typeof settings)[number][])[] = [];
  for (let at = 0; at < settings.length; at += COLUMNS) groups.push(settings.slice(at, at + COLUMNS));
  const used = new Set<RunStatus>();
  const tables = groups.map((group) => {
    const table = settingTable({
      settings: group.map(({ name }) => name),
      solutions: new Map(group.map((setting) => [setting.name, setting])),
      units,
      nameOf,
    });
    return htmlTable(
      [
        { head: 'velocity', unit: table.unit },
        ...table.columns.map(({ name }) => ({ head: name, align: 'right' as const })),
      ],
      [
        ...table.rows.map(({ id, kind, label, cells }) => ({
          about: `${kind} ${id}`,
          cells: [
            kind === 'fan' ? `${nameOf(id)}: ${label}` : label === id ? id : `${id} ${label}`,
            ...cells.map((cell) => {
              if (cell?.status) used.add(cell.status);
              return cellOf(cell);
            }),
          ],
        })),
        {
          strong: true,
          cells: [
            'least to spare',
            ...table.columns.map(({ state, marginText, worstRun }) =>
              state === 'solved' ? `${marginText}${worstRun === null ? '' : ` ${worstRun}`}` : 'no solution',
            ),
          ],
        },
      ],
      { class: 'settings' },
    );
  });
  const refused = settings.filter(({ converged }) => !converged);
  return join(
    tables,
    refused.map(({ name, reasonText }) => el('p', {}, `“${name}” has no solution: ${reasonText ?? ''}.`)),
    used.size === 0
      ? null
      : el(
          'p',
          { class: 'small' },
          [...used].map((status, i) => [i > 0 ? '; ' : null, mark(status), STATUS_LOOKS[status].meaning]),
          '.',
        ),
  );
}

function cellOf(cell: SettingCell | null): Child {
  if (cell === null) return NO_VALUE;
  const { text, status } = cell;
  if (status === null) return text;
  const { word } = STATUS_LOOKS[status];
  return status === 'shut' ? word : [text, ' ', mark(status), el('b', { class: 'word' }, word)];
}

/** The mark of a status, as on the screen. */
export function mark(status: RunStatus): Markup {
  const { mark: d, filled } = STATUS_LOOKS[status];
  const paint = { fill: filled ? '#000' : 'none', stroke: filled ? 'none' : '#000', 'stroke-width': 1.6 };
  return el(
    'svg',
    { class: 'mark', viewBox: '0 0 12 12', width: 9, height: 9, 'aria-hidden': 'true' },
    el('path', { d, ...paint }),
  );
}
