import type { ShopDocument } from '../../../core/document/schema.ts';
import type { SettingResult } from '../../../core/network/solution.ts';
import * as s from '../network/shop.ts';

/** Port, cyclone, fan, filter, exhaust in one line; each part can be changed. */
export interface Line {
  readonly port?: s.Part;
  readonly cyclone?: s.Part;
  readonly filter?: s.Part;
  readonly fan?: s.Part;
  readonly exhaust?: s.Part;
  readonly first?: s.Part;
  readonly pieces?: readonly s.Part[];
  readonly more?: s.Part;
}
export const line = (change: Line = {}): ShopDocument =>
  s.shopOf(
    [
      s.port('saw', change.port),
      s.cyclone('sep', { bodyDiameter: 0.32, ...change.cyclone }),
      change.fan ?? s.STEADY_FAN,
      s.filter('bag', change.filter),
      s.exhaust('out', change.exhaust),
    ],
    [
      s.run('R1', 'saw', 'sep', change.pieces ?? [s.straight(2)], change.first),
      s.run('R2', 'sep', 'fan', [s.straight(1)], { diameter: 0.125 }),
      s.run('R3', 'fan', 'bag', [s.straight(1)], { diameter: 0.125 }),
      s.run('R4', 'bag', 'out', [], { diameter: 0.3 }),
    ],
    change.more,
  );

export const SAW = { dust: 'sawdust-dry', dustRate: 0.002 };
export const twoPorts = (pushing: boolean, more: s.Part = {}) =>
  s.shopOf(
    [
      s.port('saw', SAW),
      s.port('idle'),
      s.STEADY_FAN,
      { id: 'J', kind: 'joint' },
      s.exhaust(),
      s.leak('hole', 1e-4),
    ],
    pushing
      ? [
          s.run('R1', 'saw', 'fan'),
          s.run('R2', 'fan', 'J'),
          s.run('R3', 'idle', 'J'),
          s.run('L', 'hole', 'J', [], { diameter: undefined }),
          s.run('R4', 'J', 'out', [s.straight(3)]),
        ]
      : [
          s.run('R1', 'saw', 'J'),
          s.run('R3', 'idle', 'J'),
          s.run('L', 'hole', 'J', [], { diameter: undefined }),
          s.run('R2', 'J', 'fan'),
          s.run('R4', 'fan', 'out', [s.straight(3)]),
        ],
    more,
  );

export const twoFans = () =>
  s.shopOf(
    [s.port('a'), s.port('b'), s.STEADY_FAN, { ...s.STEADY_FAN, id: 'fan2' }, s.exhaust('x'), s.exhaust('y')],
    [
      s.run('A1', 'a', 'fan'),
      s.run('A2', 'fan', 'x', [s.straight(1)]),
      s.run('B1', 'b', 'fan2', [s.gate('G')]),
      s.run('B2', 'fan2', 'y', [s.straight(1)]),
    ],
    { settings: [{ name: 'one', gates: { G: 0 } }] },
  );

export const result = (shop: ShopDocument): SettingResult => s.resultOf(shop);
