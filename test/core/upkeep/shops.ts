import { upkeep } from '../../../core/upkeep/upkeep.ts';
import type { UpkeepResult } from '../../../core/upkeep/result.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { cyclone, exhaust, fan, filter, port, run, shopOf } from '../network/shop.ts';
import type { Part } from '../network/shop.ts';

/** Dust that reaches the filter whole [kg/s]. */
export const DUST_KGS = 2e-4;

/** One port that makes dust, a filter, and what moves the air between them; machines cut all the time. */
export function plainShop(mover: readonly Part[], runs: readonly Part[], more: Part = {}): ShopDocument {
  const things = [
    port('port', { hood: { kind: 'given', coefficient: 30 }, dust: 'sawdust-dry', dustRate: DUST_KGS }),
    filter('filter', { layers: [{ medium: 'felt-bag', area: 4, passedShare: 0.01 }] }),
    ...mover,
  ];
  return shopOf(things, [run('r1', 'port', 'filter'), ...runs], {
    upkeep: { cuttingShare: 1 },
    options: { compressible: false, solidsLoss: false },
    ...more,
  });
}

/** Sucked by a pressure that does not change, as by a fan with a flat curve. */
export const constantPressure = (pressure: number, more: Part = {}): ShopDocument =>
  plainShop([{ id: 'sink', kind: 'pressure', pressure: -pressure }], [run('r2', 'filter', 'sink')], more);

/** Points of a fan whose curve is a straight, steep line, so that its flow hardly changes [m3/s, Pa total]. */
export const STEEP_FAN = [
  [0.095, 1e4],
  [0.105, 0],
] as const;

/** Moved by the steep fan. */
export const steepFan = (more: Part = {}): ShopDocument =>
  plainShop([fan(STEEP_FAN), exhaust()], [run('r2', 'filter', 'fan'), run('r3', 'fan', 'out')], more);

/** With a cyclone that catches less as the filter chokes the flow. */
export const withCyclone = (more: Part = {}): ShopDocument =>
  shopOf(
    [
      port('port', { dust: 'sanding-dust', dustRate: 5e-4 }),
      cyclone('cyclone', { binVolume: 0.06 }),
      filter('filter', { layers: [{ medium: 'felt-bag', area: 1.5 }] }),
      fan([
        [0, 3000],
        [0.1, 2600],
        [0.2, 1600],
        [0.3, 0],
      ]),
      exhaust(),
    ],
    [
      run('r1', 'port', 'cyclone', [{ kind: 'straight', length: 3 }]),
      run('r2', 'cyclone', 'filter'),
      run('r3', 'filter', 'fan'),
      run('r4', 'fan', 'out'),
    ],
    { upkeep: { cuttingShare: 0.5, binFull: 0.8, electricityPrice: 0.3 }, ...more },
  );

/** Marches a shop that can be; throws with the problems where it cannot. */
export function marched(document: ShopDocument, hours: number): UpkeepResult {
  const outcome = upkeep(document, hours);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('\n'));
  return outcome.result;
}
