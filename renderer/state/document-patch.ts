import type { ShopDocument } from '../../core/document/schema.ts';

type Field = keyof ShopDocument;

/** What changed from one document to the next: whole fields, and items of lists of the same length. */
export interface DocumentPatch {
  readonly fields: Partial<ShopDocument>;
  readonly gone: readonly Field[];
  readonly items: readonly { readonly field: Field; readonly index: number; readonly item: unknown }[];
}

/** More changed items than this share of a list, and the list is sent whole [-]. */
const MOST_ITEMS = 0.5;

/**
 * Finds what changed by identity: documents share what an edit left alone. It is far less to copy to a worker than the
 * document, and the worker's copy goes on sharing too.
 */
export function patchOf(before: ShopDocument | null, after: ShopDocument): DocumentPatch {
  const fields: Partial<Record<Field, unknown>> = {};
  const items: { field: Field; index: number; item: unknown }[] = [];
  for (const field of Object.keys(after) as Field[]) {
    const [old, now] = [before?.[field], after[field]];
    if (old === now) continue;
    if (Array.isArray(old) && Array.isArray(now) && old.length === now.length) {
      const changed = now.flatMap((item: unknown, index) =>
        item === old[index] ? [] : [{ field, index, item }],
      );
      if (changed.length <= MOST_ITEMS * now.length) {
        items.push(...changed);
        continue;
      }
    }
    fields[field] = now;
  }
  const gone = before ? (Object.keys(before) as Field[]).filter((field) => !(field in after)) : [];
  return { fields: fields as Partial<ShopDocument>, gone, items };
}

/** The document that a patch makes of the one before; what the patch leaves alone keeps its identity. */
export function patched(before: ShopDocument | null, patch: DocumentPatch): ShopDocument {
  const kept = Object.entries(before ?? {}).filter(([field]) => !patch.gone.includes(field as Field));
  const next = { ...Object.fromEntries(kept), ...patch.fields } as Record<Field, unknown>;
  const copied = new Set<Field>();
  for (const { field, index, item } of patch.items) {
    if (!copied.has(field)) next[field] = [...(next[field] as unknown[])];
    copied.add(field);
    (next[field] as unknown[])[index] = item;
  }
  return next as unknown as ShopDocument;
}
