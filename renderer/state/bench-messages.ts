import type { Chance } from '../../core/chance/chance.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { Comparison } from '../../core/fan-bench/compare.ts';
import type { FanInShop } from '../../core/fan-bench/in-shop.ts';
import type { BenchPicture } from '../../core/fan-bench/picture.ts';
import type { FanBenchResult } from '../../core/fan-bench/result.ts';

/** What the fan bench is asked; `serial` tells answers of different documents apart. */
export type ToBench =
  | {
      readonly kind: 'fan';
      readonly serial: number;
      readonly document: ShopDocument;
      readonly design: string;
      readonly setting: string;
      /** Whether the shop can be solved, so that the fan can be tried in it. */
      readonly solvable: boolean;
    }
  | {
      readonly kind: 'compare';
      readonly serial: number;
      readonly document: ShopDocument;
      readonly setting: string;
      readonly solvable: boolean;
    }
  | {
      readonly kind: 'sheet';
      readonly serial: number;
      readonly document: ShopDocument;
      readonly design: string;
      readonly paper: 'a4' | 'letter';
    }
  | {
      readonly kind: 'chance';
      readonly serial: number;
      readonly document: ShopDocument;
      readonly setting: string;
    };

/** What it answers: of a fan first what its tests say, then how it runs in the shop. */
export type FromBench =
  | {
      readonly kind: 'fan';
      readonly serial: number;
      readonly result: FanBenchResult;
      readonly picture: BenchPicture;
    }
  | { readonly kind: 'shop'; readonly serial: number; readonly shop: FanInShop | null }
  | { readonly kind: 'compare'; readonly serial: number; readonly comparison: Comparison }
  | { readonly kind: 'sheet'; readonly serial: number; readonly html: string }
  | { readonly kind: 'drawn'; readonly serial: number; readonly samples: number }
  | { readonly kind: 'chance'; readonly serial: number; readonly chance: Chance }
  | {
      readonly kind: 'fault';
      readonly serial: number;
      readonly of: ToBench['kind'];
      readonly message: string;
    };
