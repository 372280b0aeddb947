import { describe, expect, it } from 'vitest';
import { MESSAGES } from '../../../core/checks/messages.ts';
import type { FindingCode } from '../../../core/checks/messages.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { solveSetting } from '../../../core/network/solve.ts';
import type { Finding, SettingResult } from '../../../core/network/solution.ts';
import { BENCH_RAISED } from '../fan-bench/raised.ts';
import { ROTOR_RAISED } from '../fan-bench/rotors.ts';
import * as s from '../network/shop.ts';
import { MOTOR_RAISED } from './motors-raised.ts';
import { line, result, SAW, twoFans, twoPorts } from './shops.ts';

const HUMP = s.fan([
  [0, 1000],
  [0.03, 700],
  [0.06, 850],
  [0.1, 1400],
  [0.13, 1300],
  [0.16, 600],
  [0.2, 0],
]);
const pushed = (pressure: number, theFan: s.Part, K: number) =>
  s.shopOf(
    [{ id: 'P', kind: 'pressure', pressure }, theFan, s.exhaust()],
    [s.run('R1', 'P', 'fan', [{ kind: 'given', coefficient: K }]), s.run('R2', 'fan', 'out')],
  );

function unstable(): SettingResult {
  const rising = s.fan([
    [0.03, 700],
    [0.06, 850],
    [0.1, 1400],
  ]);
  const bench = s.benchOf(
    s.shopOf(
      [{ id: 'P', kind: 'pressure', pressure: -800 }, rising, s.exhaust()],
      [s.run('R1', 'P', 'fan', [], { diameter: 0.2 }), s.run('R2', 'fan', 'out', [], { diameter: 0.2 })],
    ),
  );
  const { elementCount, nodeCount } = bench.shop.packed;
  bench.states.set('as drawn', {
    flow_kgs: new Float64Array(elementCount).fill(0.06),
    pressure_Pa: new Float64Array(nodeCount),
  });
  return solveSetting(bench, 'as drawn');
}

/** A small shop or a fan on the bench for every code, and the place that the finding must name. */
const RAISED: Readonly<
  Record<FindingCode, readonly [() => { readonly findings: readonly Finding[] }, string]>
> = {
  'velocity-low': [() => result(line({ port: SAW, first: { diameter: 0.2 } })), 'R1'],
  'velocity-close': [() => closeRun(), 'R1'],
  'velocity-high': [
    () =>
      result(
        line({ port: { dust: 'sanding-dust' }, first: { diameter: 0.06 }, cyclone: { bodyDiameter: 0.4 } }),
      ),
    'R1',
  ],
  'flow-low': [() => result(line({ port: { needs: { flow: 2 } } })), 'R1'],
  'air-reversed': [() => result(twoPorts(true)), 'R3'],
  'leak-blows-dust': [() => result(twoPorts(true)), 'hole'],
  'suction-over-rating': [() => result(line({ first: { maxSuction: 100 } })), 'R1'],
  'suction-at-shut-off': [() => result(line({ cyclone: { maxSuction: 2900 } })), 'sep'],
  'face-velocity-high': [
    () => result(line({ filter: { layers: [{ medium: 'felt-bag', area: 1 }] } })),
    'bag',
  ],
  'filter-full': [
    () => result(line({ filter: { layers: [{ medium: 'felt-bag', area: 4, load: 1 }] } })),
    'bag',
  ],
  'inlet-velocity': [() => result(line({ cyclone: { bodyDiameter: 0.6 } })), 'sep'],
  're-entrainment': [() => result(line({ port: SAW, cyclone: { bodyDiameter: 0.3 } })), 'sep'],
  'cyclone-shape': [
    () => result(line({ cyclone: { proportions: 'stairmand-high-throughput', bodyDiameter: 0.3 } })),
    'sep',
  ],
  'fan-unstable': [unstable, 'fan'],
  'fan-several-points': [() => result(pushed(-700, HUMP, 3)), 'fan'],
  'fan-extrapolated': [() => marginFan(), 'fan'],
  'fan-no-path': [() => result(twoFans()), 'fan2'],
  'outside-range': [
    () => result(line({ pieces: [{ kind: 'reducer', id: 'taper', to: 0.12, angle: '3 deg' }] })),
    'taper',
  ],
  'bend-tight': [() => result(tightBend()), 'R1'],
  'dust-load-high': [() => result(line({ port: { dust: 'wood-chips', dustRate: 2 } })), 'R1'],
  'flow-unsettled': [() => result(pushedThrough(3000 * ((Math.PI * 0.1 * 1.8e-5) / 4))), 'R1'],
  'air-very-fast': [
    () =>
      result(
        s.shopOf(
          [{ id: 'P', kind: 'pressure', pressure: 9000 }, s.exhaust()],
          [s.run('R1', 'P', 'out', [s.straight(0.1)])],
        ),
      ),
    'R1',
  ],
  'caution-combustible': [() => result(line({ port: SAW })), 'shop'],
  'caution-fine-dust': [() => result(line({ port: SAW })), 'shop'],
  'caution-static': [() => result(line({ first: { material: 'pvc-pipe' } })), 'shop'],
  'caution-make-up-air': [() => result(line({ exhaust: { to: 'outside' } })), 'shop'],
  'caution-collapse': [() => result(line()), 'shop'],
  ...BENCH_RAISED,
  ...MOTOR_RAISED,
  ...ROTOR_RAISED,
};

