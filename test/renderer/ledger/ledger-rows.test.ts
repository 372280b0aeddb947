import { describe, expect, it } from 'vitest';
import { ledgerRows, selectionOf, visibleRows } from '../../../renderer/ledger/ledger-rows.ts';
import { exampleDocument, solvedExample } from '../../core/summary/figures/solved-example.ts';

const things = new Set(exampleDocument('five-machines').things.map((thing) => thing.id));
const result = solvedExample('five-machines', 'planer alone');
const rows = ledgerRows(result, 'us', things);

describe('rows of the ledger', () => {
  it('hold every piece that air moves through, once, under its run', () => {
    const moving = result.runs.filter((run) => run.massFlow_kgs !== 0);
    const pieces = rows.flatMap((row) => (row.kind === 'piece' ? [row] : []));
    expect(pieces.length).toBe(moving.reduce((sum, run) => sum + run.pieces.length, 0));
    expect(new Set(rows.map((row) => row.key)).size).toBe(rows.length);
    expect(rows.filter((row) => row.kind === 'run').length).toBe(result.runs.length);
  });

  it('follow the air: planer, main, cyclone, fan, filter, outlet', () => {
    const order = rows.filter((r) => r.kind !== 'piece').map((r) => r.key);
    const at = ['R1', 'M1', 'M4', 'cyclone', 'S1', 'fan', 'S2', 'filter', 'S3'].map((id) =>
      order.indexOf(id),
    );
    expect(at).toEqual([...at].sort((a, b) => a - b));
  });

  it('give a column one number of decimals, so that figures stand under each other', () => {
    const decimals = (text: string) => text.split('.')[1]?.length ?? 0;
    const losses = rows.flatMap((row) => (row.kind === 'piece' ? [row.figures.loss] : []));
    expect(new Set(losses.map(decimals))).toEqual(new Set([2]));
    expect(rows.some((row) => row.kind === 'piece' && /^-0\.?0*$/.test(row.figures.loss))).toBe(false);
  });

  it('subtotal what the pieces of a run lose', () => {
    for (const row of rows) {
      if (row.kind !== 'run' || row.loss === '') continue;
      const sum = row.run.pieces.reduce((total, p) => total + p.loss_Pa, 0);
      expect(row.run.lossTotal_Pa).toBeCloseTo(sum, 4);
    }
  });

  it('select the junction for what it takes, and the piece for the rest', () => {
    expect(selectionOf('W1.main', things)).toBe('W1');
    expect(selectionOf('R1.4', things)).toBe('R1.4');
    expect(rows.find((r) => r.kind === 'piece' && r.piece.id === 'W1.main')!.select).toBe('W1');
  });

  it('hide the pieces of a folded run and nothing else', () => {
    const shown = visibleRows(rows, new Set(['R1']));
    const hidden = rows.filter((row) => !shown.includes(row));
    expect(hidden.length).toBeGreaterThan(0);
    expect(hidden.every((row) => row.kind === 'piece' && row.runId === 'R1')).toBe(true);
  });
});
