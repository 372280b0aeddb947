import { describe, expect, it } from 'vitest';
import { captureFlow } from '../../../core/fittings/capture.ts';
import { solveSetting } from '../../../core/network/solve.ts';
import * as s from './shop.ts';

const near = (value: number | null, wanted: number, share: number) =>
  expect(Math.abs(value! - wanted)).toBeLessThanOrEqual(share * Math.abs(wanted));

describe('separators and dust', () => {
  const chain = (more: s.Part = {}) =>
    s.resultOf(
      s.shopOf(
        [
          s.port('saw', { dust: 'sawdust-dry', dustRate: 0.002 }),
          { id: 'bin', kind: 'bin', inletDiameter: 0.1, outletDiameter: 0.1, baffle: true, catchShare: 0.8 },
          s.cyclone('sep', more),
          s.filter('bag'),
          s.STEADY_FAN,
          s.exhaust(),
        ],
        [
          s.run('R1', 'saw', 'bin', [s.straight(1)]),
          s.run('R2', 'bin', 'sep', [s.straight(1)]),
          s.run('R3', 'sep', 'bag', [s.straight(1)]),
          s.run('R4', 'bag', 'fan', [s.straight(1)]),
          s.run('R5', 'fan', 'out'),
        ],
      ),
    );
  const result = chain();
  it('ask for less velocity after a separator and for none after a filter', () => {
    expect(['R1', 'R2', 'R3', 'R4'].map((id) => s.runOf(result, id).requiredVelocity_ms)).toEqual([
      18,
      12.7,
      12.7,
      null,
    ]);
  });
  it('pass on what the one before let through', () => {
    const bin = s.deviceOf(result, 'bin');
    const sep = s.deviceOf(result, 'sep');
    near(bin.dustIn_kgs, 0.002, 1e-12);
    near(bin.catchShare, 0.8, 1e-9);
    near(sep.dustIn_kgs, 0.0004, 1e-9);
    near(s.deviceOf(result, 'bag').dustIn_kgs, 0.0004 * (1 - sep.catchShare!), 1e-9);
    near(s.runOf(result, 'R3').dust_kgs, 0.0004 * (1 - sep.catchShare!), 1e-9);
  });
  it('let a measured loss stand before the model, in proportion to flow squared', () => {
    const measured = chain({ measured: { loss: 300, flow: 0.1 } });
    const sep = s.deviceOf(measured, 'sep');
    near(sep.loss_Pa, 300 * (sep.flow_m3s / 0.1) ** 2, 1e-9);
    expect(sep.basis).toBe('measured-by-user');
  });
  it('add dust loss in proportion to what is carried for each kg of air', () => {
    for (const piece of s.runOf(result, 'R1').pieces) {
      const share = piece.solidsLoss_Pa / (piece.loss_Pa - piece.solidsLoss_Pa);
      near(share, 0.3 * (0.002 / s.runOf(result, 'R1').massFlow_kgs), 1e-6);
    }
  });
  it('catch with two equal separators in series what the second does with the finer rest', () => {
    const two = s.resultOf(
      s.shopOf(
        [
          s.port('saw', { dust: 'sanding-dust', dustRate: 0.001 }),
          s.cyclone('one'),
          s.cyclone('two'),
          s.STEADY_FAN,
          s.exhaust(),
        ],
        [
          s.run('R1', 'saw', 'one'),
          s.run('R2', 'one', 'two'),
          s.run('R3', 'two', 'fan'),
          s.run('R4', 'fan', 'out'),
        ],
      ),
    );
    const first = s.deviceOf(two, 'one').catchShare!;
    const second = s.deviceOf(two, 'two').catchShare!;
    // what the first left is fine, so the same separator does worse on it
    expect(second).toBeLessThan(first);
    expect(second).toBeGreaterThan(0);
  });
  it('split dust with the air where a wye parts', () => {
    const split = s.resultOf(
      s.shopOf(
        [
          s.port('saw', { dust: 'sawdust-dry', dustRate: 0.002 }),
          s.STEADY_FAN,
          { id: 'W', kind: 'wye', angle: Math.PI / 4 },
          s.exhaust('x1'),
          s.exhaust('x2'),
        ],
        [
          s.run('R1', 'saw', 'fan'),
          s.run('R2', 'fan', 'W.out'),
          s.run('R3', 'W.main', 'x1', [s.straight(1)]),
          s.run('R4', 'W.branch', 'x2', [s.straight(4)]),
        ],
      ),
    );
    const [r2, r3, r4] = ['R2', 'R3', 'R4'].map((id) => s.runOf(split, id));
    near(r3!.dust_kgs + r4!.dust_kgs, 0.002, 1e-12);
    near(r3!.dust_kgs, (0.002 * r3!.massFlow_kgs) / r2!.massFlow_kgs, 1e-9);
  });
});

