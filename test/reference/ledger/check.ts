import { expect } from 'vitest';

/** What a check rests on. */
export type CheckBasis =
  'published' | 'from-memory' | 'common-practice' | 'independent-program' | 'hand-calculation';

/**
 * `value`: a figure from outside our code. `second-route`: the same figure got another way. `limit`: what must hold at an
 * end of the range, a sign, an order.
 */
export type CheckKind = 'value' | 'limit' | 'second-route';

/** What a declaration says, all of it literal, so that it can be read without running. */
export interface Claim {
  /** Exported function, by name or as `core/folder/file.ts#name`; several if one figure checks them together. */
  readonly relation: string | readonly string[];
  /** The outside thing: publication, table, data file, worked example. */
  readonly source: string;
  readonly basis: CheckBasis;
  readonly kind: CheckKind;
}

/** What one declaration came to in a run of its test file. */
export interface CheckRecord {
  /** As declared. */
  readonly relations: readonly string[];
  readonly source: string;
  readonly basis: CheckBasis;
  readonly kind: CheckKind;
  /** Largest deviation seen, and the unit if it is not relative; null if nothing was measured. */
  readonly deviation: { readonly largest: number; readonly unit: string | null } | null;
  /** As it stands on the page; null if nothing was measured. */
  readonly tolerance: string | null;
  /** Conditions that held, each once. */
  readonly held: readonly string[];
}

/** A tolerance in words, for one that depends on the case: `a fifth and 0.05`. */
export interface Stated {
  readonly stated?: string;
}

/** One declared check: measures, fails like any expectation, and remembers the worst. */
export class Check {
  private largest = -1;
  private unit: string | null = null;
  private tolerance: string | null = null;
  private readonly words = new Set<string>();

  constructor(readonly claim: Claim) {
    for (const text of [claim.source, ...[claim.relation].flat()]) {
      if (text === '' || /[|\n]/.test(text)) throw new Error(`must be one line without "|": "${text}"`);
    }
  }

  /** Fails unless `value` is within `tolerance` of `reference`, relative to it. */
  within(value: number, reference: number, tolerance: number, { stated }: Stated = {}): void {
    const off = Math.abs(value - reference) / Math.abs(reference);
    this.measured(off, null, stated ?? shownShare(tolerance));
    expect(off, `${value} against ${reference}, ${this.claim.source}`).toBeLessThanOrEqual(tolerance);
  }

  /** Fails unless `value` is within `tolerance` of `reference`, in their own unit. */
  withinAbsolute(
    value: number,
    reference: number,
    tolerance: number,
    { stated, unit = '' }: Stated & { readonly unit?: string } = {},
  ): void {
    const off = Math.abs(value - reference);
    this.measured(off, unit, stated ?? `${tolerance} ${unit}`.trim());
    expect(off, `${value} against ${reference}, ${this.claim.source}`).toBeLessThanOrEqual(tolerance);
  }

  /** Fails unless a condition holds; `words` say what holds, without figures of the single case. */
  holds(condition: boolean, words: string): void {
    if (words === '' || /[|\n;]/.test(words))
      throw new Error(`must be one line without "|" or ";": "${words}"`);
    this.words.add(words);
    expect(condition, `${words}, ${this.claim.source}`).toBe(true);
  }

  record(): CheckRecord {
    const { relation, source, basis, kind } = this.claim;
    const relations = [relation].flat();
    const deviation = this.largest < 0 ? null : { largest: this.largest, unit: this.unit };
    return { relations, source, basis, kind, deviation, tolerance: this.tolerance, held: [...this.words] };
  }

  private measured(off: number, unit: string | null, tolerance: string): void {
    if (this.tolerance !== null && (this.tolerance !== tolerance || this.unit !== unit)) {
      throw new Error(
        `"${this.claim.source}" is measured by ${this.tolerance} and by ${tolerance}: declare two checks`,
      );
    }
    this.tolerance = tolerance;
    this.unit = unit;
    if (!(off <= this.largest)) this.largest = off;
  }
}

/** A share as a reader likes it: per cent from one in a thousand up, below that a power of ten. */
export function shownShare(share: number): string {
  if (share === 0) return 'none';
  return share >= 1e-3 ? `${Number((100 * share).toPrecision(6))} %` : share.toExponential();
}
