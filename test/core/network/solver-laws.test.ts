import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fansInParallel, fansInSeries } from '../../../core/fan/combine.ts';
import { fanCurve } from '../../../core/fan/fan-curve.ts';
import { ductSegments, FAN, linearSegment, localSegment, PASSIVE } from '../../../core/network/net.ts';
import type { Element, Leg, Node, Segment } from '../../../core/network/net.ts';
import { solveNet } from '../../../core/network/newton.ts';
import { packNet } from '../../../core/network/packed.ts';
import type { PackedNet } from '../../../core/network/packed.ts';
import { onePath, ROOM_AIR, STILL_AIR } from './one-path.ts';
import { randomNet } from './random-net.ts';

function solved(packed: PackedNet) {
  const outcome = solveNet(packed);
  if (!outcome.converged) throw new Error(outcome.reason);
  return outcome;
}

const AREA_m2 = 0.008;
const point = (id: string, pressure_Pa: number | null, legs: readonly Leg[] | null = null): Node => ({
  id,
  pressure_Pa,
  legs,
});
const run = (id: string, from: number, to: number, segments: readonly Segment[]): Element => ({
  id,
  from,
  to,
  kind: PASSIVE,
  segments,
  fan: null,
});
const fixed = (k: number): Segment[] => [localSegment(AREA_m2, k)];
const net = (nodes: Node[], elements: Element[], air = STILL_AIR) => packNet({ air, nodes, elements });

describe('one path', () => {
  it('is the square root by hand', () => {
    // V = sqrt(2 dp / (rho K)); K 2.5 and 1000 Pa give 25.82 m/s
    const { state } = solved(onePath(STILL_AIR, fixed(2.5)));
    expect(state.flow_kgs[0]! / (1.2 * AREA_m2)).toBeCloseTo(Math.sqrt(2000 / (1.2 * 2.5)), 9);
  });

  it('adds a linear loss as the root of a quadratic', () => {
    // a Q^2 + b Q = 1000 with a = K rho / (2 A^2)
    const a = (2.5 * 1.2) / (2 * AREA_m2 ** 2);
    const b = 3000;
    const { state } = solved(onePath(STILL_AIR, [...fixed(2.5), linearSegment(b)]));
    expect(state.flow_kgs[0]! / 1.2).toBeCloseTo((-b + Math.sqrt(b * b + 4000 * a)) / (2 * a), 10);
  });

  it('flows more the more pressure there is, and less the more it must pass', () => {
    for (const air of [STILL_AIR, ROOM_AIR]) {
      let before = 0;
      for (let p = 1; p < 2e4; p *= 1.5) {
        const duct = ductSegments({ length_m: 6, diameter_m: 0.1, roughness_m: 1e-4, coefficient: 1 });
        const m = solved(onePath(air, duct, -p)).state.flow_kgs[0]!;
        expect(m).toBeGreaterThan(before);
        before = m;
      }
      before = Infinity;
      for (let length_m = 0.5; length_m < 200; length_m *= 1.5) {
        const duct = ductSegments({ length_m, diameter_m: 0.1, roughness_m: 1e-4, coefficient: 1 });
        const m = solved(onePath(air, duct)).state.flow_kgs[0]!;
        expect(m).toBeLessThan(before);
        before = m;
      }
    }
  });

  it('of hose at 25 kPa agrees with thin slices of constant density', () => {
    const duct = { length_m: 5, diameter_m: 0.038, roughness_m: 2e-4, coefficient: 0 };
    const flow = (slices: number) => {
      // a thin slice changes density little, so a march of constant-density drops is a second route
      const m = solved(onePath(ROOM_AIR, ductSegments(duct), -25000)).state.flow_kgs[0]!;
      const area = (Math.PI / 4) * duct.diameter_m ** 2;
      const rt = 101325 / 1.2;
      const re = (m * duct.diameter_m) / (area * STILL_AIR.viscosity_Pas);
      let f = 0.02;
      for (let i = 0; i < 60; i++)
        f = (-2 * Math.log10(duct.roughness_m / duct.diameter_m / 3.7 + 2.51 / (re * Math.sqrt(f)))) ** -2;
      // momentum: dp = -(G^2 / rho) (f dx / 2D) - G^2 d(1 / rho), on static pressure
      const G = m / area;
      let p = 101325;
      for (let i = 0; i < 50; i++) p = 101325 - (G * G * rt) / (2 * p);
      for (let i = 0; i < slices; i++) {
        const drop = ((G * G * rt) / p) * ((f * duct.length_m) / slices / (2 * duct.diameter_m));
        p -= drop / (1 - (G * G * rt) / (p * p));
      }
      return p + (G * G * rt) / (2 * p) - 101325;
    };
    expect(Math.abs(flow(20000) / -25000 - 1)).toBeLessThan(5e-3 / 2); // flow goes with the root of pressure
  });
});

