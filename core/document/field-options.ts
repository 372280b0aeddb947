import { CYCLONE_PROPORTIONS } from '../catalogue/cyclones.ts';
import { DUST_CLASSES } from '../catalogue/dusts.ts';
import { ELBOW_TABLES } from '../catalogue/elbows.ts';
import { ENTRIES } from '../catalogue/entries.ts';
import { FILTER_MEDIA } from '../catalogue/filter-media.ts';
import { MATERIALS } from '../catalogue/materials.ts';
import { ROTOR_MATERIALS } from '../catalogue/rotor-materials.ts';
import type { Sourced } from '../quantities/sourced.ts';
import { GRADE_MODELS } from '../separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS } from '../separator/pressure-drop.ts';
import type { FieldOption } from './field.ts';
import type { ShopDocument } from './schema.ts';

const rows = (table: Readonly<Record<string, Sourced & { readonly label: string }>>): FieldOption[] =>
  Object.entries(table).map(([value, { label, source, basis }]) => ({ value, label, source, basis }));

/** Choices without figures behind them. */
export const plain = (words: Readonly<Record<string, string>>): FieldOption[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

export const ENTRY_OPTIONS = rows(ENTRIES);
export const MATERIAL_OPTIONS: readonly FieldOption[] = MATERIALS.map(({ id, label, source, basis }) => ({
  value: id,
  label,
  source,
  basis,
}));
export const ROTOR_MATERIAL_OPTIONS: readonly FieldOption[] = ROTOR_MATERIALS.map(
  ({ id, label, source, basis }) => ({ value: id, label, source, basis }),
);
export const MEDIUM_OPTIONS = rows(FILTER_MEDIA);
export const PROPORTION_OPTIONS: readonly FieldOption[] = [
  ...rows(CYCLONE_PROPORTIONS),
  { value: 'free', label: 'own dimensions, all seven given' },
];
export const LOSS_MODEL_OPTIONS = rows(CYCLONE_LOSS_MODELS);
export const GRADE_MODEL_OPTIONS = rows(GRADE_MODELS);
export const STYLE_OPTIONS: readonly FieldOption[] = [
  ...rows(ELBOW_TABLES),
  {
    value: 'mitre',
    label: 'mitre, one joint',
    source: 'Rennels and Hudson, Pipe Flow, 2012, mitre bend',
    basis: 'from-memory',
  },
];

/** Dust classes of the catalogue after those of the document, which stand before them. */
export function dustOptions(document: ShopDocument): FieldOption[] {
  const own = document.dusts.map(({ id, name }): FieldOption => ({
    value: id,
    label: name ?? id,
    source: 'given in the document',
    basis: 'measured-by-user',
  }));
  const ids = new Set(own.map(({ value }) => value));
  return [...own, ...rows(DUST_CLASSES).filter(({ value }) => !ids.has(value))];
}
