import type { Band } from '../../chance/chance.ts';
import type { BenchCurve } from '../../fan-bench/result.ts';
import type { SystemCurve } from '../../network/system-curve.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { el } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { layCurve, sharesIn } from './charts/curve-chart.ts';
import type { CurveMarks, Share } from './charts/curve-chart.ts';
import { HATCH_PATHS } from './charts/hatch.ts';
import { tenth } from './charts/plot-box.ts';
import { SHARE_WORDS } from './charts/words.ts';
import {
  axesOf,
  FAINT,
  GROUND,
  INK,
  labelled,
  legend,
  lineSample,
  PAPER,
  picture,
  stroked,
} from './paper.ts';
import type { LegendEntry } from './paper.ts';

export interface CurveFigureInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly nameOf: (id: string) => string;
  /** Where it runs in 90 of 100 cases; null where no chances were reckoned. */
  readonly runs: { readonly flow_m3s: Band; readonly totalPressure_Pa: Band } | null;
  /** Curve of the fan's tests, for its band; null where the fan is drawn from points. */
  readonly bench: BenchCurve | null;
  /** Stands before the names of patterns, which a page may hold once only. */
  readonly idPrefix: string;
}

const SYSTEM = { width: 2 } as const;
const FAN = { width: 1.6, dash: '8 3' } as const;
const LIMIT = { width: 0.8, dash: '2 2' } as const;

/** What the shop asks at each flow, shared out by hatch, what the fan gives with its band, and where they meet. */
export function curveFigure(
  curve: SystemCurve,
  input: CurveFigureInput,
): { readonly figure: Markup; readonly sentence: string } {
  const { width, height, units, nameOf, idPrefix, runs, bench } = input;
  const shares = sharesIn(curve);
  const entries: LegendEntry[] = [
    { sample: lineSample(SYSTEM), text: 'the shop asks' },
    { sample: lineSample(FAN), text: 'the fan gives' },
    ...(bench === null ? [] : [{ sample: lineSample(LIMIT), text: 'band of the fan, 9 in 10' }]),
    ...(runs === null ? [] : [{ sample: crossSample(), text: 'runs here in 90 of 100 cases' }]),
    ...shares.map((share) => ({ sample: swatch(`${idPrefix}-${share}`), text: SHARE_WORDS[share] })),
  ];
  const key = legend(entries, 62, 4, width - 18);
  const marks = layCurve(curve, {
    width,
    height: height - key.height,
    units,
    overlay: null,
    overlayName: '',
    nameOf,
  });
  const { plot } = marks;
  const clip = `${idPrefix}-plot`;
  const figure = picture(
    { width, height },
    marks.sentence,
    el(
      'defs',
      {},
      shares.map((share) => pattern(share, `${idPrefix}-${share}`)),
      el(
        'clipPath',
        { id: clip },
        el('rect', {
          x: plot.left,
          y: plot.top,
          width: plot.right - plot.left,
          height: plot.bottom - plot.top,
        }),
      ),
    ),
    key.markup,
    el(
      'g',
      { transform: `translate(0 ${key.height})` },
      el(
        'g',
        { 'clip-path': `url(#${clip})` },
        marks.areas.map(({ share, path }) =>
          el('path', { d: path, fill: `url(#${idPrefix}-${share})`, stroke: FAINT, 'stroke-width': 0.5 }),
        ),
      ),
      axesOf(plot, marks),
      el(
        'g',
        { 'clip-path': `url(#${clip})` },
        bench === null ? null : bandLines(curve, bench, marks).map((d) => stroked(d, LIMIT)),
        // a white edge keeps the lines apart from the hatches
        stroked(marks.system, { width: 4, ink: PAPER }),
        stroked(marks.system, SYSTEM),
        stroked(marks.fan, { width: 3.6, ink: PAPER }),
        stroked(marks.fan, FAN),
        runs === null ? null : cross(marks, runs),
      ),
      marks.points.map(({ x, y, stable }) =>
        el('circle', {
          cx: x,
          cy: y,
          r: 4.5,
          fill: stable ? INK : PAPER,
          stroke: stable ? PAPER : INK,
          'stroke-width': 1.2,
        }),
      ),
      labelled(marks.labels),
    ),
  );
  return { figure, sentence: marks.sentence };
}