describe('laws of the whole network', () => {
  it('flows go with the root of pressure where coefficients are constant', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (seed, s) => {
          const recipe = {
            seed,
            size: 30,
            sizes: 'sane',
            loops: 2,
            fans: 0,
            shutShare: 0,
            junctionShare: 0,
          } as const;
          const make = (scale: number) => {
            const packed = randomNet({ ...recipe, compressible: false });
            packed.fixedFriction.fill(0.02);
            packed.solids_kgs.fill(0);
            // a linear loss goes with flow, so it must grow with it to keep the law
            packed.type.forEach((type, i) => {
              if (type === 3) packed.forward[i] = packed.backward[i] = packed.forward[i]! * scale;
            });
            packed.given_Pa.forEach((p, v) => (packed.given_Pa[v] = p * scale * scale));
            return solveNet(packed);
          };
          const one = make(1);
          const other = make(s);
          if (!one.converged || !other.converged) return;
          const top = one.state.flow_kgs.reduce((sum, m) => Math.max(sum, Math.abs(m)), 0);
          one.state.flow_kgs.forEach((m, e) => {
            // in squares, as pressures are what the solver balances
            const scaled = other.state.flow_kgs[e]! / s;
            expect(Math.abs(scaled * Math.abs(scaled) - m * Math.abs(m))).toBeLessThanOrEqual(
              1e-8 * top * top,
            );
          });
        },
      ),
      { seed: 71, numRuns: 60 },
    );
  });

  it('a symmetric network has symmetric flows', () => {
    const legs = (angle: number): Leg[] => [
      { element: 0, ends: true, area_m2: AREA_m2, direction_rad: Math.PI + angle },
      { element: 1, ends: true, area_m2: AREA_m2, direction_rad: Math.PI - angle },
      { element: 2, ends: false, area_m2: 2 * AREA_m2, direction_rad: 0 },
    ];
    for (const angle of [Math.PI / 6, Math.PI / 4, Math.PI / 2]) {
      const { state } = solved(
        net(
          [point('a', 0), point('b', 0), point('wye', null, legs(angle)), point('end', -2000)],
          [
            run('A', 0, 2, fixed(1.5)),
            run('B', 1, 2, fixed(1.5)),
            run('C', 2, 3, [localSegment(2 * AREA_m2, 1)]),
          ],
        ),
      );
      expect(state.flow_kgs[0]! / state.flow_kgs[1]!).toBeCloseTo(1, 9);
      expect(state.flow_kgs[0]! + state.flow_kgs[1]!).toBeCloseTo(state.flow_kgs[2]!, 12);
    }
  });

  it('a dead end behind a shut gate stands at the pressure of its junction', () => {
    const packed = net(
      [point('room', 0), point('joint', null), point('end', -2000), point('stub', null), point('port', 0)],
      [
        run('main', 0, 1, fixed(2)),
        run('trunk', 1, 2, fixed(1)),
        run('branch', 1, 3, fixed(1)),
        run('gate', 3, 4, fixed(0.2)),
      ],
    );
    packed.shut[3] = 1;
    const { state } = solved(packed);
    expect(state.flow_kgs[2]).toBe(0);
    expect(state.flow_kgs[3]).toBe(0);
    expect(state.pressure_Pa[3]).toBe(state.pressure_Pa[1]);
    expect(state.pressure_Pa[1]).toBeCloseTo(-2000 * (2 / 3), 6);
  });

  it('says that no path is open, and that a fan in a sealed ring has no pressure to stand on', () => {
    const packed = onePath(STILL_AIR, fixed(1));
    packed.shut[0] = 1;
    expect(solveNet(packed)).toMatchObject({ converged: false, reason: 'no-open-path', iterations: 0 });
    const ring = net(
      [point('room', 0), point('a', null), point('b', null)],
      [fanElement('F', 1, 2), run('back', 2, 1, fixed(1)), run('open', 0, 0, fixed(1))],
    );
    expect(solveNet(ring)).toMatchObject({ converged: false, reason: 'sealed-ring' });
  });
});

