import type { ShopDocument } from '../schema.ts';
import type { ThingKind } from '../schema-things.ts';

export type IdKind = ThingKind | 'run' | 'gate' | 'dust' | 'design';

const PREFIX: Readonly<Partial<Record<IdKind, string>>> = { run: 'R', gate: 'G' };

/** Gives names that nothing in the document has, each once. */
export function idMaker(document: ShopDocument): (kind: IdKind) => string {
  const taken = new Set<string>(
    [...document.things, ...document.dusts, ...document.fans].map(({ id }) => id),
  );
  for (const run of document.runs) {
    taken.add(run.id);
    for (const piece of run.pieces) if (piece.id !== undefined) taken.add(piece.id);
  }
  // where the search for a free number goes on, so that many names cost no more than each
  const reached = new Map<string, number>();
  return (kind) => {
    const prefix = PREFIX[kind] ?? `${kind}-`;
    let n = reached.get(prefix) ?? 1;
    while (taken.has(`${prefix}${n}`)) n++;
    reached.set(prefix, n + 1);
    return `${prefix}${n}`;
  };
}

/** The next free name of a kind: `port-1`, `R3`, `G2`. */
export function idFor(document: ShopDocument, kind: IdKind): string {
  return idMaker(document)(kind);
}
