import type { MaterialId } from '../catalogue/materials.ts';
import { materialsOf } from '../document/route.ts';
import { dustOf } from '../network/port-dust.ts';
import type { Finding } from '../network/solution.ts';
import { finding } from './finding.ts';
import type { Check } from './check.ts';

/** Materials of duct and hose that charge up; metal ones do not. */
const CHARGING: ReadonlySet<string> = new Set<MaterialId>([
  'pvc-pipe',
  'smooth-plastic',
  'printed-tube',
  'hose-smooth-bore',
  'hose-fabric-wire',
  'hose-corrugated',
]);

/** Standing cautions of a shop: what may hurt somebody whatever the figures say. */
export const cautions: Check = ({ shop }) => {
  const { document } = shop;
  const found: Finding[] = [];
  const dusty = document.things.flatMap((thing) =>
    thing.kind === 'port' && (thing.dust ?? thing.cut ?? thing.dustRate ?? thing.needs?.velocity)
      ? [thing.dust]
      : [],
  );
  // a dust without a name may be any, and most of what a shop makes can burn
  if (dusty.some((id) => id === undefined || dustOf(document, id).combustible)) {
    found.push(finding('caution-combustible', 'shop'));
  }
  if (dusty.length > 0) found.push(finding('caution-fine-dust', 'shop'));
  const materials = document.runs.flatMap(materialsOf);
  if (materials.some((id) => CHARGING.has(id))) found.push(finding('caution-static', 'shop'));
  const outside = document.things.some((thing) => thing.kind === 'exhaust' && thing.to === 'outside');
  if (outside) found.push(finding('caution-make-up-air', 'shop'));
  if (shop.fans.length > 0 && shop.devices.length > 0) found.push(finding('caution-collapse', 'shop'));
  return found;
};
