import { line } from 'd3-shape';
import type { Dimension, UnitSystem } from '../../quantities/dimensions.ts';
import type { UpkeepPoint, UpkeepResult } from '../../upkeep/result.ts';
import { el } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { axis } from './charts/axes.ts';
import type { Axis } from './charts/axes.ts';
import { tenth } from './charts/plot-box.ts';
import type { PlotBox } from './charts/plot-box.ts';
import { axesOf, INK, legend, letters, lineSample, picture, straight, stroked } from './paper.ts';
import type { Stroke } from './paper.ts';

export interface UpkeepFigureInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly nameOf: (id: string) => string;
}

/** Lines that are told apart without colour; more than these would not be. */
const STROKES: readonly Stroke[] = [
  { width: 1.8 },
  { width: 1.4, dash: '8 3' },
  { width: 1.4, dash: '3 2' },
  { width: 1.4, dash: '9 3 2 3' },
  { width: 1.8, dash: '1 3' },
  { width: 0.8 },
];
const MARGIN = { left: 62, right: 16, top: 14, bottom: 38 } as const;
const GAP = 26;

interface Series {
  readonly name: string;
  readonly of: (point: UpkeepPoint) => number | null;
}

/** Flow in each setting above, what each filter drops below, over running hours; cleanings stand as upright lines. */
export function upkeepFigure(result: UpkeepResult, input: UpkeepFigureInput): Markup | null {
  const { width, height, units, nameOf } = input;
  const { timeline } = result;
  if (timeline.length < 2) return null;
  const flows = result.duty.map(({ setting }): Series => ({
    name: `flow, ${setting}`,
    of: (point) => point.settings.find(({ name }) => name === setting)?.flow_m3s ?? null,
  }));
  const drops = (timeline[0]?.drops ?? []).map(({ filter }): Series => ({
    name: `drop of ${nameOf(filter)}`,
    of: (point) => point.drops.find((drop) => drop.filter === filter)?.drop_Pa ?? null,
  }));
  const shown = (series: readonly Series[]) => series.slice(0, STROKES.length);
  const panels = [
    { series: shown(flows), dimension: 'flow', title: 'flow' },
    { series: shown(drops), dimension: 'pressure', title: 'drop' },
  ].filter(({ series }) => series.length > 0) as readonly {
    series: readonly Series[];
    dimension: Dimension;
    title: string;
  }[];
  const key = legend(
    panels.flatMap(({ series }) =>
      series.map(({ name }, i) => ({ sample: lineSample(STROKES[i]!), text: name })),
    ),
    MARGIN.left,
    4,
    width - MARGIN.right,
  );
  const top = key.height + MARGIN.top;
  const each = (height - top - MARGIN.bottom - GAP * (panels.length - 1)) / panels.length;
  const plots = panels.map((_, i): PlotBox => ({
    left: MARGIN.left,
    right: width - MARGIN.right,
    top: top + i * (each + GAP),
    bottom: top + i * (each + GAP) + each,
  }));
  const x = axis({
    domain: [0, result.reached_h],
    range: [MARGIN.left, width - MARGIN.right],
    dimension: 'coefficient',
    units,
    side: 'bottom',
  });
  const cleaned = [
    ...new Set(result.events.filter(({ kind }) => kind === 'cleaned').map(({ time_h }) => time_h)),
  ];
  return picture(
    { width, height },
    result.sentences.join(' '),
    key.markup,
    panels.map(({ series, dimension, title }, i) => {
      const plot = plots[i]!;
      const last = i === panels.length - 1;
      const y = axis({
        domain: span(series, timeline),
        range: [plot.bottom, plot.top],
        dimension,
        units,
        side: 'left',
        nice: true,
      });
      return el(
        'g',
        {},
        axesOf(plot, {
          x: last ? x : { ...x, ticks: x.ticks.map((tick) => ({ ...tick, text: '' })) },
          y,
          xTitle: last ? 'running hours [h]' : '',
          yTitle: `${title} [${y.unit}]`,
        }),
        cleaned.map((hours) =>
          straight(x.scale(hours), plot.top, x.scale(hours), plot.bottom, { width: 0.8, dash: '2 3' }),
        ),
        series.map((one, k) => stroked(pathOf(one, timeline, x, y), { ...STROKES[k]!, ink: INK })),
        i === 0
          ? cleaned
              .slice(0, 6)
              .map((hours) => letters(x.scale(hours), plot.top - 3, 'cleaned', { anchor: 'middle', size: 9 }))
          : null,
      );
    }),
  );
}

/** Number of settings and filters that the chart has no line for. */
export const leftOutOf = (result: UpkeepResult): number =>
  Math.max(0, result.duty.length - STROKES.length) +
  Math.max(0, (result.timeline[0]?.drops.length ?? 0) - STROKES.length);

function span(series: readonly Series[], timeline: readonly UpkeepPoint[]): [number, number] {
  const values = timeline.flatMap((point) => series.flatMap(({ of }) => of(point) ?? []));
  const high = Math.max(...values);
  return [0, high > 0 ? high * 1.08 : 1];
}

function pathOf({ of }: Series, timeline: readonly UpkeepPoint[], x: Axis, y: Axis): string {
  return (
    line<UpkeepPoint>(
      (point) => tenth(x.scale(point.time_h)),
      (point) => tenth(y.scale(of(point)!)),
    ).defined((point) => of(point) !== null)(timeline) ?? ''
  );
}
