import { GRADE_MODELS } from '../../separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS } from '../../separator/pressure-drop.ts';
import { CYCLONE_PROPORTIONS } from '../../catalogue/cyclones.ts';
import type { CompiledDevice } from '../../network/compile.ts';
import type { DeviceResult } from '../../network/solution.ts';
import type { Dimension } from '../../quantities/dimensions.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import { CYCLONE_LETTERS, cycloneFigure } from '../figures/cyclone-figure.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable, pairs } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Child, Markup } from '../markup.ts';

type Print = (si: number | null, dimension: Dimension) => string;

/** Separators with the spread of the models and their drawing, and filters layer by layer. */
export function devicesSection(facts: SummaryFacts): Markup {
  const { governing, shop, units, nameOf } = facts;
  const print: Print = (si, dimension) => printQuantity(si, dimension, units);
  if (shop.devices.length === 0) return el('p', {}, 'The shop has no separator and no filter.');
  return join(
    shop.devices.map((device) => {
      const { id } = device.thing;
      const result = governing?.devices.find((one) => one.id === id) ?? null;
      return [
        el('h3', {}, nameOf(id) === id ? id : `${id}: ${nameOf(id)}`),
        result === null
          ? el('p', {}, 'No setting has a result, so that only its sizes are known.')
          : pairs(figures(result, print)),
        device.built.kind === 'cyclone' ? cyclone(device, result, facts, print) : null,
        device.built.kind === 'filter' ? layers(device, result, print) : null,
      ];
    }),
    governing === null ? null : el('p', { class: 'small' }, `Figures are of setting “${governing.name}”.`),
  );
}

const percent = (share: number, digits: number): string => `${(100 * share).toFixed(digits)} %`;

function figures(device: DeviceResult, print: Print): (readonly [string, Child])[] {
  const model =
    device.model === null
      ? ''
      : Object.hasOwn(CYCLONE_LOSS_MODELS, device.model)
        ? CYCLONE_LOSS_MODELS[device.model as keyof typeof CYCLONE_LOSS_MODELS].label
        : device.model;
  return [
    ['flow', print(device.flow_m3s, 'flow')],
    ['loss', `${print(device.loss_Pa, 'pressure')}${model === '' ? '' : ` (${model})`}`],
    ...(device.inletVelocity_ms === null
      ? []
      : [['inlet velocity', print(device.inletVelocity_ms, 'velocity')] as const]),
    ...(device.catchShare === null ? [] : [['dust caught', percent(device.catchShare, 1)] as const]),
    ...(device.cutSize_m === null
      ? []
      : [['size caught by half', print(device.cutSize_m, 'length')] as const]),
    ...(device.dustIn_kgs > 0 ? [['dust arriving', print(device.dustIn_kgs, 'massFlow')] as const] : []),
  ];
}

function cyclone(
  { thing, built }: CompiledDevice,
  result: DeviceResult | null,
  { units, width, nameOf }: SummaryFacts,
  print: Print,
): Child {
  if (built.kind !== 'cyclone' || thing.kind !== 'cyclone') return null;
  const { geometry } = built;
  const free = thing.proportions === 'free' || !Object.hasOwn(CYCLONE_PROPORTIONS, thing.proportions);
  const row = free ? null : CYCLONE_PROPORTIONS[thing.proportions as keyof typeof CYCLONE_PROPORTIONS];
  const spread = (by: Readonly<Record<string, number>> | null) => Object.entries(by ?? {});
  const losses = spread(result?.lossByModel_Pa ?? null);
  const catches = spread(result?.catchByModel ?? null);
  const tall = Math.min(420, Math.max(280, 84 * (geometry.totalHeight_m / geometry.bodyDiameter_m)));
  return [
    losses.length === 0 && catches.length === 0
      ? null
      : htmlTable(
          [
            { head: 'loss, by model' },
            { head: 'loss', align: 'right' },
            { head: 'catch, by model' },
            { head: 'caught', align: 'right' },
          ],
          Array.from({ length: Math.max(losses.length, catches.length) }, (_, i) => {
            const [lossId, loss] = losses[i] ?? [null, null];
            const [gradeId, share] = catches[i] ?? [null, null];
            const used = (id: string, mine: string | null) => (id === mine ? ' (used)' : '');
            return [
              lossId === null ? '' : `${lossLabel(lossId)}${used(lossId, result?.model ?? null)}`,
              loss === null ? '' : print(loss, 'pressure'),
              gradeId === null ? '' : `${gradeLabel(gradeId)}${used(gradeId, built.gradeModel)}`,
              share === null ? '' : percent(share, 1),
            ];
          }),
        ),
    el(
      'figure',
      {},
      cycloneFigure(geometry, { width, height: tall, units, name: nameOf(thing.id) }),
      el('figcaption', {}, 'Both views in one proportion; all sizes are inside, without the wall.'),
    ),
    htmlTable(
      [
        { head: '' },
        { head: 'size' },
        { head: 'inside', align: 'right' },
        { head: 'over D', align: 'right' },
        { head: row === null ? 'proportions' : `${row.label}, over D`, align: 'right' },
      ],
      CYCLONE_LETTERS.map(({ letter, words, field }) => {
        const ratio = geometry[field] / geometry.bodyDiameter_m;
        const standard = row === null ? null : standardOf(row, field);
        return {
          about: `${thing.id} ${letter}`,
          cells: [
            el('b', {}, letter),
            words,
            print(geometry[field], 'length'),
            ratio.toFixed(3),
            standard === null ? (row === null ? 'own' : '1.000') : standard.toFixed(3),
          ],
        };
      }),
    ),
  ];
}

function standardOf(
  row: (typeof CYCLONE_PROPORTIONS)[keyof typeof CYCLONE_PROPORTIONS],
  field: (typeof CYCLONE_LETTERS)[number]['field'],
): number | null {
  return field === 'bodyDiameter_m' ? null : row[field.replace(/_m$/, '') as 'inletHeight'];
}

const lossLabel = (id: string): string =>
  Object.hasOwn(CYCLONE_LOSS_MODELS, id)
    ? CYCLONE_LOSS_MODELS[id as keyof typeof CYCLONE_LOSS_MODELS].label
    : id;
const gradeLabel = (id: string): string =>
  Object.hasOwn(GRADE_MODELS, id) ? GRADE_MODELS[id as keyof typeof GRADE_MODELS].label : id;

function layers({ built }: CompiledDevice, result: DeviceResult | null, print: Print): Child {
  if (built.kind !== 'filter') return null;
  return htmlTable(
    [
      { head: 'layer' },
      { head: 'medium' },
      { head: 'area', align: 'right' },
      { head: 'cake now', align: 'right' },
      { head: 'face velocity', align: 'right' },
      { head: 'at most', align: 'right' },
      { head: 'clean it at', align: 'right' },
    ],
    built.layers.map(({ medium, area_m2, load_kgm2 }, i) => [
      String(i + 1),
      medium.label,
      print(area_m2, 'area'),
      print(load_kgm2, 'arealDensity'),
      result?.faceVelocity_ms?.[i] === undefined ? NO_VALUE : print(result.faceVelocity_ms[i], 'velocity'),
      print(medium.faceVelocityHigh_ms, 'velocity'),
      print(medium.changeAtPressure_Pa, 'pressure'),
    ]),
  );
}
