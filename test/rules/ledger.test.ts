import { describe, expect, it } from 'vitest';
import { Check, type Claim } from '../reference/ledger/check.ts';
import { MARK, checksPage, titleOf } from '../reference/ledger/page.ts';
import { differences, sameDeviation, shownDeviation } from '../reference/ledger/rows.ts';
import { parseDocComment } from './doc-comment.ts';

const claim: Claim = { relation: 'wind', source: 'a book', basis: 'from-memory', kind: 'value' };
const check = (more: Partial<Claim> = {}) => new Check({ ...claim, ...more });

describe('a check', () => {
  it('fails beyond its tolerance and remembers the largest deviation', () => {
    const made = check();
    made.within(1.01, 1, 0.05);
    made.within(0.97, 1, 0.05);
    made.within(1, 1, 0.05);
    expect(made.record()).toMatchObject({ tolerance: '5 %', deviation: { unit: null } });
    expect(made.record().deviation!.largest).toBeCloseTo(0.03, 12);
    expect(() => check().within(1.06, 1, 0.05)).toThrow('a book');
    expect(() => check().within(NaN, 1, 0.05)).toThrow();
    expect(() => check().within(1, 0, 0.05)).toThrow();
    expect(() => check().withinAbsolute(1.06, 1, 0.05)).toThrow();
    expect(() => check().withinAbsolute(NaN, 1, 0.05)).toThrow();
  });

  it('has one tolerance and one unit', () => {
    const made = check();
    made.within(1, 1, 0.05);
    expect(() => made.within(1, 1, 0.06)).toThrow('two checks');
    expect(() => made.withinAbsolute(1, 1, 0.05, { stated: '5 %' })).toThrow('two checks');
    const stated = check();
    stated.withinAbsolute(1, 1.1, 0.2, { stated: 'a fifth', unit: 'Pa' });
    stated.withinAbsolute(1, 1.1, 0.3, { stated: 'a fifth', unit: 'Pa' });
    expect(stated.record()).toMatchObject({ tolerance: 'a fifth', deviation: { unit: 'Pa' } });
  });

  it('fails where a condition does not hold, and keeps each condition once', () => {
    const made = check({ kind: 'limit' });
    made.holds(true, 'rises');
    made.holds(true, 'rises');
    expect(made.record()).toMatchObject({ held: ['rises'], deviation: null });
    expect(() => made.holds(false, 'falls')).toThrow('falls');
  });

  it('refuses what would break the page', () => {
    expect(() => check({ source: 'a|b' })).toThrow();
    expect(() => check({ source: '' })).toThrow();
    expect(() => check().holds(true, 'a; b')).toThrow();
  });
});

describe('a deviation', () => {
  it.each([
    [0, null, 'below 1e-12'],
    [3e-16, null, 'below 1e-12'],
    [3.44e-8, null, '3.4e-8'],
    [0.00123, null, '0.12 %'],
    [0.1549, null, '15 %'],
    [1.234, null, '120 %'],
    [0.0213, '', '0.021'],
    [13.4, 'Pa', '13 Pa'],
  ])('of %d (%s) is shown as %s and known again', (largest, unit, shown) => {
    expect(shownDeviation(largest, unit)).toBe(shown);
    expect(sameDeviation(shown, largest, unit)).toBe(true);
  });

  it('may differ in the last digit and in rounding, not more', () => {
    expect(sameDeviation('0.12 %', 0.00131, null)).toBe(true);
    expect(sameDeviation('0.12 %', 0.0015, null)).toBe(false);
    expect(sameDeviation('0.12 %', 0.0009, null)).toBe(false);
    expect(sameDeviation('9.9e-5', 0.0001, null)).toBe(true);
    expect(sameDeviation('0.1 %', 0.000996, null)).toBe(true);
    expect(sameDeviation('below 1e-12', 3e-12, null)).toBe(true);
    expect(sameDeviation('2.5e-12', 2e-16, null)).toBe(true);
    expect(sameDeviation('below 1e-12', 3e-11, null)).toBe(false);
    expect(sameDeviation('3e-11', 2e-16, null)).toBe(false);
    expect(sameDeviation('13 Pa', 13.2, 'm')).toBe(false);
    expect(sameDeviation('13 Pa', 0.13, null)).toBe(false);
    expect(sameDeviation('13 %', 13, '')).toBe(false);
  });
});

describe('the page', () => {
  const doc = parseDocComment('/**\n * How hard the wind\n * blows: a guess.\n */');
  const relations = [{ path: 'core/air/made.ts', name: 'wind', doc }];
  const measured = (value: number, more: Partial<Claim> = {}) => {
    const made = check(more);
    made.within(value, 1, 0.05);
    made.holds(true, 'rises, at all times');
    return made.record();
  };
  const page = checksPage('# Head\n', new Map([['made', [measured(1.03)]]]), relations);

  it('has the head, the row, and a list of what is weak', () => {
    expect(page.startsWith(`# Head\n\n${MARK}\n`)).toBe(true);
    expect(page).toContain(
      '| How hard the wind blows: `wind` | a book | 3 %; holds: rises, at all times | 5 % | from-memory | made |',
    );
    const [, memory] = page.split('## Rests on memory');
    expect(memory).toContain('- How hard the wind blows: `wind`');
    expect(memory!.split('`wind`')).toHaveLength(2);
  });

  it('puts a relation with limits alone, or with a second route, on its list', () => {
    for (const [kind, title] of [
      ['limit', 'Limits only'],
      ['second-route', 'A second route only'],
    ] as const) {
      const weak = checksPage('', new Map([['made', [measured(1, { kind })]]]), relations);
      expect(weak.split('## ').find((part) => part.startsWith(title))).toContain('- How hard');
      expect(weak.match(/- How hard/g)).toHaveLength(1);
    }
  });

  it('shortens a long sentence at a comma', () => {
    const summary = `${'very '.repeat(12)}long, ${'and longer '.repeat(6)}still`;
    expect(titleOf({ name: 'x', doc: { summary, tags: [] } })).toBe(`${'very '.repeat(12)}long: \`x\``);
  });

  it('agrees with what was measured, and with nothing else', () => {
    expect(differences('made', [measured(1.03)], page)).toEqual([]);
    expect(differences('made', [measured(1.0305)], page)).toEqual([]);
    expect(differences('made', [measured(1.02)], page)).toHaveLength(1);
    expect(differences('made', [measured(1.03, { basis: 'published' })], page)).toHaveLength(1);
    expect(differences('made', [measured(1.03, { source: 'a map' })], page)).toHaveLength(2);
    expect(differences('made', [], page)).toEqual(['on the page, no longer declared: wind, a book, made']);
    expect(differences('other', [], page)).toEqual([]);
    expect(differences('made', [measured(1.03), measured(1.03)], page)).toHaveLength(1);
    expect(differences('made', [measured(1.03), check({ source: 'x' }).record()], page)).toHaveLength(2);
    const { held, ...record } = measured(1.03);
    expect(differences('made', [{ ...record, held: [...held, 'falls'] }], page)).toHaveLength(1);
  });
});