/** A drawn run that turns twice within less than a bend's radius. */
function tightBend(): ShopDocument {
  const route = {
    corners: [
      { x: 1, y: 0 },
      { x: 1, y: 0.1 },
    ],
    bend: { style: 'smooth', radiusRatio: 1.5 },
  };
  return line({
    port: { at: { x: 0, y: 0 } },
    cyclone: { at: { x: 3, y: 0.1 } },
    pieces: [],
    first: { route },
  });
}

/** A run whose typed need is 2 % below what it has. */
function closeRun(): SettingResult {
  const v = s.runOf(result(line()), 'R1').velocity_ms!;
  return result(line({ first: { requiredVelocity: v / 1.02 } }));
}

/** A fan whose last point lies 4 % below the flow at which it runs. */
function marginFan(): SettingResult {
  const { flow_m3s, totalPressure_Pa } = result(line()).fans[0]!;
  // demand at 0.96 of the flow is near 0.96^2 of the demand; the fan gives a little more there and falls steeply
  const end = 0.96 * flow_m3s;
  const points = [
    [0, 3000],
    [0.5 * end, 2900],
    [end, 0.96 ** 2 * totalPressure_Pa + 60],
  ] as const;
  return result(line({ fan: s.fan(points) }));
}

/** One run that carries a mass flow [kg/s], driven by the pressure that this takes. */
function pushedThrough(flow_kgs: number): ShopDocument {
  const V = flow_kgs / (1.2 * (Math.PI / 4) * 0.01);
  // exhaust and a coefficient of 1000 outweigh friction by far
  const pressure = 1001 * 0.6 * V * V;
  return s.shopOf(
    [{ id: 'P', kind: 'pressure', pressure }, s.exhaust()],
    [s.run('R1', 'P', 'out', [s.straight(0.1), { kind: 'given', coefficient: 1000 }])],
  );
}

/** Every name of a document that a finding may point at. */
function namesOf(document: ShopDocument): Set<string> {
  return new Set([
    'shop',
    ...document.things.map((thing) => thing.id),
    ...document.runs.flatMap((r) => [r.id, ...r.pieces.flatMap((p) => (p.id === undefined ? [] : [p.id]))]),
  ]);
}

describe.each(Object.entries(RAISED))('%s', (code, [make, where]) => {
  it(`is raised at ${where}, in words`, () => {
    const found = make().findings.filter((f) => f.code === code);
    expect(found.map((f) => f.where)).toContain(where);
    for (const f of found) {
      expect(f.severity).toBe(MESSAGES[code as FindingCode].severity);
      expect(`${f.message} ${f.remedy}`).not.toMatch(/\{\}|NaN|undefined|–|Infinity|\d{7,}|e\+/);
      expect(f.remedy.length).toBeGreaterThan(10);
    }
  });
});

describe('the table of messages', () => {
  it('has no code that nothing raises', () => {
    expect(Object.keys(MESSAGES).filter((code) => !Object.hasOwn(RAISED, code))).toEqual([]);
  });
  it('says severities in words', () => {
    for (const row of Object.values(MESSAGES)) {
      expect(['danger', 'fault', 'warning', 'advice', 'caution']).toContain(row.severity);
    }
  });
});

describe('a finding', () => {
  const shops = [
    line({ port: SAW, pieces: [{ kind: 'reducer', to: 0.12, angle: '3 deg' }, s.straight(1)] }),
    line({ port: { ...SAW, hood: { kind: 'brush-shoe', gapArea: 0.01, throat: 2 } } }),
    twoPorts(true),
    twoFans(),
  ];
  it.each(shops.map((shop, i) => [i, shop] as const))('names something of the shop (%i)', (_i, shop) => {
    const names = namesOf(shop);
    const found = result(shop).findings;
    expect(found.length).toBeGreaterThan(0);
    for (const f of found) expect([...names]).toContain(f.where);
  });
  it('comes after graver ones', () => {
    const order = ['danger', 'fault', 'warning', 'advice', 'caution'];
    const grave = result(line({ port: SAW, first: { maxSuction: 100, diameter: 0.2 } })).findings;
    const ranks = grave.map((f) => order.indexOf(f.severity));
    expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
    expect(new Set(ranks).size).toBeGreaterThan(2);
  });
});
