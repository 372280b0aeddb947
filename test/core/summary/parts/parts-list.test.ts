import { csvParseRows } from 'd3-dsv';
import { describe, expect, it } from 'vitest';
import { partsCsv, safeCell } from '../../../../core/summary/parts/parts-csv.ts';
import { partsList } from '../../../../core/summary/parts/parts-list.ts';
import type { PartKind } from '../../../../core/summary/parts/result.ts';
import { exhaust, gate, port, run, shopOf, STEADY_FAN, straight } from '../../network/shop.ts';
import { exampleDocument } from '../../upkeep/examples.ts';

const counted = (name: Parameters<typeof exampleDocument>[0]) => {
  const { rows } = partsList(exampleDocument(name));
  return Object.fromEntries(
    rows.map(({ kind, diameter_m, angle_rad, count, of }) => {
      const size = diameter_m === null ? of! : (diameter_m / 0.001).toFixed(0);
      const turn = kind === 'elbow' ? ` ${((angle_rad! * 180) / Math.PI).toFixed(0)}` : '';
      return [`${kind} ${size}${turn}`, count];
    }),
  );
};
const lengthOf = (name: Parameters<typeof exampleDocument>[0], kind: PartKind, diameter_m: number) =>
  partsList(exampleDocument(name)).rows.find(
    (r) => r.kind === kind && Math.abs(r.diameter_m! - diameter_m) < 1e-6,
  )!.length_m!;

describe('parts counted by hand from the drawing', () => {
  it('one router', () => {
    // R1: hose down from the router and through its bend, then duct up to the gate, duct, elbow down, duct, elbow, duct:
    //     4 ducts, 2 elbows, 1 gate, 1 hose; a clamp at either end of the hose; gate 2, elbows 4, cyclone 1: 7 joints
    // R2: duct, elbow, duct at 125; cyclone 1, elbow 2, fan 1: 4 joints
    // R3: duct and a reducer from 100 to 160; fan 1, between them 1; at 160 into the filter 1
    // R4: one duct of 300, a joint at the filter, open to the room
    expect(counted('one-router')).toEqual({
      'duct 300': 1,
      'duct 125': 2,
      'duct 100': 5,
      'hose 100': 1,
      'elbow 125 90': 1,
      'elbow 100 90': 2,
      'reducer 160': 1,
      'gate 100': 1,
      'separator 300': 1,
      'filter-medium cartridge-pleated-polyester': 1,
      'fan 100': 1,
      'other 160': 1,
      'clamp 100': 2,
      'joint 300': 1,
      'joint 160': 1,
      'joint 125': 4,
      'joint 100': 9,
    });
  });

  it('five machines', () => {
    // 6 in: R1 4 ducts, M1 M2 M3 1 each, R6 5, M4 2: 14; elbows R1 2, R6 2 and one of 60 degrees, M4 1
    // 5 in: R2 4, R3 4, R4 1: 9 ducts; R2 and R3 an elbow of 90 and one of 60 each; hoses R2, R3, R4
    // 4 in: R7 4 ducts, elbows of 90 and 45, hose; 3 in: R5 all hose; 7 in: S1, S2; 24 in: S3
    // joints 6 in: R1 gate 2, elbows 4, wye 1 (7); M1 M2 M3 2 each (6); R6 elbows 6, gate 2, ends 2 (10);
    //   M4 elbow 2, ends 2 (4): 27
    // joints 5 in: R2 and R3 as R1 (7 each), R4 at the wye 1: 15; 4 in: R7 7; 7 in: S1 2, S2 fan and reducer 2;
    //   10 in: reducer to filter 1; 24 in: filter 1. A clamp at either end of five hoses
    expect(counted('five-machines')).toEqual({
      'duct 610': 1,
      'duct 178': 2,
      'duct 152': 14,
      'duct 127': 9,
      'duct 102': 4,
      'hose 152': 1,
      'hose 127': 3,
      'hose 102': 1,
      'hose 76': 1,
      'elbow 152 90': 5,
      'elbow 152 60': 1,
      'elbow 127 90': 2,
      'elbow 127 60': 2,
      'elbow 102 90': 1,
      'elbow 102 45': 1,
      'reducer 254': 1,
      'wye 152': 1, // the last of four rows with this way out, told apart below
      'gate 152': 2,
      'gate 127': 2,
      'gate 102': 1,
      'separator 533': 1,
      'filter-medium cartridge-pleated-polyester': 1,
      'fan 178': 1,
      'other 254': 1,
      'other 152': 1,
      'clamp 152': 2,
      'clamp 127': 6,
      'clamp 102': 2,
      'clamp 76': 2,
      'joint 610': 1,
      'joint 254': 1,
      'joint 178': 4,
      'joint 152': 27,
      'joint 127': 15,
      'joint 102': 7,
    });
    const wyes = partsList(exampleDocument('five-machines')).rows.filter(({ kind }) => kind === 'wye');
    // saw-wye: 5 in and 3 in into 6 in; W1 and W2: 6 and 5 into 6; W3: 6 and 6; W4: 6 and 4
    expect(
      wyes.map((w) =>
        [w.mainDiameter_m, w.toDiameter_m, w.count].map((v) => (v === null ? v : Number(v.toFixed(4)))),
      ),
    ).toEqual(
      expect.arrayContaining([
        [0.127, 0.0762, 1],
        [null, 0.127, 2],
        [null, 0.1524, 1],
        [null, 0.1016, 1],
      ]),
    );
    // 6 in duct: .58 + 2.85 + 9 + 3.75 + 5 + 5 + 5 + .75 + 3.15 + 3.15 + 6.32 + 1.57 + 3.25 + 1.77 ft, as the ledger prints them
    expect(lengthOf('five-machines', 'duct', 0.1524) / 0.3048).toBeCloseTo(51.14, 1);
  });

  it('bench line', () => {
    // R1 and R2: hose with its bends, duct, gate, duct to the wye: 2 ducts each, 3 joints each, 2 clamps each
    // R3: one duct between wye and cyclone, 2 joints; R4: all hose, 2 clamps; R5: duct, elbow, duct: 4 joints
    // R6: one duct from the motor into the box, 2 joints; R7: one duct of 200, open to the room
    const parts = counted('bench-line');
    expect(parts).toMatchObject({
      'duct 200': 1,
      'duct 50': 3,
      'duct 38': 5,
      'hose 50': 1,
      'hose 38': 2,
      'elbow 50 90': 1,
      'wye 38': 1,
      'gate 38': 2,
      'separator 125': 1,
      'fan 50': 1,
      'clamp 50': 2,
      'clamp 38': 4,
      'joint 200': 1,
      'joint 50': 6,
      'joint 38': 8,
    });
  });
});

