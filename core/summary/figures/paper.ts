import { el } from '../markup.ts';
import type { Child, Markup } from '../markup.ts';
import type { Axis } from './charts/axes.ts';
import { TEXT, textWidth } from './charts/axes.ts';
import type { Label } from './charts/labels.ts';
import type { PlotBox } from './charts/plot-box.ts';

/** Greys of the paper: nothing is told by colour, and by tone alone nothing either. */
export const INK = '#000';
export const FAINT = '#777';
export const GROUND = '#ddd';
export const PAPER = '#fff';

/** CSS pixels in a metre of paper; figures are drawn in them and printed at their own size. */
export const PX_PER_M = 96 / 0.0254;

export const FONT = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

/** A whole picture of a size in pixels, with its meaning in words for who cannot see it. */
export function picture(
  size: { readonly width: number; readonly height: number },
  says: string,
  ...children: readonly Child[]
): Markup {
  const { width, height } = size;
  return el(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${Math.round(width)} ${Math.round(height)}`,
      width: Math.round(width),
      height: Math.round(height),
      role: 'img',
      'aria-label': says,
      'font-family': FONT,
      'font-size': TEXT.height,
      fill: 'none',
      'stroke-linejoin': 'round',
    },
    ...children,
  );
}

export interface LetterOptions {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  /** Paper behind the letters, so that lines do not run through them. */
  readonly clear?: boolean;
  readonly turn_deg?: number;
  readonly size?: number;
}

/** A line of letters; `y` is its base line. */
export function letters(x: number, y: number, text: string, options: LetterOptions = {}): Markup {
  const { anchor = 'start', bold = false, clear = false, turn_deg = 0, size = null } = options;
  return el(
    'text',
    {
      x,
      y,
      fill: INK,
      'text-anchor': anchor === 'start' ? null : anchor,
      'font-weight': bold ? 'bold' : null,
      'font-size': size,
      stroke: clear ? PAPER : null,
      'stroke-width': clear ? 3 : null,
      'paint-order': clear ? 'stroke' : null,
      transform: turn_deg === 0 ? null : `rotate(${turn_deg} ${round(x)} ${round(y)})`,
    },
    text,
  );
}

const round = (px: number): number => Math.round(px * 100) / 100;

export interface Stroke {
  readonly width?: number;
  readonly dash?: string;
  readonly ink?: string;
}

export const stroked = (d: string, { width = 1, dash, ink = INK }: Stroke = {}): Markup =>
  el('path', { d, stroke: ink, 'stroke-width': width, 'stroke-dasharray': dash ?? null });

export const straight = (x1: number, y1: number, x2: number, y2: number, stroke: Stroke = {}): Markup =>
  stroked(`M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`, stroke);

export interface AxesInput {
  readonly x: Axis | null;
  readonly y: Axis;
  readonly xTitle: string;
  readonly yTitle: string;
}

/** Frame, grid, ticks and titles of a chart. */
export function axesOf(plot: PlotBox, { x, y, xTitle, yTitle }: AxesInput): Markup {
  const { left, right, top, bottom } = plot;
  const middle = (top + bottom) / 2;
  return el(
    'g',
    {},
    y.ticks.map(({ at, text }) => [
      straight(left, at, right, at, { width: 0.4, ink: FAINT }),
      letters(left - 5, at + 4, text, { anchor: 'end' }),
    ]),
    (x?.ticks ?? []).map(({ at, text }) => [
      straight(at, bottom, at, bottom + 4, { width: 0.8 }),
      letters(at, bottom + 15, text, { anchor: 'middle' }),
    ]),
    el('rect', {
      x: left,
      y: top,
      width: right - left,
      height: bottom - top,
      stroke: INK,
      'stroke-width': 0.8,
    }),
    xTitle === '' ? null : letters((left + right) / 2, bottom + 30, xTitle, { anchor: 'middle' }),
    letters(11, middle, yTitle, { anchor: 'middle', turn_deg: -90 }),
  );
}

/** Placed lettering with a thin line to what it is about. */
export const labelled = (labels: readonly Label[]): Markup =>
  el(
    'g',
    {},
    labels.map(({ at, leader, x, y, text }) => [
      straight(at.x, at.y, leader.x, leader.y, { width: 0.6 }),
      el('circle', { cx: at.x, cy: at.y, r: 1.6, fill: INK }),
      letters(x, y, text, { bold: true, clear: true }),
    ]),
  );

export interface LegendEntry {
  /** Drawn in a box of 24 by 10. */
  readonly sample: Markup;
  readonly text: string;
}

const SAMPLE = 24;
const LINE = 16;

/** Samples with their words in as many lines as the width asks for; gives its height too. */
export function legend(
  entries: readonly LegendEntry[],
  left: number,
  top: number,
  right: number,
): { readonly markup: Markup; readonly height: number } {
  let x = left;
  let y = top;
  const placed = entries.map(({ sample, text }) => {
    const width = SAMPLE + 6 + textWidth(text) + 14;
    if (x > left && x + width > right) {
      x = left;
      y += LINE;
    }
    const at = { x, y };
    x += width;
    return el(
      'g',
      { transform: `translate(${round(at.x)} ${round(at.y)})` },
      sample,
      letters(SAMPLE + 6, 9, text),
    );
  });
  return { markup: el('g', {}, placed), height: entries.length > 0 ? y - top + LINE : 0 };
}

/** A stroke as a sample of a legend. */
export const lineSample = (stroke: Stroke): Markup => straight(0, 5, SAMPLE, 5, stroke);
