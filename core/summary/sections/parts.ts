import type { SummaryFacts } from '../facts.ts';
import { buyText, cutsText, partLabel, sizeText, totalsText } from '../part-words.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import { longText } from '../figures/plan-wishes.ts';

/** What to buy, and how to cut it. */
export function partsSection({ parts, units }: SummaryFacts): Markup {
  const list = parts();
  const priced = list.rows.some(({ price }) => price !== null);
  const weighed = list.rows.some(({ weight_kg }) => weight_kg !== null);
  const cut = list.rows.filter(({ cutting }) => cutting !== null);
  return join(
    htmlTable(
      [
        { head: 'part' },
        { head: 'size' },
        { head: 'in the shop', align: 'right' },
        { head: 'buy', align: 'right' },
        ...(priced
          ? [{ head: `price${list.money === null ? '' : `, ${list.money}`}`, align: 'right' as const }]
          : []),
        ...(weighed ? [{ head: 'weight', align: 'right' as const }] : []),
        { head: 'where' },
      ],
      list.rows.map((row) => ({
        about: row.key,
        cells: [
          partLabel(row),
          sizeText(row, units),
          row.length_m === null ? String(row.count) : longText(row.length_m, units),
          buyText(row, units),
          ...(priced ? [row.price === null ? NO_VALUE : row.price.toFixed(2)] : []),
          ...(weighed ? [printQuantity(row.weight_kg, 'mass', units)] : []),
          row.where.join(', '),
        ],
      })),
    ),
    totalsText(list, units).map((line) => el('p', {}, line)),
    cut.length === 0
      ? null
      : [
          el('h3', {}, 'Cutting plan'),
          htmlTable(
            [
              { head: 'duct' },
              { head: 'length' },
              { head: 'cut from it' },
              { head: 'left over', align: 'right' },
            ],
            cut.flatMap((row) =>
              cutsText(row, units).map(({ bar, cuts, left }) => ({
                cells: [`${partLabel(row)}, ${sizeText(row, units)}`, bar, cuts, left],
              })),
            ),
          ),
        ],
  );
}
