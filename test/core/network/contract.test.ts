import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readDocument } from '../../../core/document/read.ts';
import { solve } from '../../../core/network/solve.ts';
import type { SettingResult } from '../../../core/network/solution.ts';
import * as s from './shop.ts';

// the form that `solve --json` promises: what does not apply is null, never missing; more fields may come
const n = z.number();
const nn = z.number().nullable();
const POINT = z.looseObject({ flow_m3s: n, massFlow_kgs: n, totalPressure_Pa: n, stable: z.boolean() });
const CONTRACT = z.looseObject({
  document: z.string(),
  air: z.looseObject({ density_kgm3: n, viscosity_Pas: n, pressure_Pa: nn, temperature_K: nn }),
  settings: z.array(
    z.looseObject({
      name: z.string(),
      converged: z.boolean(),
      iterations: z.number().int(),
      massResidual: n,
      fans: z.array(
        z.looseObject({
          id: z.string(),
          flow_m3s: n,
          massFlow_kgs: n,
          staticPressure_Pa: n,
          totalPressure_Pa: n,
          speed_rpm: nn,
          power_W: nn,
          stable: z.boolean(),
          allOperatingPoints: z.array(POINT),
        }),
      ),
      runs: z.array(
        z.looseObject({
          id: z.string(),
          from: z.string(),
          to: z.string(),
          massFlow_kgs: n,
          flow_m3s: n,
          velocity_ms: nn,
          requiredVelocity_ms: nn,
          holds: z.boolean().nullable(),
          lossTotal_Pa: n,
          pieces: z.array(
            z.looseObject({
              id: z.string(),
              kind: z.string(),
              velocity_ms: nn,
              velocityPressure_Pa: nn,
              coefficient: nn,
              frictionFactor: nn,
              loss_Pa: n,
              staticPressureAfter_Pa: nn,
            }),
          ),
        }),
      ),
      nodes: z.array(z.looseObject({ id: z.string(), totalPressure_Pa: nn, staticPressure_Pa: nn })),
      devices: z.array(z.looseObject({ id: z.string(), kind: z.string(), loss_Pa: n })),
      findings: z.array(
        z.looseObject({
          severity: z.enum(['danger', 'fault', 'warning', 'advice', 'caution']),
          where: z.string().min(1),
          message: z.string().min(1),
          remedy: z.string().min(1),
        }),
      ),
    }),
  ),
});

/** Paths of numbers that JSON cannot hold, and of fields that are missing rather than null. */
function unspoken(value: unknown, path = ''): string[] {
  if (value === undefined) return [`${path} is undefined`];
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => unspoken(item, `${path}.${key}`));
}

/** A shop with every trap at once: branches, a leak on either side, a shut gate, an idle port on the pushing side. */
const hard = (compressible: boolean) =>
  s.shopOf(
    [
      s.port('a', { dust: 'sawdust-dry', dustRate: 0.002 }),
      s.port('b', { dust: 'wood-chips', dustRate: 0.001 }),
      s.port('c'),
      s.port('idle'),
      s.leak('hole', 3e-4),
      { id: 'W1', kind: 'wye', angle: Math.PI / 6 },
      { id: 'T1', kind: 'tee' },
      { id: 'V1', kind: 'breeches', angle: Math.PI / 6 },
      { id: 'J1', kind: 'joint' },
      { id: 'J2', kind: 'joint' },
      s.cyclone('sep'),
      s.STEADY_FAN,
      s.filter('bag'),
      s.exhaust(),
      s.exhaust('out2', { to: 'outside' }),
    ],
    [
      s.run('A', 'a', 'W1.main', [s.straight(3)]),
      s.run('B', 'b', 'W1.branch', [s.straight(1), s.gate('GB')], { diameter: 0.08 }),
      s.run('C', 'c', 'T1.branch', [s.straight(2), s.gate('GC')], { diameter: 0.06 }),
      s.run('M1', 'W1', 'T1.main', [s.straight(1)]),
      s.run('M2', 'T1', 'J1', [s.straight(1)], { diameter: 0.12 }),
      s.run('L', 'hole', 'J1', [], { diameter: undefined, material: undefined }),
      s.run('M3', 'J1', 'sep'),
      s.run('M4', 'sep', 'fan'),
      s.run('M5', 'fan', 'V1.out'),
      s.run('M6', 'V1.left', 'bag'),
      s.run('M7', 'V1.right', 'out2', [s.straight(5)]),
      s.run('M8', 'bag', 'J2'),
      s.run('I', 'idle', 'J2', [s.straight(1)]),
      s.run('X', 'J2', 'out', [s.straight(1)]),
    ],
    {
      options: { compressible },
      air: compressible ? { kind: 'weather', temperature: '20 degC', humidity: '50 %' } : s.HAND_AIR,
      settings: [
        { name: 'all open', gates: {} },
        { name: 'b shut', gates: { GB: 0 } },
        { name: 'half', gates: { GB: 0.4, GC: 0.3 } },
      ],
    },
  );