const simple = (more = {}) =>
  shopOf(
    [port('port'), STEADY_FAN, exhaust()],
    [run('r1', 'port', 'fan', [straight(4), gate('g'), straight(1)]), run('r2', 'fan', 'out', [straight(1)])],
    more,
  );

describe('what to buy', () => {
  it('counts what is left of the cut lengths towards the spare', () => {
    const { rows } = partsList(simple());
    const duct = rows.find(({ kind }) => kind === 'duct')!;
    // 4 m is a length and 1 m; with the other two metres that is 2 lengths of 3 m, cut to the end
    expect(duct).toMatchObject({ count: 3, length_m: 6, buy: 3 });
    expect(duct.cutting).toMatchObject({ extraJoints: 1, bars: { length: 3 } });
    const free = partsList(simple({ parts: { spare: 0, kerf: 0 } })).rows.find(
      ({ kind }) => kind === 'duct',
    )!;
    expect(free).toMatchObject({ buy: 2 });
  });

  it('prices and weighs by the key of a part, and says what has none', () => {
    const key = partsList(simple()).rows.find(({ kind }) => kind === 'gate')!.key;
    const priced = partsList(
      simple({
        parts: {
          money: 'EUR',
          prices: [
            { part: key, price: 12.5, weight: '400 g' },
            { part: 'elbow 80', price: 1 },
          ],
        },
      }),
    );
    expect(priced).toMatchObject({
      totalPrice: 12.5,
      totalWeight_kg: 0.4,
      unusedPrices: ['elbow 80'],
      money: 'EUR',
    });
    expect(priced.unpriced).toBe(priced.rows.length - 1);
  });

  it('a price with letters is refused at its field', () => {
    expect(() => simple({ parts: { prices: [{ part: 'gate 100', price: '12 euro' }] } })).toThrow(
      /parts\.prices\[0\]\.price|parts.*price/,
    );
  });
});

describe('comma-separated values', () => {
  it('are read back as they were', () => {
    const list = partsList(exampleDocument('five-machines'));
    const text = partsCsv(list);
    expect(text.split('\r\n').length).toBe(list.rows.length + 2);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const rows = csvParseRows(text);
    expect(rows.slice(1).map((cells) => cells[0])).toEqual(list.rows.map(({ label }) => label));
  });

  it('run nothing in a spreadsheet', () => {
    for (const evil of ['=cmd()', '+1', '-1+2', '@SUM(A1)', '\t=1', '\r=1'])
      expect(safeCell(evil)).toBe(`'${evil}`);
    const shop = shopOf(
      [port('port'), { ...STEADY_FAN, name: '=cmd|"/c calc"!A1' }, exhaust()],
      [run('r1', 'port', 'fan'), run('r2', 'fan', 'out')],
    );
    const cells = csvParseRows(partsCsv(partsList(shop))).flat();
    expect(cells.some((cell) => /^[=+\-@]/.test(cell))).toBe(false);
    expect(cells.some((cell) => cell.includes('=cmd|"/c calc"!A1'))).toBe(true);
  });
});