const curve = (shutOff_Pa: number, flow_m3s: number) =>
  fanCurve({
    pressureKind: 'total',
    outletArea_m2: 0.01,
    points: [
      { flow_m3s: 0, pressure_Pa: shutOff_Pa },
      { flow_m3s: flow_m3s / 2, pressure_Pa: 0.8 * shutOff_Pa },
      { flow_m3s, pressure_Pa: 0.1 * shutOff_Pa },
    ],
    ratedSpeed_rpm: null,
    ratedDensity_kgm3: 1.2,
  });
function fanElement(id: string, from: number, to: number, shape = curve(2000, 0.3), speedRatio = 1): Element {
  return { id, from, to, kind: FAN, segments: [], fan: { curve: shape, speedRatio } };
}

describe('two fans against their combined curve', () => {
  const one = { curve: curve(2000, 0.3), density_kgm3: 1.2, speedRatio: 1 };
  const two = { curve: curve(1600, 0.35), density_kgm3: 1.2, speedRatio: 1.1 };
  /** Pressure of a sampled curve at a flow. */
  const read = (sampled: ReturnType<typeof fansInSeries>, flow: number) => {
    const i = sampled.flow_m3s.findIndex((q) => q >= flow);
    const [q0, q1] = [sampled.flow_m3s[i - 1]!, sampled.flow_m3s[i]!];
    const share = (flow - q0) / (q1 - q0);
    return sampled.pressure_Pa[i - 1]! * (1 - share) + sampled.pressure_Pa[i]! * share;
  };
  const loss = (k: number, flow: number) => (k * 1.2 * flow * flow) / (2 * AREA_m2 ** 2);

  it('in series', () => {
    const k = 4;
    const { state } = solved(
      net(
        [point('room', 0), point('a', null), point('b', null), point('out', 0)],
        [
          run('duct', 0, 1, fixed(k)),
          fanElement('F1', 1, 2, one.curve, one.speedRatio),
          fanElement('F2', 2, 3, two.curve, two.speedRatio),
        ],
      ),
    );
    const flow = state.flow_kgs[0]! / 1.2;
    expect(read(fansInSeries([one, two], 20001), flow) / loss(k, flow)).toBeCloseTo(1, 5);
  });

  it('in parallel', () => {
    const k = 0.6;
    const { state } = solved(
      net(
        [point('room', 0), point('a', null), point('out', 0)],
        [
          run('duct', 0, 1, fixed(k)),
          fanElement('F1', 1, 2, one.curve, one.speedRatio),
          fanElement('F2', 1, 2, two.curve, two.speedRatio),
        ],
      ),
    );
    const flow = state.flow_kgs[0]! / 1.2;
    expect(state.flow_kgs[1]).toBeGreaterThan(0);
    expect(read(fansInParallel([one, two], 20001), flow) / loss(k, flow)).toBeCloseTo(1, 5);
  });
});
