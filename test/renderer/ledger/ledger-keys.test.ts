import { describe, expect, it } from 'vitest';
import { ledgerAct } from '../../../renderer/ledger/ledger-keys.ts';
import { ledgerRows, visibleRows } from '../../../renderer/ledger/ledger-rows.ts';
import { solvedExample } from '../../core/summary/figures/solved-example.ts';

const all = ledgerRows(
  solvedExample('one-router', 'router'),
  'si',
  new Set(['router', 'cyclone', 'fan', 'filter', 'out']),
);
const act = (key: string, at: string, rows = all) => ledgerAct(key, rows, at);
const movedTo = (key: string, at: string, rows = all) => {
  const done = act(key, at, rows);
  return done?.kind === 'move' ? done.row.key : null;
};

describe('keys of the ledger', () => {
  it('walk the rows and stop at the ends', () => {
    expect(movedTo('ArrowDown', 'R1')).toBe('R1/0');
    expect(movedTo('ArrowUp', 'R1/0')).toBe('R1');
    expect(movedTo('ArrowUp', 'R1')).toBeNull();
    expect(movedTo('End', 'R1')).toBe('R4/1');
    expect(movedTo('ArrowDown', 'R4/1')).toBeNull();
    expect(movedTo('Home', 'R4/1')).toBe('R1');
    expect(movedTo('PageDown', 'R4')).toBe('R4/1');
  });

  it('fold a run, lead from a piece to its run, and step over what is folded', () => {
    expect(act('ArrowLeft', 'R1')).toEqual({ kind: 'fold', run: 'R1' });
    expect(act('ArrowRight', 'R1')).toEqual({ kind: 'open', run: 'R1' });
    expect(movedTo('ArrowLeft', 'R1/3')).toBe('R1');
    expect(movedTo('ArrowDown', 'R1', visibleRows(all, new Set(['R1'])))).toBe('cyclone');
  });

  it('go to the plan with what the row selects', () => {
    const done = act('Enter', 'R1/0');
    expect(done?.kind === 'go' && done.row.select).toBe('router');
  });

  it('leave every other key alone', () => {
    for (const key of ['a', 'Tab', 'Escape', 'F1', '1']) expect(act(key, 'R1')).toBeNull();
    expect(ledgerAct('ArrowDown', all, 'gone')).toBeNull();
  });
});
