import type { Dimension, UnitSystem } from '../quantities/dimensions.ts';
import { displayUnit, NO_VALUE, printQuantity } from '../quantities/print.ts';
import type { Pair, RunSide, SettingComparison, ShopComparison } from './compare.ts';
import { figure } from './figures/charts/columns.ts';
import { marginText } from './figures/charts/status.ts';
import { longText } from './figures/plan-wishes.ts';
import { buyText, partLabel, sizeText } from './part-words.ts';
import type { PartRow } from './parts/result.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';

const WIDTH = 100;
const left = (head: string, unit = ''): Column => ({ head, unit, align: 'left' });
const right = (head: string, unit = ''): Column => ({ head, unit, align: 'right' });

/** What changed from one document to another, as a person reads it. */
export function compareText(comparison: ShopComparison, units: UnitSystem): string {
  const { before, after } = comparison;
  const lines = [
    before === after ? `${before}: two states` : `${before}, against ${after}`,
    '',
    ...changeLines(comparison),
    '',
    ...partLines(comparison, units),
    '',
  ];
  for (const setting of comparison.settings) lines.push(...settingLines(setting, units), '');
  return `${lines.join('\n').trimEnd()}\n`;
}

function changeLines({ changes, added, removed }: ShopComparison): string[] {
  const items = [
    ...added.map(({ kind, id, name }) => `added: ${kind} ${id}${name === id ? '' : `, ${name}`}`),
    ...removed.map(({ kind, id, name }) => `taken away: ${kind} ${id}${name === id ? '' : `, ${name}`}`),
  ].flatMap((line) => wrapText(`  ${line}`, WIDTH, '    '));
  if (changes.length === 0 && items.length === 0) return ['WHAT CHANGED', '  nothing'];
  const rows = changes.map((change) => [
    change.kind === 'shop' ? 'shop' : `${change.kind} ${change.where}`,
    oneLine(change.label),
    oneLine(change.before),
    oneLine(change.after),
  ]);
  const columns = [
    { head: 'where', align: 'left' },
    { head: 'value', align: 'left' },
    { head: 'before', align: 'left' },
    { head: 'after', align: 'left' },
  ] as const;
  return ['WHAT CHANGED', ...(rows.length > 0 ? textTable(columns, rows, '  ') : []), ...items];
}

/** Most letters of a text in a table. */
const MOST = 40;
function oneLine(text: string): string {
  const plain = text.replace(/\s+/g, ' ');
  return plain.length > MOST ? `${plain.slice(0, MOST - 3)}...` : plain;
}

function partLines({ parts, price, weight_kg }: ShopComparison, units: UnitSystem): string[] {
  if (parts.length === 0) return ['PARTS', '  the same'];
  const shop = (row: PartRow | null) =>
    row === null ? NO_VALUE : row.length_m === null ? String(row.count) : longText(row.length_m, units);
  const buy = (row: PartRow | null) => (row === null ? NO_VALUE : buyText(row, units));
  const rows = parts.map(({ row }) => {
    const any = (row.after ?? row.before)!;
    return [
      partLabel(any),
      sizeText(any, units),
      shop(row.before),
      shop(row.after),
      buy(row.before),
      buy(row.after),
    ];
  });
  const columns = [
    left('part'),
    left('size'),
    right('in the shop', 'before'),
    right('', 'after'),
    right('to buy', 'before'),
    right('', 'after'),
  ];
  const sums = [
    sumLine('price in all', price, (value) => value.toFixed(2)),
    sumLine('weight in all', weight_kg, (value) => printQuantity(value, 'mass', units)),
  ];
  return ['PARTS', ...textTable(columns, rows, '  '), ...sums.flat()];
}

function sumLine(what: string, { before, after }: Pair<number | null>, print: (value: number) => string) {
  if (before === null && after === null) return [];
  const text = (value: number | null) => (value === null ? NO_VALUE : print(value));
  return [`  ${what}: ${text(before)} before, ${text(after)} after`];
}

function settingLines(setting: SettingComparison, units: UnitSystem): string[] {
  const title = `SETTING "${setting.name}"`;
  const none = (['before', 'after'] as const).flatMap((side) =>
    setting.solved[side]
      ? []
      : wrapText(`  ${side}: ${setting.reason[side] ?? 'there is no such setting'}`, WIDTH, '    '),
  );
  const cell = (si: number | null | undefined, dimension: Dimension) => figure(si ?? null, dimension, units);
  const verdict = (side: RunSide | null) =>
    side === null || side.holds === null
      ? NO_VALUE
      : `${side.holds ? 'holds' : 'FAILS'} ${marginText(side.margin)}`;
  const runs = setting.runs.map(({ id, sides: { before, after } }) => [
    id,
    cell(before?.velocity_ms, 'velocity'),
    cell(after?.velocity_ms, 'velocity'),
    verdict(before),
    verdict(after),
    cell(before?.loss_Pa, 'pressure'),
    cell(after?.loss_Pa, 'pressure'),
  ]);
  const devices = setting.devices.map(({ id, sides: { before, after } }) => [
    id,
    ...[NO_VALUE, NO_VALUE, NO_VALUE, NO_VALUE],
    cell(before?.loss_Pa, 'pressure'),
    cell(after?.loss_Pa, 'pressure'),
  ]);
  const columns = [
    left('', ''),
    right(`velocity ${displayUnit('velocity', units)}`, 'before'),
    right('', 'after'),
    right('', 'before'),
    right('', 'after'),
    right(`loss ${displayUnit('pressure', units)}`, 'before'),
    right('', 'after'),
  ];
  const fans = setting.fans.flatMap(({ id, sides: { before, after } }) =>
    (
      [
        ['flow', 'flow_m3s', 'flow'],
        ['static', 'staticPressure_Pa', 'pressure'],
        ['power', 'power_W', 'power'],
      ] as const
    ).flatMap(([word, key, dimension]) => {
      const [old, now] = [before?.[key] ?? null, after?.[key] ?? null];
      if (old === null && now === null) return [];
      const print = (si: number | null) => printQuantity(si, dimension, units);
      return [`  ${id} ${word}: ${print(old)} before, ${print(now)} after`];
    }),
  );
  const table = [...runs, ...devices];
  return [title, ...none, ...(table.length > 0 ? textTable(columns, table, '  ') : []), ...fans];
}