const pattern = (share: Share, id: string): Markup =>
  el(
    'pattern',
    { id, width: 8, height: 8, patternUnits: 'userSpaceOnUse' },
    el('path', { d: HATCH_PATHS[share], stroke: FAINT, 'stroke-width': 0.8 }),
  );

const swatch = (id: string): Markup =>
  el('rect', {
    x: 0,
    y: 0,
    width: 24,
    height: 11,
    fill: `url(#${id})`,
    stroke: FAINT,
    'stroke-width': 0.6,
  });

const crossSample = (): Markup => stroked('M2 5H22M2 2V8M22 2V8', { width: 1.4 });

/** Bars over the flows and pressures at which it runs in 90 of 100 cases. */
function cross(marks: CurveMarks, runs: NonNullable<CurveFigureInput['runs']>): Markup {
  const [low, at, high] = [runs.flow_m3s.low, runs.flow_m3s.middle, runs.flow_m3s.high].map(marks.x.scale);
  const { totalPressure_Pa: p } = runs;
  const [bottom, middle, top] = [p.low, p.middle, p.high].map(marks.y.scale);
  const d =
    `M${tenth(low!)} ${tenth(middle!)}H${tenth(high!)}M${tenth(low!)} ${tenth(middle! - 4)}V${tenth(middle! + 4)}M${tenth(high!)} ${tenth(middle! - 4)}V${tenth(middle! + 4)}` +
    `M${tenth(at!)} ${tenth(top!)}V${tenth(bottom!)}M${tenth(at! - 4)} ${tenth(top!)}H${tenth(at! + 4)}M${tenth(at! - 4)} ${tenth(bottom!)}H${tenth(at! + 4)}`;
  return el('g', {}, stroked(d, { width: 4, ink: GROUND }), stroked(d, { width: 1.4 }));
}

/** Lower and upper edge of the band of the tests, laid over what the fan gives in the shop at the same flow. */
function bandLines(curve: SystemCurve, bench: BenchCurve, marks: CurveMarks): string[] {
  const edge = (of: (point: BenchCurve['points'][number]) => number): string => {
    const places = curve.points.flatMap(({ flow_m3s, fanTotal_Pa, fanStatic_Pa }) => {
      if (fanTotal_Pa === null || fanStatic_Pa === null) return [];
      const share = shareAt(bench, flow_m3s, of);
      const pressure_Pa = fanTotal_Pa - fanStatic_Pa + share * fanStatic_Pa;
      return [`${tenth(marks.x.scale(flow_m3s))} ${tenth(marks.y.scale(pressure_Pa))}`];
    });
    return places.length > 1 ? `M${places.join('L')}` : '';
  };
  return [edge((point) => point.low_Pa), edge((point) => point.high_Pa)];
}

/** An edge of the band over the curve at a flow; in a straight line between the points of the bench. */
function shareAt(
  { points }: BenchCurve,
  flow_m3s: number,
  of: (point: BenchCurve['points'][number]) => number,
): number {
  const share = (i: number): number => {
    const point = points[i]!;
    return point.staticPressure_Pa > 0 ? of(point) / point.staticPressure_Pa : 1;
  };
  const i = points.findIndex((point) => point.flow_m3s >= flow_m3s);
  if (i < 0) return share(points.length - 1);
  if (i === 0) return share(0);
  const [a, b] = [points[i - 1]!.flow_m3s, points[i]!.flow_m3s];
  return share(i - 1) + ((share(i) - share(i - 1)) * (flow_m3s - a)) / (b - a);
}
