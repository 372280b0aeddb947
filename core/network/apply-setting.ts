import type { Setting, ShopDocument } from '../document/schema.ts';
import { SLIDE_GATE_SHUT_BELOW, slideGateCoefficient } from '../fittings/gate.ts';
import type { CompiledShop } from './compile.ts';

/** The setting of a document that names none: every gate as drawn. */
export const AS_DRAWN = 'as drawn';

/** Names of a document's settings, at least one. */
export function settingNames(document: ShopDocument): string[] {
  return document.settings.length > 0 ? document.settings.map((setting) => setting.name) : [AS_DRAWN];
}

/** The setting of a name; null where there is none. */
export function findSetting(document: ShopDocument, name: string): Setting | null {
  const found = document.settings.find((setting) => setting.name === name);
  if (found !== undefined) return found;
  return name === AS_DRAWN && document.settings.length === 0 ? { name: AS_DRAWN, gates: {} } : null;
}

/** Opening of each gate in a setting, by id [-]. */
export function openings(shop: CompiledShop, setting: Setting): Map<string, number> {
  return new Map(shop.gates.map((gate) => [gate.id, setting.gates[gate.id]?.si ?? gate.opening]));
}

/** Writes a setting's gates into the packed net: coefficients of the open ones, and the runs that are shut. */
export function applySetting(shop: CompiledShop, setting: Setting): void {
  const { packed } = shop;
  packed.shut.fill(0);
  packed.solids_kgs.fill(0);
  const open = openings(shop, setting);
  for (const gate of shop.gates) {
    const opening = open.get(gate.id)!;
    if (opening < SLIDE_GATE_SHUT_BELOW) {
      packed.shut[gate.element] = 1;
      packed.forward[gate.segment] = Infinity;
      packed.backward[gate.segment] = Infinity;
      continue;
    }
    const { k } = slideGateCoefficient(opening);
    packed.forward[gate.segment] = k;
    packed.backward[gate.segment] = k;
  }
}