const EXAMPLES = new URL('../../../core/examples/', import.meta.url);
const examples = readdirSync(EXAMPLES).filter((name) => name.endsWith('.json'));
const exampleOf = (name: string) => {
  const read = readDocument(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return read.document;
};
const SHOPS = [
  ...examples.map((name) => [name, () => exampleOf(name)] as const),
  ['a hard shop at constant density', () => hard(false)] as const,
  ['a hard shop with density that varies', () => hard(true)] as const,
];

describe.each(SHOPS)('%s', (_name, open) => {
  const document = open();
  const solved = solve(document);
  if (!solved.ok) throw new Error(solved.problems.map((p) => p.message).join('\n'));
  const { solution } = solved;
  const settings = solution.settings;

  it('keeps to the JSON form, with no number that JSON cannot hold', () => {
    expect(unspoken(solution)).toEqual([]);
    expect(() => CONTRACT.parse(JSON.parse(JSON.stringify(solution)))).not.toThrow();
  });

  it('has converged in every setting', () => {
    for (const setting of settings) {
      expect([setting.name, setting.converged]).toEqual([setting.name, true]);
      expect(setting.massResidual).toBeLessThan(1e-9);
    }
  });

  it('adds its pieces up to the loss of each run', () => {
    for (const setting of settings) {
      for (const run of setting.runs) {
        const sum = run.pieces.reduce((total, piece) => total + piece.loss_Pa, 0);
        expect(Math.abs(sum - run.lossTotal_Pa)).toBeLessThan(1e-6);
      }
    }
  });

  it('loses along every run what lies between its ends, so that any closed path sums to zero', () => {
    for (const setting of settings) {
      const total = new Map(setting.nodes.map((node) => [node.id, node.totalPressure_Pa]));
      const at = (end: string, side: 'in' | 'out') => {
        const id = end.split('.')[0]!;
        return total.get(id) ?? total.get(`${id}.${side}`)!;
      };
      for (const run of setting.runs) {
        if (run.massFlow_kgs === 0) continue;
        const drop = at(run.from, 'out') - at(run.to, 'in');
        const loss = run.massFlow_kgs > 0 ? run.lossTotal_Pa : -run.lossTotal_Pa;
        expect(Math.abs(drop - loss), `${setting.name} ${run.id}`).toBeLessThan(1e-6);
      }
      for (const device of setting.devices) {
        const drop = total.get(`${device.id}.in`)! - total.get(`${device.id}.out`)!;
        expect(Math.abs(drop - device.loss_Pa)).toBeLessThan(1e-6);
      }
      for (const fan of setting.fans) {
        const rise = total.get(`${fan.id}.out`)! - total.get(`${fan.id}.in`)!;
        expect(Math.abs(rise - fan.totalPressure_Pa)).toBeLessThan(1e-6);
      }
    }
  });

  it('takes velocity pressure off the total at the end of every piece of even section', () => {
    for (const setting of settings) {
      for (const piece of setting.runs.flatMap((run) => (run.massFlow_kgs > 0 ? run.pieces : []))) {
        if (piece.kind !== 'straight' && piece.kind !== 'elbow') continue;
        const rho = (2 * piece.velocityPressure_Pa!) / piece.velocity_ms! ** 2;
        const after = piece.totalPressureAfter_Pa! - piece.staticPressureAfter_Pa!;
        // the piece's own velocity pressure is at its start; air at its end is thinner by the piece's loss at most
        const thinner = 1 - (piece.loss_Pa + after) / 90_000;
        expect(after).toBeGreaterThanOrEqual(piece.velocityPressure_Pa! * (1 - 1e-9));
        expect(after).toBeLessThanOrEqual((piece.velocityPressure_Pa! / thinner) * (1 + 1e-9));
        expect(rho).toBeGreaterThan(0.8);
      }
    }
  });

  it('brings as much air to every junction as it takes away', () => {
    for (const setting of settings) expect(imbalance(setting)).toBeLessThan(1e-9);
  });
});

/** Largest net mass flow at a place where runs meet, over the largest flow. */
function imbalance(setting: SettingResult): number {
  const net = new Map<string, number>();
  const add = (place: string, m: number) => net.set(place, (net.get(place) ?? 0) + m);
  for (const run of setting.runs) {
    add(run.from.split('.')[0]!, -run.massFlow_kgs);
    add(run.to.split('.')[0]!, run.massFlow_kgs);
  }
  const open = new Set(
    setting.nodes
      .filter((node) => node.totalPressure_Pa === 0 && node.staticPressure_Pa === 0)
      .map((x) => x.id),
  );
  const largest = Math.max(...setting.runs.map((run) => Math.abs(run.massFlow_kgs)));
  let worst = 0;
  for (const [place, m] of net) {
    if (open.has(place)) continue;
    worst = Math.max(worst, Math.abs(m) / largest);
  }
  return worst;
}
