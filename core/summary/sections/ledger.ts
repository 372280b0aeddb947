import type { RunResult, SettingResult } from '../../network/solution.ts';
import type { Dimension } from '../../quantities/dimensions.ts';
import { displayUnit, NO_VALUE, printQuantity } from '../../quantities/print.ts';
import { figure, longFigure, LONG_UNIT, plainFigure } from '../figures/charts/columns.ts';
import { marginOf, marginText } from '../figures/charts/status.ts';
import { pieceWord } from '../figures/charts/words.ts';
import { flowOrder } from '../flow-order.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import type { PaperRow } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';

/** Every piece of the setting with the least to spare, from the openings to where the air leaves. */
export function ledgerSection(facts: SummaryFacts): Markup {
  const { governing, units } = facts;
  if (governing === null) return el('p', {}, 'No setting has a result, so that there are no losses to list.');
  const pressure = displayUnit('pressure', units);
  const right = (head: string, unit = '') => ({ head, unit, align: 'right' as const });
  return join(
    el(
      'p',
      {},
      `Setting “${governing.name}”`,
      facts.solution.settings.length > 1 ? ', which has the least to spare of all. ' : '. ',
      'VP is velocity pressure, SP static pressure against the room; the coefficient is loss over VP.',
    ),
    htmlTable(
      [
        { head: 'piece' },
        { head: 'kind' },
        right('diameter', displayUnit('length', units)),
        right('length', LONG_UNIT[units].unit),
        right('velocity', displayUnit('velocity', units)),
        right('VP', pressure),
        right('coeff.'),
        right('friction'),
        right('loss', pressure),
        right('SP after', pressure),
      ],
      rowsOf(governing, facts),
      { class: 'ledger' },
    ),
  );
}

function rowsOf(setting: SettingResult, { units, nameOf }: SummaryFacts): PaperRow[] {
  const print = (si: number | null, dimension: Dimension) => printQuantity(si, dimension, units);
  const node = (id: string) => setting.nodes.find((one) => one.id === id)?.staticPressure_Pa ?? null;
  const done = new Set<string>();
  return flowOrder(setting).flatMap((stop): PaperRow[] => {
    if (stop.kind === 'run') {
      const { run } = stop;
      if (done.has(run.id)) return [];
      done.add(run.id);
      return [
        { group: true, about: `run ${run.id}`, cells: runHead(run, print) },
        ...(run.massFlow_kgs === 0 ? [] : run.pieces).map((piece): PaperRow => ({
          about: `piece ${piece.id}`,
          cells: [
            piece.id,
            pieceWord(piece),
            figure(piece.diameter_m, 'length', units),
            longFigure(piece.length_m, units),
            figure(piece.velocity_ms, 'velocity', units),
            figure(piece.velocityPressure_Pa, 'pressure', units),
            plainFigure(piece.coefficient, 3),
            plainFigure(piece.frictionFactor, 4),
            figure(piece.loss_Pa, 'pressure', units),
            figure(piece.staticPressureAfter_Pa, 'pressure', units),
          ],
        })),
      ];
    }
    const thing = stop.kind === 'fan' ? stop.fan : stop.device;
    const kind = stop.kind === 'fan' ? 'fan' : stop.device.kind;
    const change = stop.kind === 'fan' ? -stop.fan.totalPressure_Pa : stop.device.loss_Pa;
    const named = nameOf(thing.id);
    return [
      {
        about: `thing ${thing.id}`,
        strong: true,
        cells: [
          thing.id,
          named === thing.id ? kind : named,
          ...Array.from({ length: 6 }, () => NO_VALUE),
          figure(change, 'pressure', units),
          figure(node(`${thing.id}.out`), 'pressure', units),
        ],
      },
    ];
  });
}

function runHead(run: RunResult, print: (si: number | null, dimension: Dimension) => string) {
  const name = el('b', {}, run.name === null ? run.id : `${run.id} ${run.name}`);
  const way = ` (${run.from} to ${run.to}): `;
  if (run.massFlow_kgs === 0) return [name, way, 'shut, no flow'];
  const needs = [
    ...(run.requiredVelocity_ms === null ? [] : [print(run.requiredVelocity_ms, 'velocity')]),
    ...(run.requiredFlow_m3s === null ? [] : [print(run.requiredFlow_m3s, 'flow')]),
  ];
  const verdict =
    run.holds === null
      ? null
      : [': ', el('b', {}, run.holds ? 'HOLDS' : 'DOES NOT HOLD'), ` (${marginText(marginOf(run))})`];
  return [
    name,
    way,
    `${print(run.flow_m3s, 'flow')}, ${print(run.velocity_ms, 'velocity')}`,
    needs.length > 0 ? `, needs ${needs.join(' and ')}` : null,
    verdict,
    `; loss ${print(run.lossTotal_Pa, 'pressure')}`,
  ];
}
