import { CYCLONE_PROPORTIONS } from '../../catalogue/cyclones.ts';
import { printQuantity } from '../../quantities/print.ts';
import { standardCyclone } from '../../separator/proportions.ts';
import type { ShopDocument } from '../schema.ts';
import type { ThingOf } from '../schema-things.ts';
import { toJson } from '../write.ts';

/**
 * The dimensions that a cyclone starts with when its maker says that they are his own: what he gave already, and the
 * rest as the proportions had it, so that the shop can still be solved while he types one after the other. Null where
 * the proportions before were no standard ones.
 */
export function ownDimensions(
  cyclone: ThingOf<'cyclone'>,
  units: ShopDocument['units'],
): Readonly<Record<string, unknown>> | null {
  const { proportions, bodyDiameter, dimensions } = cyclone;
  if (!Object.hasOwn(CYCLONE_PROPORTIONS, proportions)) return null;
  const row = CYCLONE_PROPORTIONS[proportions as keyof typeof CYCLONE_PROPORTIONS];
  const standard = standardCyclone(row, bodyDiameter.si);
  const print = (length_m: number) => printQuantity(length_m, 'length', units, { digits: 4 });
  return {
    inletHeight: print(standard.inletHeight_m),
    inletWidth: print(standard.inletWidth_m),
    outletDiameter: print(standard.outletDiameter_m),
    outletDepth: print(standard.outletDepth_m),
    cylinderHeight: print(standard.cylinderHeight_m),
    totalHeight: print(standard.totalHeight_m),
    dustOutletDiameter: print(standard.dustOutletDiameter_m),
    ...(toJson(dimensions ?? {}) as object),
  };
}
