import type { Band, Chance, RunChance } from '../chance/chance.ts';
import { CAUSE_LABELS } from '../chance/sentence.ts';
import { displayUnit, NO_VALUE, printQuantity, toDisplay } from '../quantities/print.ts';
import type { Dimension, UnitSystem } from '../quantities/dimensions.ts';
import { textTable, wrapText } from './text-table.ts';
import type { Column } from './text-table.ts';

const WIDTH = 100;
/** Decimals of a velocity; a flow has none. */
const VELOCITY_DECIMALS: Readonly<Record<UnitSystem, number>> = { si: 1, us: 0 };

/** How likely a shop holds in each setting, as a person reads it; the ranges that all rest on come last. */
export function chanceText(chances: readonly Chance[], units: UnitSystem): string {
  const lines = [chances[0]?.document ?? '', ''];
  for (const chance of chances) lines.push(...settingLines(chance, units), '');
  lines.push(...rangeLines(chances));
  return `${lines.join('\n').trimEnd()}\n`;
}

function settingLines(chance: Chance, units: UnitSystem): string[] {
  const title = `SETTING "${chance.setting}"`;
  const sentence = wrapText(`  ${chance.sentence}`, WIDTH, '  ');
  if (!chance.converged) return [title, ...sentence];
  const asked = chance.runs.filter((run) => run.probability !== null);
  return [
    `${title}, ${chance.samples} cases, seed ${chance.seed}`,
    ...sentence,
    ...(asked.length > 0 ? ['', ...textTable(columnsOf(units), asked.map(rowOf(units)), '  ')] : []),
    '',
    ...chance.fans.map((fan) => {
      const flow = bandText(fan.flow_m3s, 'flow', units);
      const pressure = bandText(fan.staticPressure_Pa, 'pressure', units);
      return `  ${fan.id} runs at ${flow} and ${pressure} static in 90 of 100 cases`;
    }),
  ];
}

const right = (head: string, unit = ''): Column => ({ head, align: 'right', unit });

const columnsOf = (units: UnitSystem): Column[] => [
  { head: 'run', align: 'left' },
  right('holds', '%'),
  right('error', '%'),
  right('asked', displayUnit('velocity', units)),
  right('5 %', displayUnit('velocity', units)),
  right('middle', displayUnit('velocity', units)),
  right('95 %', displayUnit('velocity', units)),
  right('asked', displayUnit('flow', units)),
  right('5 %', displayUnit('flow', units)),
  right('middle', displayUnit('flow', units)),
  right('95 %', displayUnit('flow', units)),
  { head: 'what matters', align: 'left' },
];

const rowOf =
  (units: UnitSystem) =>
  (run: RunChance): string[] => {
    const figure = (si: number | null | undefined, dimension: Dimension) =>
      si === null || si === undefined
        ? NO_VALUE
        : toDisplay(si, dimension, units).toFixed(dimension === 'velocity' ? VELOCITY_DECIMALS[units] : 0);
    const band = (of: Band | null, dimension: Dimension) =>
      [of?.low, of?.middle, of?.high].map((si) => figure(si, dimension));
    return [
      run.id,
      (100 * run.probability!).toFixed(1),
      (100 * run.probabilityError!).toFixed(1),
      figure(run.requiredVelocity_ms, 'velocity'),
      ...band(run.velocity_ms, 'velocity'),
      figure(run.requiredFlow_m3s, 'flow'),
      ...band(run.flow_m3s, 'flow'),
      run.causes
        .slice(0, 2)
        .map(({ cause, share }) => `${cause} ${(100 * share).toFixed(0)} %`)
        .join(', '),
    ];
  };

function bandText({ low, high }: Band, dimension: Dimension, units: UnitSystem): string {
  return `${printQuantity(low, dimension, units)} to ${printQuantity(high, dimension, units)}`;
}

/** Ranges by what they are about; those of one thing name it. */
function rangeLines(chances: readonly Chance[]): string[] {
  const rows = new Map<string, string[]>();
  for (const range of chances.flatMap((chance) => chance.ranges)) {
    const what = range.where === null ? range.label : `${range.label} (${range.where})`;
    const width = range.plusMinus === null ? 'by its tests' : `${(100 * range.plusMinus).toFixed(0)} %`;
    rows.set(what, [
      what,
      width,
      CAUSE_LABELS[range.cause],
      range.given ? 'given in the document' : range.basis,
    ]);
  }
  if (rows.size === 0) return [];
  const columns: Column[] = [
    { head: 'figure', align: 'left' },
    { head: 'plus or minus', align: 'right' },
    { head: 'counted with', align: 'left' },
    { head: 'basis', align: 'left' },
  ];
  return [
    'RANGES, what holds nineteen times in twenty; `ranges` of the document stand before them',
    ...textTable(columns, [...rows.values()], '  '),
    '',
    ...wrapText(
      'A chance is no better than these ranges, and knows nothing of what they leave out: a blockage, a torn hose, an open door in the bin. "error" is that of the number of cases alone.',
      WIDTH,
    ),
  ];
}
