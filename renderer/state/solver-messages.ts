import type { DocumentProblem } from '../../core/document/problem.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { AirResult, SettingResult } from '../../core/network/solution.ts';
import type { SystemCurve } from '../../core/network/system-curve.ts';

/** What the page asks of the solver; `serial` tells answers of different documents apart. */
export type ToSolver =
  | {
      readonly kind: 'solve';
      readonly serial: number;
      readonly document: ShopDocument;
      readonly setting: string;
    }
  | {
      readonly kind: 'curve';
      readonly serial: number;
      readonly setting: string;
      readonly fan: string | null;
      /** Speed of the fan over the one it has in the shop. */
      readonly speed: number;
    };

/** What the solver answers. */
export type FromSolver =
  | {
      readonly kind: 'setting';
      readonly serial: number;
      readonly result: SettingResult;
      readonly air: AirResult;
      readonly last: boolean;
      readonly took_ms: number;
    }
  | { readonly kind: 'problems'; readonly serial: number; readonly problems: readonly DocumentProblem[] }
  | { readonly kind: 'curve'; readonly serial: number; readonly curve: SystemCurve | null };
