import type { Comparison } from '../../core/fan-bench/compare.ts';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { placeLabels } from '../../core/summary/figures/charts/labels.ts';
import type { Label } from '../../core/summary/figures/charts/labels.ts';
import { layPlot, linePath, pixel } from './plot.ts';
import type { Place, Plot } from './plot.ts';

/** What fans are compared by. */
export type CompareBy = 'curves' | 'equal power' | 'lift over power' | 'lift over current' | 'efficiency';

interface Way {
  readonly label: string;
  readonly x: { readonly title: string; readonly dimension: Dimension };
  readonly y: { readonly title: string; readonly dimension: Dimension };
  /** Whether places are single readings rather than a line. */
  readonly single: boolean;
  readonly places: (fan: Comparison['fans'][number]) => readonly Place[];
}

const flow = { title: 'flow through the fan', dimension: 'flow' } as const;
const pressure = { title: 'fan static pressure', dimension: 'pressure' } as const;
const lift = { title: 'lift with the inlet shut', dimension: 'pressure' } as const;

export const COMPARE_WAYS: Readonly<Record<CompareBy, Way>> = {
  curves: {
    label: 'curves, each at its speed',
    x: flow,
    y: pressure,
    single: false,
    places: (fan) => (fan.curve?.points ?? []).map((p): Place => [p.flow_m3s, p.staticPressure_Pa]),
  },
  'equal power': {
    label: 'curves at equal power',
    x: flow,
    y: pressure,
    single: false,
    places: (fan) => (fan.equalPower?.points ?? []).map((p): Place => [p.flow_m3s, p.staticPressure_Pa]),
  },
  'lift over power': {
    label: 'lift over power drawn',
    x: { title: 'power drawn', dimension: 'power' },
    y: lift,
    single: true,
    places: (fan) => fan.lifts.flatMap((p): Place[] => (p.power_W === null ? [] : [[p.power_W, p.lift_Pa]])),
  },
  'lift over current': {
    label: 'lift over current',
    x: { title: 'current', dimension: 'current' },
    y: lift,
    single: true,
    places: (fan) =>
      fan.lifts.flatMap((p): Place[] => (p.current_A === null ? [] : [[p.current_A, p.lift_Pa]])),
  },
  efficiency: {
    label: 'efficiency',
    x: flow,
    y: { title: 'efficiency', dimension: 'fraction' },
    single: false,
    places: (fan) =>
      (fan.curve?.points ?? []).flatMap((p): Place[] =>
        p.efficiency === null ? [] : [[p.flow_m3s, p.efficiency]],
      ),
  },
};

export interface CompareMarks extends Plot {
  readonly fans: readonly CompareMark[];
  readonly labels: readonly Label[];
  /** Names of the fans that have nothing to show here. */
  readonly without: readonly string[];
}

export interface CompareMark {
  readonly id: string;
  readonly path: string;
  readonly dots: readonly { readonly x: number; readonly y: number }[];
  /** Where it runs in the shop. */
  readonly at: { readonly x: number; readonly y: number } | null;
  /** Stroke pattern and shape, which tell fans apart beside their names. */
  readonly look: number;
}

/** Stroke patterns of the fans, in their order. */
export const DASHES = ['none', '9 4', '3 3', '12 3 3 3', '6 2 2 2 2 2'] as const;

export function layComparison(
  { fans }: Comparison,
  by: CompareBy,
  size: { readonly width: number; readonly height: number; readonly units: UnitSystem },
): CompareMarks {
  const way = COMPARE_WAYS[by];
  const shown = fans.map((fan, i) => ({ fan, look: i % DASHES.length, places: way.places(fan) }));
  const some = shown.filter(({ places }) => places.length > 0);
  const ats = by === 'curves' ? some.flatMap(({ fan }) => (fan.inShop?.at ? [fan.inShop.at] : [])) : [];
  const all = some.flatMap(({ places }) => places);
  const frame = layPlot({
    ...size,
    x: { ...way.x, high: Math.max(0, ...all.map(([x]) => x), ...ats.map((a) => a.flow_m3s)) * 1.05 },
    y: {
      ...way.y,
      low: Math.min(0, ...all.map(([, y]) => y)),
      high: Math.max(0, ...all.map(([, y]) => y), ...ats.map((a) => a.staticPressure_Pa)) * 1.08,
    },
  });
  const lines = some.map(({ places }) => places.map((place) => pixel(frame, place)));
  const wanted = some.flatMap(({ fan }, i) => {
    const line = lines[i]!;
    const at = line[way.single ? line.length - 1 : Math.floor(line.length * (0.2 + 0.15 * (i % 4)))];
    return at ? [{ id: fan.id, text: fan.name, at }] : [];
  });
  return {
    ...frame,
    fans: some.map(({ fan, look, places }) => ({
      id: fan.id,
      look,
      path: way.single ? '' : linePath(frame, places),
      dots: way.single ? places.map((place) => pixel(frame, place)) : [],
      at:
        by === 'curves' && fan.inShop?.at
          ? pixel(frame, [fan.inShop.at.flow_m3s, fan.inShop.at.staticPressure_Pa])
          : null,
    })),
    labels: placeLabels(wanted, { lines: way.single ? [] : lines, plot: frame.plot }),
    without: shown.flatMap(({ fan, places }) => (places.length === 0 ? [fan.name] : [])),
  };
}
