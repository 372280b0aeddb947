import { describe, expect, it } from 'vitest';
import type { Chance } from '../../../core/chance/chance.ts';
import { book, changed, file, good } from '../book.ts';

const asking = () => changed((raw) => (raw.runs[0]!.requiredVelocity = 20));

describe('book chance', () => {
  it('says of every setting how likely each run holds, and what that rests on', () => {
    const path = asking();
    const { out, code } = book(['chance', path, '--samples', '200'], path);
    expect(code).toBe(0);
    expect(out).toContain('SETTING "open", 200 cases, seed 1');
    expect(out).toContain('SETTING "half", 200 cases, seed 1');
    expect(out).toMatch(/^ {2}The run from saw \(R1\)/m);
    expect(out).toContain('friction of rigid duct');
    expect(out).toContain('A chance is no better than these ranges');
    expect(out.split('\n').every((line) => line.length <= 130)).toBe(true);
  });

  it('does one setting, with samples and seed as told', () => {
    const path = asking();
    const { out } = book(
      ['chance', path, '--setting', 'half', '--samples', '50', '--seed', '9', '--json'],
      path,
    );
    const chances = JSON.parse(out) as Chance[];
    expect(chances.map((c) => [c.setting, c.samples, c.seed])).toEqual([['half', 50, 9]]);
    expect(
      book(['chance', path, '--setting', 'half', '--samples', '50', '--seed', '9', '--json'], path).out,
    ).toBe(out);
    const other = book(
      ['chance', path, '--setting', 'half', '--samples', '50', '--seed', '10', '--json'],
      path,
    );
    expect(other.out).not.toBe(out);
  });

  it('prints in the units asked for', () => {
    const path = asking();
    const { out } = book(['chance', path, '--samples', '20', '--units', 'us'], path);
    expect(out).toContain('fpm');
    expect(out).not.toMatch(/m3\/h|m\/s|Pa\b/);
  });

  it.each([
    [['--samples', 'many'], '--samples is a whole number from 10 to 100000, not "many"'],
    [['--samples', '3'], '--samples'],
    [['--seed', '-1'], 'seed'],
    [['--seed', '1.5'], '--seed is a whole number from 0 to 4294967295, not "1.5"'],
    [['--setting', 'none'], 'name one of "open", "half"'],
  ])('refuses %o and says what is possible', (more, message) => {
    const path = asking();
    const outcome = book(['chance', path, ...more], path);
    expect(outcome.code).toBe(1);
    expect(outcome.err).toContain(message);
  });

  it('tells which setting has no result, and where to look', () => {
    const path = changed((raw) => {
      raw.settings = [{ name: 'shut', gates: { G1: '0 %' } }];
    });
    const outcome = book(['chance', path], path);
    expect(outcome.code).toBe(3);
    expect(outcome.err).toContain('no solution in setting "shut": no open path');
    expect(outcome.err).toContain('remedy');
    expect(outcome.out).toContain('Nothing can be said of chances');
  });

  it('names the field of a range that cannot be', () => {
    const path = changed((raw) => (raw.ranges = { friction: '-5 %' }));
    const outcome = book(['chance', path], path);
    expect(outcome.code).toBe(2);
    expect(outcome.err).toContain('ranges.friction');
    expect(outcome.err).toContain('remedy');
    const plain = file(good());
    expect(book(['chance', plain, '--samples', '20'], plain).out).toContain(
      'No run asks for a velocity or a flow',
    );
  });
});
