import { line } from 'd3-shape';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { axis, titleFor } from '../../core/summary/figures/charts/axes.ts';
import type { Axis } from '../../core/summary/figures/charts/axes.ts';
import { tenth } from '../../core/summary/figures/charts/plot-box.ts';
import type { PlotBox } from '../../core/summary/figures/charts/plot-box.ts';
import type { UpkeepResult } from '../../core/upkeep/result.ts';
import { binTeeth } from './bin-heaps.ts';
import type { BinHeap } from './bin-heaps.ts';

export interface PictureInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly heaps: readonly BinHeap[];
  /** Share of its volume at which a bin is emptied. */
  readonly full: number;
}

export interface HoursLine {
  readonly id: string;
  readonly path: string;
}

export interface Panel {
  readonly kind: 'flow' | 'drop' | 'bin';
  readonly plot: PlotBox;
  readonly y: Axis;
  readonly yTitle: string;
  readonly lines: readonly HoursLine[];
}

export interface HoursPicture {
  readonly x: Axis;
  readonly panels: readonly Panel[];
  /** Bins that are emptied too often to be drawn. */
  readonly tooOften: readonly string[];
  /** Places of cleanings, and whether there is room for the word at each [px]. */
  readonly cleanings: readonly { readonly at: number; readonly word: boolean }[];
}

const MARGIN = { left: 62, right: 18, top: 18, bottom: 38 } as const;
const GAP = 16;
/** Room of each panel beside the others. */
const SHARES = { flow: 5, drop: 3, bin: 2 } as const;
/** Teeth narrower than this are a blot [px]. */
const NARROWEST_TOOTH = 5;
/** Room that the word at a cleaning takes [px]. */
const WORD = 52;

/** A panel before it has its room; places are hours and SI values. */
interface Wanted {
  readonly kind: Panel['kind'];
  readonly title: string;
  readonly dimension: Dimension;
  readonly domain: readonly [number, number];
  readonly lines: readonly { readonly id: string; readonly places: readonly (readonly [number, number])[] }[];
}

/** Flow, filter and bins over the same hours, one under the other. */
export function layHours(result: UpkeepResult, input: PictureInput): HoursPicture {
  const { width, height, units, heaps, full } = input;
  const [left, right] = [MARGIN.left, Math.max(MARGIN.left + 60, width - MARGIN.right)];
  const x = axis({
    domain: [0, result.reached_h],
    range: [left, right],
    dimension: 'coefficient',
    units,
    side: 'bottom',
  });
  const drawn = heaps.filter((heap) => !isBlot(heap, full, right - left));
  const wanted = [flowPanel(result), dropPanel(result), binPanel(result, drawn, full)].filter(
    (panel) => panel !== null,
  );
  const room = Math.max(60 * wanted.length, height - MARGIN.top - MARGIN.bottom - GAP * (wanted.length - 1));
  const shares = wanted.reduce((sum, { kind }) => sum + SHARES[kind], 0);
  let top: number = MARGIN.top;
  const panels = wanted.map(({ kind, title, dimension, domain, lines }): Panel => {
    const bottom = top + (room * SHARES[kind]) / shares;
    const plot = { left, right, top: tenth(top), bottom: tenth(bottom) };
    top = bottom + GAP;
    const y = axis({
      domain,
      range: [plot.bottom, plot.top],
      dimension,
      units,
      side: 'left',
      nice: kind !== 'bin',
    });
    const draw = line<readonly [number, number]>(
      ([hours]) => tenth(x.scale(hours)),
      ([, si]) => tenth(y.scale(si)),
    );
    return {
      kind,
      plot,
      y,
      yTitle: titleFor(
        [`${title} [${y.unit}]`, `${kind} [${y.unit}]`, `[${y.unit}]`],
        plot.bottom - plot.top,
      ),
      lines: lines.map(({ id, places }) => ({ id, path: draw(places) ?? '' })),
    };
  });
  const tooOften = heaps.filter((heap) => !drawn.includes(heap)).map(({ id }) => id);
  return { x, panels, tooOften, cleanings: cleaningsOf(result, x) };
}

function cleaningsOf({ events }: UpkeepResult, x: Axis): HoursPicture['cleanings'] {
  const hours = [...new Set(events.filter(({ kind }) => kind === 'cleaned').map(({ time_h }) => time_h))];
  let last = -Infinity;
  return hours.map((time_h) => {
    const at = tenth(x.scale(time_h));
    const word = at - last >= WORD;
    if (word) last = at;
    return { at, word };
  });
}

/** A fall of a few hundredths has to be seen, and one of a thousandth must not look like a collapse. */
const LEAST_SPAN = 0.2;

function flowPanel({ timeline, duty }: UpkeepResult): Wanted {
  const lines = duty.map(({ setting }) => ({
    id: setting,
    places: timeline.flatMap(({ time_h, settings }) => {
      const state = settings.find(({ name }) => name === setting);
      return state ? [[time_h, state.flow_m3s] as const] : [];
    }),
  }));
  const values = lines.flatMap(({ places }) => places.map(([, value]) => value));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(most - least, LEAST_SPAN * most);
  const domain = [Math.max(0, most - 1.3 * span), most + 0.1 * span || 1] as const;
  return { kind: 'flow', title: 'flow', dimension: 'flow', domain, lines };
}

function dropPanel({ timeline }: UpkeepResult): Wanted | null {
  const lines = (timeline[0]?.drops ?? []).map(({ filter }, f) => ({
    id: filter,
    places: timeline.map(({ time_h, drops }) => [time_h, drops[f]!.drop_Pa] as const),
  }));
  if (lines.length === 0) return null;
  const most = Math.max(...lines.flatMap(({ places }) => places.map(([, value]) => value)));
  return {
    kind: 'drop',
    title: 'filter drop',
    dimension: 'pressure',
    domain: [0, most > 0 ? most : 1],
    lines,
  };
}

/** Whether a bin is emptied so often that its teeth run into each other. */
const isBlot = ({ heap }: BinHeap, full: number, width: number) =>
  ((heap.at(-1) ?? 0) / full) * NARROWEST_TOOTH > width;

function binPanel({ timeline }: UpkeepResult, heaps: readonly BinHeap[], full: number): Wanted | null {
  if (heaps.length === 0) return null;
  const hours = timeline.map(({ time_h }) => time_h);
  return {
    kind: 'bin',
    title: 'bin filled',
    dimension: 'fraction',
    domain: [0, 1],
    lines: heaps.map(({ id, heap }) => ({ id, places: binTeeth(hours, heap, full) })),
  };
}
