import { quantityOf } from '../../../core/document/quantity-of.ts';
import type { DrawnRun } from '../../../core/document/route.ts';
import type { Run } from '../../../core/document/schema-pieces.ts';
import type { Leg, Route } from '../../../core/document/schema-route.ts';
import type { Thing } from '../../../core/document/schema-things.ts';

export type Triple = readonly [x: number, y: number, z?: number];

export const place = ([x, y, z]: Triple) => ({
  x: quantityOf('length', x, 'any'),
  y: quantityOf('length', y, 'any'),
  ...(z === undefined ? {} : { z: quantityOf('length', z, 'any') }),
});

export const jointAt = (id: string, at: Triple): Thing => ({ kind: 'joint', id, at: place(at) });

export const legOf = (typed: { length?: number; diameter?: number; material?: string }): Leg => ({
  ...(typed.length === undefined ? {} : { length: quantityOf('length', typed.length, 'not-negative') }),
  ...(typed.diameter === undefined ? {} : { diameter: quantityOf('length', typed.diameter) }),
  ...(typed.material === undefined ? {} : { material: typed.material }),
});

export interface Drawn {
  readonly run: DrawnRun;
  readonly things: ReadonlyMap<string, Thing>;
}

/** A run from `a` to `b` through corners, 100 mm across and with bends of 1.5 diameters where nothing else is said. */
export function drawn(
  points: readonly Triple[],
  more: Partial<Run> & { ratio?: number; style?: Route['bend']['style']; legs?: Leg[] } = {},
): Drawn {
  const { ratio = 1.5, style = 'smooth', legs, ...run } = more;
  return {
    run: {
      id: 'R1',
      from: 'a',
      to: 'b',
      diameter: quantityOf('length', 0.1),
      material: 'galvanised-spiral',
      pieces: [],
      ...run,
      route: {
        corners: points.slice(1, -1).map(place),
        bend: { style, radiusRatio: quantityOf('coefficient', ratio) },
        ...(legs ? { legs } : {}),
      },
    },
    things: new Map(
      [jointAt('a', points[0]!), jointAt('b', points.at(-1)!)].map((thing) => [thing.id, thing]),
    ),
  };
}
