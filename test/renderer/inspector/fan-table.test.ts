import { describe, expect, it } from 'vitest';
import { isTable, readFanTable } from '../../../renderer/inspector/fan-table.ts';

describe('a pasted fan table', () => {
  it('reads tabs, gives bare numbers the unit on screen and keeps units that are there', () => {
    expect(readFanTable('0\t2500\n400\t2.4 kPa\t300', 'si')).toEqual([
      { flow: '0 m3/h', pressure: '2500 Pa' },
      { flow: '400 m3/h', pressure: '2.4 kPa', power: '300 W' },
    ]);
    expect(readFanTable('350\t8', 'us')).toEqual([{ flow: '350 cfm', pressure: '8 in wg' }]);
  });

  it('takes the units of a heading', () => {
    expect(readFanTable('Flow [l/s]\tStatic (mmH2O)\r\n100\t250\r\n', 'si')).toEqual([
      { flow: '100 l/s', pressure: '250 mmH2O' },
    ]);
  });

  it('reads a decimal comma, but not one that may stand between thousands', () => {
    expect(readFanTable('0,5;12,25', 'si')).toEqual([{ flow: '0.5 m3/h', pressure: '12.25 Pa' }]);
    expect(readFanTable('1,200\t500', 'us')).toEqual([{ flow: '1,200', pressure: '500 in wg' }]);
  });

  it('keeps what cannot be read, so that its field can say so, and leaves gaps empty', () => {
    expect(readFanTable('0\toops\t\t3', 'si')).toEqual([
      { flow: '0 m3/h', pressure: 'oops', current: '3 A' },
    ]);
    expect(readFanTable('\n \n', 'si')).toEqual([]);
  });

  it('is told from one value', () => {
    expect(isTable('350 cfm')).toBe(false);
    expect(isTable('350 cfm\n')).toBe(false);
    expect(isTable('1\t2')).toBe(true);
    expect(isTable('1\n2')).toBe(true);
  });
});
