import { DUST_CLASSES } from '../../catalogue/dusts.ts';
import { BASIS_WORDS } from '../basis-words.ts';
import { dustOf, portDustRate, portFlowNeed } from '../../network/port-dust.ts';
import type { ThingOf } from '../../document/schema-things.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import type { Dimension } from '../../quantities/dimensions.ts';
import { htmlTable, pairs } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Child, Markup } from '../markup.ts';
import type { SummaryFacts } from '../facts.ts';

/** What the shop is to do, and what the figures take for granted: air, dusts and the velocities that they need. */
export function jobSection({ document, solution, units }: SummaryFacts): Markup {
  const print = (si: number | null, dimension: Dimension, digits?: number) =>
    printQuantity(si, dimension, units, digits === undefined ? {} : { digits });
  const { air } = solution;
  const { options } = document;
  const ports = document.things.filter((thing): thing is ThingOf<'port'> => thing.kind === 'port');
  const dusts = [...new Set(ports.flatMap(({ dust }) => (dust === undefined ? [] : [dust])))];
  const rows: (readonly [string, Child])[] = [
    ['air', `${print(air.density_kgm3, 'density', 4)}${air.pressure_Pa === null ? ', held constant' : ''}`],
    ...(air.pressure_Pa === null
      ? []
      : [
          [
            'weather',
            `${print(air.pressure_Pa, 'pressure', 4)} absolute, ${print(air.temperature_K, 'temperature')}`,
          ] as const,
        ]),
    [
      'density along a duct',
      options.compressible ? 'follows the pressure there' : 'is that of the room everywhere',
    ],
    [
      'dust carried',
      options.solidsLoss ? 'adds to the loss of what it passes' : 'is not counted in the losses',
    ],
  ];
  return join(
    document.note === undefined ? null : el('p', {}, document.note),
    pairs(rows),
    ports.length === 0
      ? el('p', {}, 'No port takes any dust.')
      : htmlTable(
          [
            { head: 'port' },
            { head: 'dust' },
            { head: 'dust made', align: 'right' },
            { head: 'flow asked', align: 'right' },
            { head: 'velocity asked', align: 'right' },
          ],
          ports.map((port) => {
            const rate = portDustRate(port);
            const velocity =
              port.needs?.velocity?.si ??
              (port.dust === undefined ? null : dustOf(document, port.dust).requiredVelocity_ms);
            return {
              about: port.id,
              cells: [
                port.name === undefined ? port.id : `${port.id}: ${port.name}`,
                port.dust === undefined ? NO_VALUE : dustOf(document, port.dust).label,
                rate > 0 ? print(rate, 'massFlow') : NO_VALUE,
                print(portFlowNeed(port), 'flow'),
                print(velocity, 'velocity'),
              ],
            };
          }),
        ),
    dusts.length === 0
      ? null
      : [
          el('h3', {}, 'Velocities that dusts need'),
          htmlTable(
            [
              { head: 'dust' },
              { head: 'in a duct', align: 'right' },
              { head: 'after a separator', align: 'right' },
              { head: 'median size', align: 'right' },
              { head: 'can burn' },
              { head: 'where the velocity comes from' },
            ],
            dusts.map((id) => {
              const dust = dustOf(document, id);
              const own = document.dusts.some((one) => one.id === id);
              const row = own ? null : DUST_CLASSES[id as keyof typeof DUST_CLASSES];
              return {
                about: `dust ${id}`,
                cells: [
                  dust.label,
                  print(dust.requiredVelocity_ms, 'velocity'),
                  print(dust.fineVelocity_ms, 'velocity'),
                  print(dust.medianSize_m, 'length'),
                  dust.combustible ? 'yes' : 'not said to',
                  row === null ? 'given in this document' : `${row.source} (${BASIS_WORDS[row.basis]})`,
                ],
              };
            }),
          ),
          el(
            'p',
            { class: 'small' },
            'A run that rises may need the upper end of what is known for its dust; keep a margin there and in hose.',
          ),
        ],
  );
}
