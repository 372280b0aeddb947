import type { ShopDocument } from '../../core/document/schema.ts';
import { findSetting } from '../../core/network/apply-setting.ts';
import { SLIDE_GATE_SHUT_BELOW } from '../../core/fittings/gate.ts';

/** Openings that a setting gives, by gate [-]; a gate that is not among them stands as drawn. */
export function settingGates(document: ShopDocument, setting: string): ReadonlyMap<string, number> {
  const gates = findSetting(document, setting)?.gates ?? {};
  return new Map(Object.entries(gates).map(([id, opening]) => [id, opening.si]));
}

export const isShut = (opening: number): boolean => opening < SLIDE_GATE_SHUT_BELOW;

/** How far a gate is open, in words. */
export function openingWords(opening: number): string {
  if (isShut(opening)) return 'shut';
  return opening >= 0.995 ? 'open' : `open to ${Math.round(opening * 100)} %`;
}
