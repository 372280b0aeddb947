import type { ShopDocument } from '../../core/document/schema.ts';

/** What the shop is compared with. */
export interface OtherShop {
  /** Which of those that are offered; `file` for one that was opened for it. */
  readonly id: string;
  readonly label: string;
  readonly document: ShopDocument;
}
