import type { ShopDocument } from '../../../document/schema.ts';

/** What a run or thing is called: its name, or its id where it has none. */
export function namesOf(document: ShopDocument): (id: string) => string {
  const names = new Map(
    [...document.things, ...document.runs].map((part) => [part.id, part.name ?? part.id]),
  );
  return (id) => names.get(id) ?? id;
}
