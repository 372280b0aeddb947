import { Inquiry } from './inquiry.svelte.ts';
import type { OtherShop } from './other-shop.ts';

export const SHEET_PANES = [
  { id: 'summary', label: 'Summary' },
  { id: 'parts', label: 'Parts' },
  { id: 'compare', label: 'Changes' },
] as const;
export type SheetPane = (typeof SHEET_PANES)[number]['id'];

/** What the sheets show and what works it out, between the screen and the fields at its side. */
export class SheetDesk {
  pane = $state<SheetPane>('summary');
  /** Printed as it stands; the day on which the sheets were opened until another is typed. */
  date = $state('');
  other = $state.raw<OtherShop | null>(null);
  /** What was done last, such as a file that was written; or why it was not. */
  said = $state.raw<{ readonly text: string; readonly wrong: boolean } | null>(null);
  /** Prints what is previewed; null while there is nothing. */
  printPreview: (() => void) | null = null;

  readonly summary = new Inquiry('summary');
  readonly parts = new Inquiry('parts');
  readonly comparison = new Inquiry('compare');

  constructor(today: string) {
    this.date = today;
  }

  tell(text: string, wrong = false): void {
    this.said = { text, wrong };
  }

  close(): void {
    for (const inquiry of [this.summary, this.parts, this.comparison]) inquiry.close();
  }
}
