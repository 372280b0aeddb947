import { describe, expect, it } from 'vitest';
import type { ShopDocument } from '../../../core/document/schema.ts';
import type { Finding } from '../../../core/network/solution.ts';
import * as s from '../network/shop.ts';
import { line, result, SAW, twoFans, twoPorts } from './shops.ts';

describe('ranges', () => {
  const outside = (shop: ShopDocument): Finding[] =>
    result(shop).findings.filter((f) => f.code === 'outside-range');
  const cases: readonly (readonly [string, ShopDocument, string, RegExp])[] = [
    [
      'a gate nearly shut',
      line({ pieces: [s.straight(1), s.gate('G', { opening: 0.1 })] }),
      'G',
      /opening is 0\.1, outside 0\.2 to 1/,
    ],
    [
      'a flat taper that narrows',
      line({ pieces: [{ kind: 'reducer', id: 'T', to: 0.09, angle: '3 deg' }] }),
      'T',
      /3 deg, outside 5 deg/,
    ],
    [
      'a brush shoe',
      line({ port: { hood: { kind: 'brush-shoe', gapArea: 0.02, bristle: 5 } } }),
      'saw',
      /bristle coefficient is 5/,
    ],
    [
      'a pointed hood',
      line({ port: { hood: { kind: 'tapered', angle: '10 deg', shape: 'round' } } }),
      'saw',
      /included angle is 10 deg/,
    ],
    [
      'capture far from a small face',
      line({ port: { needs: { capture: { hood: 'plain', velocity: 0.5, distance: 0.3, faceArea: 0.01 } } } }),
      'saw',
      /distance over root of area is 3, outside 0 to 1\.5/,
    ],
    [
      'a tiny cyclone',
      line({ cyclone: { bodyDiameter: 0.09 } }),
      'sep',
      /body diameter is 0\.09 m, outside 0\.1 m/,
    ],
    [
      'a tight bend of hose',
      line({
        pieces: [{ kind: 'hose-bend', id: 'B', angle: 1, radius: 0.05, material: 'hose-smooth-bore' }],
      }),
      'B',
      /bend of hose/,
    ],
    [
      'a piece without a name',
      line({
        pieces: [s.straight(1), { kind: 'hose-bend', angle: 1, radius: 0.05, material: 'hose-smooth-bore' }],
      }),
      'R1',
      /R1\.2, bend of hose/,
    ],
    [
      'a weather cap close to the stack',
      line({ exhaust: { outlet: { kind: 'cap', gapRatio: 0.2 } } }),
      'out',
      /gap over diameter is 0\.2/,
    ],
  ];
  it.each(cases)('are told of %s', (_name, shop, where, text) => {
    const found = outside(shop).filter((f) => f.where === where);
    expect(found.map((f) => f.message).join('\n')).toMatch(text);
  });
  it('are silent inside, and of a gate that is fully open or shut', () => {
    expect(outside(line({ pieces: [s.straight(1), s.gate('G')] }))).toEqual([]);
    expect(outside(line({ pieces: [{ kind: 'reducer', to: 0.12, angle: '15 deg' }] }))).toEqual([]);
    expect(outside(twoFans())).toEqual([]);
  });
});

describe('no false alarm', () => {
  const codes = (shop: ShopDocument) => s.codesOf(result(shop));
  it('for a leak that draws in, nor for one that blows clean air', () => {
    expect(codes(twoPorts(false))).not.toContain('leak-blows-dust');
    const clean = s.shopOf(
      [
        s.port('saw', SAW),
        s.filter('bag'),
        s.STEADY_FAN,
        { id: 'J', kind: 'joint' },
        s.leak('hole', 1e-4),
        s.exhaust(),
      ],
      [
        s.run('R1', 'saw', 'bag'),
        s.run('R2', 'bag', 'fan'),
        s.run('R3', 'fan', 'J'),
        s.run('L', 'hole', 'J', [], { diameter: undefined }),
        s.run('R4', 'J', 'out', [s.straight(3)]),
      ],
    );
    expect(codes(clean)).not.toContain('leak-blows-dust');
    expect(codes(clean)).not.toContain('air-reversed');
  });
  it('for the suction rating of what stands on the pushing side', () => {
    expect(codes(line({ filter: { maxSuction: 500 } }))).not.toContain('suction-at-shut-off');
  });
  it('for an oversize filter, a small cyclone, a shut branch', () => {
    expect(codes(line({ filter: { layers: [{ medium: 'felt-bag', area: 60 }] } }))).not.toContain(
      'face-velocity-high',
    );
    expect(codes(line({ port: SAW, cyclone: { bodyDiameter: 0.2 } }))).not.toContain('re-entrainment');
    const shut = result(twoFans()).findings.filter((f) => f.where === 'B1' || f.where === 'b');
    expect(shut).toEqual([]);
  });
  it('for a main that two sources feed, drawn against the flow', () => {
    const ring = s.shopOf(
      [
        s.port('saw', SAW),
        { id: 'J1', kind: 'joint' },
        { id: 'J2', kind: 'joint' },
        s.STEADY_FAN,
        s.exhaust(),
      ],
      [
        s.run('R1', 'saw', 'J1'),
        s.run('N', 'J1', 'J2', [s.straight(2)]),
        s.run('S', 'J2', 'J1', [s.straight(2)]),
        s.run('R2', 'J2', 'fan'),
        s.run('R3', 'fan', 'out'),
      ],
    );
    const solved = result(ring);
    expect(s.runOf(solved, 'S').massFlow_kgs).toBeLessThan(0);
    expect(s.codesOf(solved)).not.toContain('air-reversed');
    // both halves are alike, and so is what is said of them
    expect(s.runOf(solved, 'S').holds).toBe(s.runOf(solved, 'N').holds);
  });
});
