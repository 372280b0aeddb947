import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { holePlateFlow } from '../../../core/fan/tests/hole-plate.ts';
import { normalDraws } from '../../../core/quantities/random.ts';
import { brentRoot } from '../../../core/fan/root.ts';

/** Room of the made-up tests: density alone, so that nothing is compressed. */
export const DENSITY_KGM3 = 1.2;

/** A fan whose curve is known: fan static pressure over flow at one speed and 1.2 kg/m3. */
export interface KnownFan {
  readonly wheel_m: number;
  readonly outlet_m: number;
  readonly speed_rpm: number;
  readonly pressure_Pa: (flow_m3s: number) => number;
  readonly freeFlow_m3s: number;
}

/** A radial fan that is not of the catalogue's shape: a polynomial with a flat top, drawn by hand. */
export const KNOWN_FAN: KnownFan = {
  wheel_m: 0.2,
  outlet_m: 0.1,
  speed_rpm: 6500,
  freeFlow_m3s: 0.3,
  pressure_Pa: (flow) => {
    const x = flow / 0.3;
    return 3000 * (1 - 0.1 * x + 0.25 * x ** 2 - 0.95 * x ** 3 - 0.2 * x ** 4);
  },
};

export type Part = Record<string, unknown>;

/** A document with these fans and nothing else. */
export function shopWith(fans: readonly Part[], more: Part = {}): ShopDocument {
  const read = readValue(
    {
      format: 'chipdraft-shop',
      version: 2,
      name: 'bench',
      air: { kind: 'given', density: DENSITY_KGM3, viscosity: 1.81e-5 },
      options: { compressible: false },
      things: [],
      runs: [],
      fans,
      ...more,
    },
    { allowIncomplete: true },
  );
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.document;
}

export const design = (readings: readonly Part[], more: Part = {}): Part => ({
  id: 'F1',
  type: 'radial',
  blading: 'backward',
  wheelDiameter: KNOWN_FAN.wheel_m,
  outletDiameter: KNOWN_FAN.outlet_m,
  readings,
  ...more,
});

/** Where a fan runs behind a plate, its speed changed by a share, and what a perfect gauge would read. */
export function behindPlate(fan: KnownFan, hole_m: number, C: number, speedShare = 1) {
  const passes = (suction_Pa: number) =>
    holePlateFlow({
      hole_m,
      holes: 1,
      dischargeCoefficient: C,
      suction_Pa,
      frontPipe_m: null,
      backPipe_m: null,
      density_kgm3: DENSITY_KGM3,
      roomPressure_Pa: null,
    }) / DENSITY_KGM3;
  const gives = (flow: number) => speedShare ** 2 * fan.pressure_Pa(flow / speedShare);
  const suction_Pa = brentRoot((p) => p - gives(passes(p)), 1e-6, speedShare ** 2 * fan.pressure_Pa(0) * 1.2);
  return { suction_Pa, flow_m3s: passes(suction_Pa) };
}

export interface TestSeries {
  readonly holes_m: readonly number[];
  readonly seed: number;
  /** One standard error of each reading. */
  readonly errors: {
    readonly pressure_Pa: number;
    readonly hole_m: number;
    readonly speed: number;
    readonly C: number;
    /** Of each plate against the others. */
    readonly edge: number;
  };
}

/** Sealed suction and plates as somebody reads them: every error drawn, that of the coefficient once for all plates. */
export function readings(fan: KnownFan, series: TestSeries): Part[] {
  const next = normalDraws(series.seed);
  const { errors } = series;
  const C = 0.6 * (1 + errors.C * next());
  const typed = {
    pressure: 2 * errors.pressure_Pa,
    size: 2 * errors.hole_m,
    speed: 2 * errors.speed,
    flow: 2 * errors.C,
  };
  return [0, ...series.holes_m].map((hole_m, i) => {
    const trueHole = hole_m === 0 ? 0 : hole_m + errors.hole_m * next();
    const plateC = C * (1 + errors.edge * next());
    const suction_Pa = hole_m === 0 ? fan.pressure_Pa(0) : behindPlate(fan, trueHole, plateC).suction_Pa;
    const common = {
      id: `T${i + 1}`,
      suction: suction_Pa + errors.pressure_Pa * next(),
      speed: fan.speed_rpm * (1 + errors.speed * next()),
    };
    return hole_m === 0
      ? { kind: 'sealed-suction', ...common, errors: { pressure: typed.pressure, speed: typed.speed } }
      : { kind: 'hole-plate', ...common, hole: hole_m, errors: typed };
  });
}
