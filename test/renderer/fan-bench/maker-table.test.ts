import { describe, expect, it } from 'vitest';
import { readMakerTable } from '../../../renderer/fan-bench/maker-table.ts';

describe("a maker's table", () => {
  it('is read with names and units of its heading, in any order of columns', () => {
    const { points, problems } = readMakerTable(
      'Pressure [in wg],Flow (cfm),Shaft power (hp)\n10,0,0.5\n"8",400,0.9\n',
      'si',
    );
    expect(problems).toEqual([]);
    expect(points).toEqual([
      { kind: 'point', pressure: '10 in wg', flow: '0 cfm', power: '0.5 hp' },
      { kind: 'point', pressure: '8 in wg', flow: '400 cfm', power: '0.9 hp' },
    ]);
  });

  it('is flow, pressure, power in the units on screen where it says nothing', () => {
    expect(readMakerTable('0\t2500\n400\t2300\t350', 'si').points).toEqual([
      { kind: 'point', flow: '0 m3/h', pressure: '2500 Pa' },
      { kind: 'point', flow: '400 m3/h', pressure: '2300 Pa', power: '350 W' },
    ]);
    expect(readMakerTable('0\t10', 'us').points).toEqual([
      { kind: 'point', flow: '0 cfm', pressure: '10 in wg' },
    ]);
  });

  it('takes decimal commas between semicolons, and units in the cells', () => {
    expect(readMakerTable('flow;static pressure\n"0,5 m3/s";1,2 kPa\n', 'si').problems).toHaveLength(1);
    expect(readMakerTable('flow (m3/s);pressure (kPa)\n0,5;1,25', 'si').points).toEqual([
      { kind: 'point', flow: '0.5 m3/s', pressure: '1.25 kPa' },
    ]);
    expect(readMakerTable('0.5 m3/s\t1.2 kPa', 'us').points).toEqual([
      { kind: 'point', flow: '0.5 m3/s', pressure: '1.2 kPa' },
    ]);
  });

  it('tells rows that cannot be read by their number, and takes the others', () => {
    const { points, problems } = readMakerTable(
      'flow,pressure\n0,2500\nmuch,2400\n800\n900,3 kg\n1000,900',
      'si',
    );
    expect(points.map(({ flow }) => flow)).toEqual(['0 m3/h', '1000 m3/h']);
    expect(problems.map((text) => text.slice(0, 6))).toEqual(['row 3:', 'row 4:', 'row 5:']);
    expect(problems[1]).toMatch(/pressure/);
    expect(problems[2]).toMatch(/3 kg/);
  });

  it.each(['', ' \n ', 'flow,pressure', 'flow,pressure\n,\n'])('has no points in %j', (text) => {
    expect(readMakerTable(text, 'si').points).toEqual([]);
  });
});
