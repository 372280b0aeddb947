import type { ShopDocument } from '../../core/document/schema.ts';
import type { OtherShop } from '../state/other-shop.ts';

/** Earlier states that are offered, the newest. */
const MOST = 40;

/** What a shop may be compared with: as it was saved or opened last, and before each step that can be undone. */
export function statesOf(
  now: ShopDocument,
  saved: ShopDocument | null,
  steps: readonly { readonly label: string; readonly before: ShopDocument }[],
): OtherShop[] {
  const states: OtherShop[] = saved
    ? [
        {
          id: 'saved',
          label: saved === now ? 'as saved (no change since)' : 'as last saved',
          document: saved,
        },
      ]
    : [];
  for (let i = steps.length - 1; i >= Math.max(0, steps.length - MOST); i--) {
    const { label, before } = steps[i]!;
    states.push({ id: `step-${i}`, label: `${i + 1}. before: ${label}`, document: before });
  }
  return states;
}
