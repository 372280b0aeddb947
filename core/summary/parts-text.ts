import type { UnitSystem } from '../quantities/dimensions.ts';
import { NO_VALUE, printQuantity } from '../quantities/print.ts';
import { longText } from './figures/plan-wishes.ts';
import { buyText, cutsText, partLabel, sizeText, totalsText } from './part-words.ts';
import type { PartsList } from './parts/result.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';

const WIDTH = 100;
const left = (head: string): Column => ({ head, align: 'left' });
const right = (head: string): Column => ({ head, align: 'right' });

/** What to buy and how to cut it, as a person reads it. */
export function partsText(list: PartsList, units: UnitSystem): string {
  const priced = list.rows.some(({ price }) => price !== null);
  const weighed = list.rows.some(({ weight_kg }) => weight_kg !== null);
  const columns = [
    left('part'),
    left('size'),
    right('in the shop'),
    right('buy'),
    ...(priced ? [right(list.money ?? 'price')] : []),
    ...(weighed ? [right('weight')] : []),
    left('where'),
  ];
  const rows = list.rows.map((row) => [
    partLabel(row),
    sizeText(row, units),
    row.length_m === null ? String(row.count) : longText(row.length_m, units),
    buyText(row, units),
    ...(priced ? [row.price === null ? NO_VALUE : row.price.toFixed(2)] : []),
    ...(weighed ? [printQuantity(row.weight_kg, 'mass', units)] : []),
    shorter(row.where),
  ]);
  const cut = list.rows.filter(({ cutting }) => cutting !== null);
  return `${[
    list.document,
    '',
    'PARTS',
    ...textTable(columns, rows, '  '),
    '',
    ...(cut.length === 0
      ? []
      : [
          'CUTTING PLAN',
          ...textTable(
            [left('duct'), left('length'), left('cut from it'), right('left over')],
            cut.flatMap((row) =>
              cutsText(row, units).map(({ bar, cuts, left: rest }) => [
                `${partLabel(row)}, ${sizeText(row, units)}`,
                bar,
                cuts,
                rest,
              ]),
            ),
            '  ',
          ),
          '',
        ]),
    ...totalsText(list, units).flatMap((line) => wrapText(line, WIDTH)),
  ]
    .join('\n')
    .trimEnd()}\n`;
}

/** Places that a line has room for. */
const PLACES = 5;
const shorter = (where: readonly string[]): string =>
  where.length <= PLACES
    ? where.join(' ')
    : `${where.slice(0, PLACES).join(' ')} and ${where.length - PLACES} more`;
