import type { UnitSystem } from '../../core/quantities/dimensions.ts';

/** A mark on a ruler; a heavy one carries a label. */
export interface Tick {
  readonly at_m: number;
  readonly label: string | null;
}

interface RulerUnit {
  readonly name: string;
  readonly size_m: number;
  /** Spacing of labels in this unit, each with the number of spaces between two of them. */
  readonly steps: readonly (readonly [step: number, parts: number])[];
}

export const RULER_UNITS: Readonly<Record<UnitSystem, RulerUnit>> = {
  si: {
    name: 'm',
    size_m: 1,
    steps: [
      [0.1, 10],
      [0.2, 4],
      [0.5, 5],
      [1, 10],
      [2, 4],
      [5, 5],
      [10, 10],
      [20, 4],
      [50, 5],
    ],
  },
  us: {
    name: 'ft',
    size_m: 0.3048,
    steps: [
      [0.25, 3],
      [0.5, 6],
      [1, 12],
      [2, 4],
      [5, 5],
      [10, 10],
      [20, 4],
      [50, 5],
      [100, 10],
    ],
  },
};
/** Labels closer than this run into each other [px]. */
const LEAST_LABEL_PX = 64;
/** More marks than this are of no use to anybody. */
const MOST_TICKS = 2000;

/** Marks of a ruler over a span of the plan. */
export function rulerTicks(from_m: number, to_m: number, pixelsPerMetre: number, units: UnitSystem): Tick[] {
  const unit = RULER_UNITS[units];
  const pixels = unit.size_m * pixelsPerMetre;
  const [step, parts] = unit.steps.find(([size]) => size * pixels >= LEAST_LABEL_PX) ?? unit.steps.at(-1)!;
  const part = step / parts;
  const first = Math.ceil(from_m / unit.size_m / part - 1e-9);
  const last = Math.min(Math.floor(to_m / unit.size_m / part + 1e-9), first + MOST_TICKS);
  const ticks: Tick[] = [];
  for (let i = first; i <= last; i++) {
    const label = i % parts === 0 ? String(Math.round(i * part * 100) / 100 + 0) : null;
    ticks.push({ at_m: i * part * unit.size_m + 0, label });
  }
  return ticks;
}

/** A bar of an even length that is at most `longest_px` long. */
export function scaleBar(
  pixelsPerMetre: number,
  units: UnitSystem,
  longest_px: number,
): { readonly length_m: number; readonly width_px: number; readonly label: string } {
  const { name, size_m, steps } = RULER_UNITS[units];
  const fits = steps.filter(([step]) => step * size_m * pixelsPerMetre <= longest_px);
  const [step] = fits.at(-1) ?? steps[0]!;
  const length_m = step * size_m;
  return { length_m, width_px: length_m * pixelsPerMetre, label: `${step} ${name}` };
}
