import type { FanDesign } from '../../core/document/schema-fans.ts';
import type { ShopDocument } from '../../core/document/schema.ts';

/** The fan that is looked at: the one chosen, else the first; null where the document keeps none. */
export const fanOnBench = ({ fans }: ShopDocument, chosen: string): FanDesign | null =>
  fans.find(({ id }) => id === chosen) ?? fans[0] ?? null;

/** Fans of the plan, and which fan of the list each stands for. */
export interface FanPlace {
  readonly id: string;
  readonly name: string;
  readonly design: string | null;
}

export const fanPlaces = ({ things }: ShopDocument): FanPlace[] =>
  things.flatMap((thing) =>
    thing.kind === 'fan'
      ? [{ id: thing.id, name: thing.name ?? thing.id, design: thing.design ?? null }]
      : [],
  );

/** Brings the field of a path into sight and puts the focus on it; a group that is folded is opened. Says whether there is one. */
export function focusPath(within: Element | undefined, path: readonly (string | number)[]): boolean {
  for (let length = path.length; length > 0; length--) {
    const start = CSS.escape(path.slice(0, length).join('.'));
    const field = within?.querySelector<HTMLElement>(`[data-field="${start}"], [data-field^="${start}."]`);
    if (!field) continue;
    const group = field.closest('details');
    if (group) group.open = true;
    field.focus({ preventScroll: true });
    field.scrollIntoView({ block: 'nearest' });
    if (field instanceof HTMLInputElement && field.type === 'text') field.select();
    return true;
  }
  return false;
}
