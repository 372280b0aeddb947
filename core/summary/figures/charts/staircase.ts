import { line } from 'd3-shape';
import type { UnitSystem } from '../../../quantities/dimensions.ts';
import { printQuantity } from '../../../quantities/print.ts';
import { axis, textWidth, titleFor } from './axes.ts';
import type { Axis } from './axes.ts';
import { LONG_UNIT } from './columns.ts';
import { placeLabels } from './labels.ts';
import type { Label, Point } from './labels.ts';
import { plotBox, tenth } from './plot-box.ts';
import type { PlotBox } from './plot-box.ts';
import { dropOf, stepTitle, worstSteps } from './stair-steps.ts';
import type { Stair, StairStep } from './stair-steps.ts';
import { sentenceCase } from './words.ts';

/** What runs along the foot of the staircase: one place for each piece, or the length of the way. */
export type StairFoot = 'steps' | 'length';

export interface StairInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly foot: StairFoot;
  /** Name of a run or device by id. */
  readonly nameOf: (id: string) => string;
}

/** Where a step stands, for the pointer and the highlight. */
export interface StepBox {
  readonly step: StairStep;
  readonly x: number;
  readonly width: number;
  readonly hitX: number;
  readonly hitWidth: number;
}

export interface StopBand {
  readonly id: string;
  readonly kind: 'run' | 'device' | 'fan';
  readonly x: number;
  readonly width: number;
  /** Empty where it would not fit. */
  readonly text: string;
}

export interface StaircaseMarks {
  readonly width: number;
  readonly height: number;
  readonly plot: PlotBox;
  readonly y: Axis;
  /** Null where the foot counts steps. */
  readonly x: Axis | null;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly zero: number;
  readonly total: string;
  readonly static: string;
  readonly boxes: readonly StepBox[];
  readonly bands: readonly StopBand[];
  readonly labels: readonly Label[];
  /** The picture in a sentence. */
  readonly sentence: string;
}

const MARGIN = { left: 58, right: 14, top: 12, bottom: 34 } as const;
const LABELLED_DROPS = 4;
/** Narrowest place that a pointer can hit [px]. */
const LEAST_HIT = 8;

/** Lays the staircase out: pressures to heights, steps to places, and the lettering where nothing is in its way. */
export function layStaircase(stair: Stair, input: StairInput): StaircaseMarks {
  const { width, height, units, foot } = input;
  const plot = plotBox(width, height, MARGIN);
  const { steps } = stair;
  const all = steps.flatMap((s) => [s.totalBefore_Pa, s.totalAfter_Pa, s.staticBefore_Pa, s.staticAfter_Pa]);
  const low = Math.min(0, ...all);
  const high = Math.max(0, ...all);
  const room = (high - low || 1) * 0.06;
  const y = axis({
    domain: [low - room, high + 2.5 * room],
    range: [plot.bottom, plot.top],
    dimension: 'pressure',
    units,
    side: 'left',
  });

  const places = footPlaces(steps, foot);
  const end = places.at(-1) || 1;
  const across = (at: number) => plot.left + (at / end) * (plot.right - plot.left);
  const x = foot === 'length' && end > 0 ? lengthAxis(end, plot, units) : null;

  const totals: Point[] = steps.length > 0 ? [{ x: across(0), y: y.scale(steps[0]!.totalBefore_Pa) }] : [];
  const statics: Point[] = steps.length > 0 ? [{ x: across(0), y: y.scale(steps[0]!.staticBefore_Pa) }] : [];
  const boxes = steps.map((step, i): StepBox => {
    const from = across(places[i]!);
    const to = across(places[i + 1]!);
    totals.push({ x: to, y: y.scale(step.totalAfter_Pa) });
    statics.push({ x: to, y: y.scale(step.staticAfter_Pa) });
    const hitWidth = Math.max(to - from, LEAST_HIT);
    return { step, x: from, width: to - from, hitX: (from + to - hitWidth) / 2, hitWidth };
  });
  const path = line<Point>(
    (p) => tenth(p.x),
    (p) => tenth(p.y),
  );
  const zero = y.scale(0);
  return {
    width,
    height,
    plot,
    y,
    x,
    xTitle:
      foot === 'length' ? `length along the way [${LONG_UNIT[units].unit}]` : 'pieces in the order of flow',
    yTitle: titleFor(
      [`pressure, room = 0 [${y.unit}]`, `pressure [${y.unit}]`, `[${y.unit}]`],
      plot.bottom - plot.top,
    ),
    zero,
    total: path(totals) ?? '',
    static: path(statics) ?? '',
    boxes,
    bands: stair.stops.map((stop) => {
      const from = across(places[stop.from]!);
      const to = across(places[stop.to]!);
      const fits = [input.nameOf(stop.id), stop.id].find((text) => textWidth(text) + 4 <= to - from);
      return { id: stop.id, kind: stop.kind, x: from, width: to - from, text: fits ?? '' };
    }),
    labels: placeLabels(wanted(stair, boxes, y, units), {
      lines: [totals, statics, zeroLine(plot, zero)],
      plot,
    }),
    sentence: sentence(stair, units, input.nameOf),
  };
}

const zeroLine = (plot: PlotBox, zero: number): Point[] => [
  { x: plot.left, y: zero },
  { x: plot.right, y: zero },
];

/** Place of each boundary between steps along the foot. */
function footPlaces(steps: readonly StairStep[], foot: StairFoot): number[] {
  const places = [0];
  for (const step of steps) places.push(places.at(-1)! + (foot === 'length' ? step.length_m : 1));
  return places;
}

/** Ticks in metres or feet, as the lengths of a run are told. */
function lengthAxis(end_m: number, plot: PlotBox, units: UnitSystem): Axis {
  const { perMetre, unit } = LONG_UNIT[units];
  const plain = axis({
    domain: [0, end_m * perMetre],
    range: [plot.left, plot.right],
    dimension: 'coefficient',
    units,
    side: 'bottom',
  });
  return { ...plain, unit };
}

/** Lettering of the largest drops and of each fan's rise. */
function wanted(stair: Stair, boxes: readonly StepBox[], y: Axis, units: UnitSystem) {
  const drops = worstSteps(stair, LABELLED_DROPS);
  const rises = stair.steps.filter((step) => step.kind === 'fan');
  return [...rises, ...drops].map((step) => {
    const box = boxes.find((b) => b.step === step)!;
    const size = printQuantity(Math.abs(dropOf(step)), 'pressure', units);
    return {
      id: step.id,
      text: `${sentenceCase(step.word)} ${dropOf(step) < 0 ? '+' : '-'}${size}`,
      at: { x: box.x + box.width / 2, y: y.scale((step.totalBefore_Pa + step.totalAfter_Pa) / 2) },
    };
  });
}

function sentence(stair: Stair, units: UnitSystem, nameOf: (id: string) => string): string {
  const { steps } = stair;
  if (steps.length === 0) return 'No air moves.';
  const print = (si: number) => printQuantity(si, 'pressure', units);
  const lowest = Math.min(...steps.map((s) => s.staticAfter_Pa));
  const drops = worstSteps(stair, 3).map((s) => `${stepTitle(s)} ${print(dropOf(s))}`);
  const rises = steps
    .filter((s) => s.kind === 'fan')
    .map((s) => `${nameOf(s.id)} raises it by ${print(-dropOf(s))}`);
  return [
    `Total pressure from the room drops most in: ${drops.join(', ')}.`,
    ...(rises.length > 0 ? [`${sentenceCase(rises.join(', '))}.`] : []),
    `Lowest static pressure ${print(lowest)}.`,
  ].join(' ');
}
