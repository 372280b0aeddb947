import type { Finding } from '../network/solution.ts';
import { finding } from './finding.ts';
import type { Check } from './findings.ts';

/** Materials of duct that charge up; metal ones do not. */
const CHARGING = /plastic|pvc|printed|hose/;

/** Standing cautions of a shop: what may hurt somebody whatever the figures say. */
export const cautions: Check = ({ shop }) => {
  const { document } = shop;
  const found: Finding[] = [];
  const dusts = [...shop.things.values()].flatMap((thing) =>
    thing.kind === 'port' && thing.dust !== undefined ? [thing.dust] : [],
  );
  if (dusts.length > 0) {
    found.push(finding('caution-combustible', 'shop'), finding('caution-fine-dust', 'shop'));
  }
  const materials = document.runs.flatMap((run) => [
    run.material ?? '',
    ...run.pieces.map((piece) => ('material' in piece ? (piece.material ?? '') : '')),
  ]);
  if (materials.some((id) => CHARGING.test(id))) found.push(finding('caution-static', 'shop'));
  const outside = document.things.some((thing) => thing.kind === 'exhaust' && thing.to === 'outside');
  if (outside) found.push(finding('caution-make-up-air', 'shop'));
  if (shop.fans.length > 0 && shop.devices.length > 0) found.push(finding('caution-collapse', 'shop'));
  return found;
};
