import type { DocumentProblem } from '../../core/document/problem.ts';
import type { AirResult, SettingResult } from '../../core/network/solution.ts';
import type { SystemCurve } from '../../core/network/system-curve.ts';
import type { DocumentPatch } from './document-patch.ts';

/** What the page asks of the solver; `serial` tells answers of different documents apart. */
export type ToSolver = {
  readonly serial: number;
  /** From the document that was sent last to the one that is meant; null where it is the same. */
  readonly patch: DocumentPatch | null;
} & (
  | {
      readonly kind: 'solve';
      /** Names of the settings to solve, in order. */
      readonly settings: readonly string[];
    }
  | {
      readonly kind: 'curve';
      readonly setting: string;
      readonly fan: string | null;
      /** Speed of the fan over the one it has in the shop. */
      readonly speed: number;
    }
);

/** One setting solved. */
export interface SettingAnswer {
  readonly kind: 'setting';
  readonly serial: number;
  readonly result: SettingResult;
  readonly air: AirResult;
  /** Nothing more is to come of this document. */
  readonly last: boolean;
  /** From the document to this result, settings before it included. */
  readonly took_ms: number;
}

/** Why the document cannot be solved. */
export interface ProblemsAnswer {
  readonly kind: 'problems';
  readonly serial: number;
  readonly problems: readonly DocumentProblem[];
}

/** What the solver answers. */
export type FromSolver =
  | SettingAnswer
  | ProblemsAnswer
  | { readonly kind: 'curve'; readonly serial: number; readonly curve: SystemCurve | null };
