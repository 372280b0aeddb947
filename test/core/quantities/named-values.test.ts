import { describe, expect, it } from 'vitest';
import { resolveNamedValues } from '../../../core/quantities/named-values.ts';

describe('resolveNamedValues', () => {
  it('resolves rows in any order and finds their kinds', () => {
    const { values, errors } = resolveNamedValues([
      { name: 'reach', text: 'half * 2' },
      { name: 'half', text: '1.2 m' },
      { name: 'face', text: 'reach * half' },
      { name: 'spare', text: '10 %' },
      { name: 'room', text: '20 C' },
      { name: 'loft', text: 'room' },
    ]);
    expect(errors).toEqual([]);
    expect(Object.fromEntries(values)).toEqual({
      half: { si: 1.2, dimension: 'length' },
      reach: { si: 2.4, dimension: 'length' },
      face: { si: 2.88, dimension: 'area' },
      spare: { si: 0.1, dimension: 'coefficient' },
      room: { si: 293.15, dimension: 'temperature' },
      loft: { si: 293.15, dimension: 'temperature' },
    });
  });

  it('keeps to the kind that a row states', () => {
    const { values, errors } = resolveNamedValues([
      { name: 'spare', text: '10 %', dimension: 'fraction' },
      { name: 'drop', text: '4 kg', dimension: 'length' },
    ]);
    expect(values.get('spare')).toEqual({ si: 0.1, dimension: 'fraction' });
    expect(errors.map(({ field, reason }) => [field, reason])).toEqual([['drop', 'wrong-dimension']]);
  });

  it('names the circle, also for a row that only leans on it', () => {
    const { values, errors } = resolveNamedValues([
      { name: 'a', text: 'b + fine + bad' },
      { name: 'b', text: 'c' },
      { name: 'c', text: 'b + bad' },
      { name: 'self', text: 'self' },
      { name: 'fine', text: '1 m' },
      { name: 'bad', text: '1 m +' },
    ]);
    expect([...values.keys()]).toEqual(['fine']);
    expect(errors.map(({ field }) => field)).toEqual(['a', 'b', 'c', 'self', 'bad']);
    expect(errors[0]!.message).toContain('a -> b -> c -> b');
    expect(errors[1]!.message).toContain('b -> c -> b');
    expect(errors[2]!.message).toContain('c -> b -> c');
    expect(errors[3]!.message).toContain('self -> self');
    expect(errors[3]!.reason).toBe('not-allowed');
    expect(errors[4]!.reason).toBe('syntax');
  });

  it('says which refused row another one leans on', () => {
    const { errors } = resolveNamedValues([
      { name: 'a', text: 'b + 1 m' },
      { name: 'b', text: 'nowhere' },
    ]);
    expect(errors.map(({ reason }) => reason)).toEqual(['unknown-name', 'unknown-name']);
    expect(errors[0]!.message).toContain('`b`, which has an error of its own');
  });

  it('refuses names that are taken or unsafe', () => {
    const { values, errors } = resolveNamedValues([
      { name: 'reach', text: '1 m' },
      { name: 'reach', text: '2 m' },
      { name: 'm', text: '3 m' },
      { name: '__proto__', text: '4 m' },
      { name: 'constructor', text: '5 m' },
      { name: '', text: '6 m' },
    ]);
    expect([...values]).toEqual([['reach', { si: 1, dimension: 'length' }]]);
    expect(errors.map(({ reason }) => reason)).toEqual([
      'not-allowed',
      'not-allowed',
      'not-allowed',
      'not-allowed',
      'empty',
    ]);
  });

  it('resolves a long chain that is written last to first', () => {
    const length = 2000;
    const rows = Array.from({ length }, (_, row) => ({
      name: `step${row}`,
      text: row === length - 1 ? '1 mm' : `step${row + 1} + 1 mm`,
    }));
    const { values, errors } = resolveNamedValues(rows);
    expect(errors).toEqual([]);
    expect(values.get('step0')!.si).toBeCloseTo(2, 9);
  });
});
