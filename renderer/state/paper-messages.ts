import type { ShopDocument } from '../../core/document/schema.ts';
import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import type { Compared } from '../../core/summary/compare.ts';
import type { PartsList } from '../../core/summary/parts/result.ts';
import type { Summary, SummaryOptions } from '../../core/summary/summary.ts';
import type { UpkeepOutcome } from '../../core/upkeep/upkeep.ts';

/** What is asked about running hours and paper, and what is answered; `units` of a document are those on screen. */
export interface PaperWork {
  readonly upkeep: {
    readonly asked: { readonly document: ShopDocument; readonly hours: number };
    readonly answer: UpkeepOutcome;
  };
  readonly parts: {
    readonly asked: { readonly document: ShopDocument };
    readonly answer: PartsList;
  };
  readonly summary: {
    readonly asked: { readonly document: ShopDocument; readonly options: SummaryOptions };
    readonly answer: Summary;
  };
  readonly compare: {
    readonly asked: {
      readonly before: ShopDocument;
      readonly after: ShopDocument;
      readonly units: UnitSystem;
    };
    readonly answer: Compared;
  };
}

export type PaperKind = keyof PaperWork;

export type ToPaper = {
  readonly [K in PaperKind]: {
    readonly kind: 'paper';
    readonly of: K;
    readonly serial: number;
    readonly asked: PaperWork[K]['asked'];
  };
}[PaperKind];

export type FromPaper =
  | {
      readonly kind: 'paper';
      readonly serial: number;
      readonly ok: true;
      readonly answer: PaperWork[PaperKind]['answer'];
    }
  | { readonly kind: 'paper'; readonly serial: number; readonly ok: false; readonly message: string };
