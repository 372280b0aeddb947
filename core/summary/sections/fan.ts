import type { BenchCurve } from '../../fan-bench/result.ts';
import type { FanResult } from '../../network/solution.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import type { Dimension } from '../../quantities/dimensions.ts';
import type { Band, FanChance } from '../../chance/chance.ts';
import { curveFigure } from '../figures/curve-figure.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';

/** What each fan gives, what the shop asks of it, and where they meet, with how sure that is. */
export function fanSection(facts: SummaryFacts): Markup {
  const { governing, units, nameOf, width } = facts;
  if (governing === null || governing.fans.length === 0) {
    return el('p', {}, 'No fan runs in the setting with the least to spare.');
  }
  const curves = facts.curves();
  const chance = facts.chances().find(({ setting }) => setting === governing.name);
  return join(
    governing.fans.map((fan, i) => {
      const spread = chance?.fans.find(({ id }) => id === fan.id) ?? null;
      const curve = curves.find((one) => one.fan === fan.id);
      const made =
        curve === undefined || curve.points.length === 0
          ? null
          : curveFigure(curve, {
              width,
              height: 300,
              units,
              nameOf,
              runs: spread,
              bench: benchOf(facts, fan.id),
              idPrefix: `fan${i + 1}`,
            });
      return [
        el('h3', {}, nameOf(fan.id)),
        made === null ? null : el('figure', {}, made.figure, el('figcaption', {}, made.sentence)),
        operatingTable(fan, spread, facts),
        fan.allOperatingPoints.length > 1
          ? el(
              'p',
              {},
              'It could run at ',
              fan.allOperatingPoints
                .map(
                  (point) =>
                    `${printQuantity(point.flow_m3s, 'flow', units)} (${point.stable ? 'stable' : 'unstable'})`,
                )
                .join(', '),
              '; shown is the first stable one, which it reaches from rest.',
            )
          : null,
      ];
    }),
  );
}

/** Curve of the fan's tests, where it stands for a fan of the list. */
function benchOf({ document, benches }: SummaryFacts, id: string): BenchCurve | null {
  const thing = document.things.find((one) => one.id === id);
  if (thing?.kind !== 'fan' || thing.design === undefined) return null;
  return benches().find((bench) => bench.id === thing.design)?.curve ?? null;
}

function operatingTable(fan: FanResult, spread: FanChance | null, { units }: SummaryFacts): Markup {
  const print = (si: number | null, dimension: Dimension) => printQuantity(si, dimension, units);
  const band = (of: Band | undefined, dimension: Dimension) =>
    of === undefined ? NO_VALUE : `${print(of.low, dimension)} to ${print(of.high, dimension)}`;
  const rows: [string, string, string][] = [
    ['flow', print(fan.flow_m3s, 'flow'), band(spread?.flow_m3s, 'flow')],
    [
      'fan static pressure',
      print(fan.staticPressure_Pa, 'pressure'),
      band(spread?.staticPressure_Pa, 'pressure'),
    ],
    [
      'fan total pressure',
      print(fan.totalPressure_Pa, 'pressure'),
      band(spread?.totalPressure_Pa, 'pressure'),
    ],
    ['speed', print(fan.speed_rpm, 'speed'), ''],
    ['power', print(fan.power_W, 'power'), ''],
    ['current', print(fan.current_A, 'current'), ''],
    ['efficiency', fan.efficiency === null ? NO_VALUE : `${(100 * fan.efficiency).toFixed(0)} %`, ''],
    ['point', fan.stable ? 'stable' : 'UNSTABLE', ''],
  ];
  return htmlTable(
    [
      { head: 'where it runs' },
      { head: 'as drawn', align: 'right' },
      { head: 'in 90 of 100 cases', align: 'right' },
    ],
    rows
      .filter(([, value]) => value !== NO_VALUE)
      .map(([name, value, spreadText]) => ({
        about: `${fan.id} ${name}`,
        cells: [name, value, spreadText],
      })),
  );
}
