import type { LedgerRow } from './ledger-rows.ts';

/** What a key does in the ledger. */
export type LedgerAct =
  | { readonly kind: 'move'; readonly row: LedgerRow }
  | { readonly kind: 'fold' | 'open'; readonly run: string }
  | { readonly kind: 'go' | 'select'; readonly row: LedgerRow };

/** Rows that a page key passes over. */
const PAGE = 12;

/** What a key does on a row; null where it does nothing. */
export function ledgerAct(key: string, rows: readonly LedgerRow[], rowKey: string | null): LedgerAct | null {
  const at = rows.findIndex((row) => row.key === rowKey);
  const row = rows[at];
  if (!row) return null;
  const move = (to: LedgerRow | undefined): LedgerAct | null =>
    to && to !== row ? { kind: 'move', row: to } : null;
  switch (key) {
    case 'ArrowDown':
      return move(rows[at + 1]);
    case 'ArrowUp':
      return move(rows[at - 1]);
    case 'PageDown':
      return move(rows[Math.min(at + PAGE, rows.length - 1)]);
    case 'PageUp':
      return move(rows[Math.max(at - PAGE, 0)]);
    case 'Home':
      return move(rows[0]);
    case 'End':
      return move(rows.at(-1));
    case 'ArrowRight':
      return row.kind === 'run' ? { kind: 'open', run: row.key } : null;
    case 'ArrowLeft':
      if (row.kind === 'run') return { kind: 'fold', run: row.key };
      return row.kind === 'piece' ? move(rows.find((other) => other.key === row.runId)) : null;
    case 'Enter':
      return { kind: 'go', row };
    case ' ':
      return { kind: 'select', row };
    default:
      return null;
  }
}