describe('needs of a port', () => {
  it('come from capture at a distance where that asks for more than the typed flow', () => {
    const capture = { hood: 'plain', velocity: 1, distance: 0.2, faceArea: 0.02 };
    const result = s.resultOf(
      s.shopOf(
        [s.port('saw', { needs: { flow: 0.1, capture } }), s.STEADY_FAN, s.exhaust()],
        [s.run('R1', 'saw', 'fan'), s.run('R2', 'fan', 'out')],
      ),
    );
    // DallaValle by hand: 1 m/s (10 x 0.04 + 0.02) m2
    near(s.runOf(result, 'R1').requiredFlow_m3s, 0.42, 1e-12);
    near(captureFlow({ style: 'plain', distance_m: 0.2, faceArea_m2: 0.02 }, 1), 0.42, 1e-12);
    expect(s.runOf(result, 'R1').holds).toBe(false);
    expect(s.codesOf(result)).toContain('flow-low');
  });
});

describe('a high-suction hose', () => {
  const hose = (compressible: boolean) =>
    s.resultOf(
      s.shopOf(
        [
          s.port('tool'),
          s.fan(
            [
              [0, 24000],
              [0.03, 22000],
              [0.06, 12000],
            ],
            { outletDiameter: 0.05 },
          ),
          s.exhaust(),
        ],
        [
          s.run('R1', 'tool', 'fan', [s.straight(3), s.straight(3), s.straight(3)], {
            diameter: 0.038,
            material: 'hose-smooth-bore',
          }),
          s.run('R2', 'fan', 'out', [], { diameter: 0.05 }),
        ],
        {
          options: { compressible },
          air: compressible ? { kind: 'weather', temperature: '20 degC', humidity: '50 %' } : s.HAND_AIR,
        },
      ),
    );
  it('speeds its air up along the way, as density falls with pressure', () => {
    const pieces = s.runOf(hose(true), 'R1').pieces;
    const speeds = pieces.map((p) => p.velocity_ms!);
    expect(pieces.at(-1)!.staticPressureAfter_Pa).toBeLessThan(-12000);
    // the hood speaks of the air behind it, which is where the first hose starts
    for (let i = 2; i < speeds.length; i++) expect(speeds[i]).toBeGreaterThan(speeds[i - 1]!);
    // mass flow is one: velocity at the start of the last piece over that at the first is the ratio of densities
    const before = pieces.at(-2)!.staticPressureAfter_Pa!;
    near(
      speeds.at(-1)! / speeds[0]!,
      (101325 + pieces[0]!.staticPressureAfter_Pa!) / (101325 + before),
      1e-6,
    );
  });
  it('does not where compressibility is off', () => {
    const speeds = s.runOf(hose(false), 'R1').pieces.map((p) => p.velocity_ms!);
    for (const v of speeds) near(v, speeds[0]!, 1e-12);
  });
});

describe('a warm start', () => {
  it('ends at the operating point of a cold one', () => {
    const shop = s.shopOf(
      [s.port('a'), s.STEADY_FAN, s.exhaust()],
      [s.run('R1', 'a', 'fan', [s.gate('G')]), s.run('R2', 'fan', 'out')],
      {
        settings: [
          { name: 'open', gates: {} },
          { name: 'half', gates: { G: 0.5 } },
        ],
      },
    );
    const bench = s.benchOf(shop);
    const cold = solveSetting(bench, 'open').fans[0]!.massFlow_kgs;
    solveSetting(bench, 'half');
    near(solveSetting(bench, 'open').fans[0]!.massFlow_kgs, cold, 1e-9);
  });
});
