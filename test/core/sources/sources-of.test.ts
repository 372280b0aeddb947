import { describe, expect, it } from 'vitest';
import type { ShopDocument } from '../../../core/document/schema.ts';
import type { SettingResult } from '../../../core/network/solution.ts';
import { BASES } from '../../../core/quantities/sourced.ts';
import { printQuantity } from '../../../core/quantities/print.ts';
import { GRADE_MODELS } from '../../../core/separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS } from '../../../core/separator/pressure-drop.ts';
import { RELATIONS } from '../../../core/sources/relations.ts';
import { WHOLE_SHOP } from '../../../core/sources/source-row.ts';
import type { SourceRow } from '../../../core/sources/source-row.ts';
import { EXAMPLES, exampleDocument } from '../upkeep/examples.ts';
import { everyKind, rowsOf } from './shops.ts';

/** Ids of all that a result gives a number of its own for. */
function withNumbers(document: ShopDocument, settings: readonly SettingResult[]): Set<string> {
  const ids = settings.flatMap((setting) => [
    ...setting.runs.flatMap((run) => run.pieces.map(({ id }) => id)),
    ...setting.devices.map(({ id }) => id),
    ...setting.fans.map(({ id }) => id),
    ...setting.runs.flatMap((run) => (run.requiredVelocity_ms === null ? [] : [run.id])),
  ]);
  const ends = document.things.filter(({ kind }) => ['port', 'leak', 'exhaust', 'pressure'].includes(kind));
  const joints = document.things.filter(({ kind }) => ['wye', 'tee', 'breeches', 'joint'].includes(kind));
  return new Set([...ids, ...ends.map(({ id }) => id), ...joints.map(({ id }) => id)]);
}

const shops: readonly (readonly [string, () => ShopDocument])[] = [
  ...EXAMPLES.map((name) => [name, () => exampleDocument(name)] as const),
  ['every kind', everyKind],
];

describe.each(shops)('what the results of %s rest on', (_name, make) => {
  const document = make();
  const { settings, rows } = rowsOf(document);

  it('names each piece, device, fan, end and junction with a number', () => {
    expect(settings.every(({ converged }) => converged)).toBe(true);
    const named = new Set(rows.flatMap(({ where }) => where));
    const ids = withNumbers(document, settings);
    expect(ids.size).toBeGreaterThan(document.things.length);
    expect([...ids].filter((id) => !named.has(id))).toEqual([]);
  });

  it('gives every row a source, a basis and a place that exists', () => {
    const known = new Set([
      WHOLE_SHOP,
      ...document.things.map(({ id }) => id),
      ...document.runs.map(({ id }) => id),
      ...document.fans.map(({ id }) => id),
      ...settings.flatMap((setting) => setting.runs.flatMap((run) => run.pieces.map(({ id }) => id))),
      ...document.runs.flatMap(({ from, to }) => [from, to]),
    ]);
    const ended = (id: string) => known.has(id) || /\.out$/.test(id);
    for (const row of rows) {
      expect(row.source.trim(), row.what).not.toBe('');
      expect(BASES, row.what).toContain(row.basis);
      expect(row.where.length, row.what).toBeGreaterThan(0);
      expect(
        row.where.filter((id) => !ended(id)),
        row.what,
      ).toEqual([]);
      expect(`${row.what} ${row.value} ${row.range}`, row.what).not.toMatch(
        /NaN|undefined|Infinity|\[object|–/,
      );
      expect(`${row.what} ${row.source}`, row.what).not.toMatch(
        /`|[A-Z]{2,}_[A-Z]|\b[a-z]{2,}[A-Z][a-z]{2,}\b/,
      );
    }
  });

  it('says nothing twice', () => {
    const keys = rows.map(({ kind, what, value, source, field }) =>
      [kind, what, value, source, field].join('|'),
    );
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('cites for each piece what its result cites', () => {
    const pieces = settings.flatMap((setting) => setting.runs.flatMap((run) => run.pieces));
    for (const piece of pieces) {
      if (piece.loss_Pa !== 0) expect(piece.source, piece.id).not.toBeNull();
      const own = rows.filter(({ where }) => where.includes(piece.id));
      expect(
        own.map(({ source, basis }) => ({ source, basis })),
        piece.id,
      ).toContainEqual({ source: piece.source, basis: piece.basis });
    }
  });
});

describe('values', () => {
  const COEFFICIENT = 'coefficient';

  it('are those that the solver used', () => {
    const { settings, rows } = rowsOf(everyKind({ options: { compressible: false } }));
    const open = settings[0]!;
    const local = ['hood', 'elbow', 'reducer', 'size-change', 'exhaust', 'gate'];
    const pieces = open.runs.flatMap((run) => run.pieces).filter(({ kind }) => local.includes(kind));
    const checked = pieces.filter((piece) => {
      const told = rows.filter(({ kind, where }) => kind === COEFFICIENT && where.includes(piece.id));
      if (told.length === 0) return false;
      const value = printQuantity(piece.coefficient, COEFFICIENT, 'si');
      expect(
        told.map((row) => row.value),
        piece.id,
      ).toContain(value);
      return true;
    });
    expect(new Set(checked.map(({ kind }) => kind))).toEqual(new Set(local));
  });

  it('are printed in the units asked for', () => {
    const us = rowsOf({ ...exampleDocument('one-router'), units: 'us' }).rows;
    const text = us.map(({ value }) => value).join(' ');
    expect(text).toContain('fpm');
    expect(text).not.toContain('m/s');
  });
});

describe('defaults', () => {
  const find = (rows: readonly SourceRow[], what: RegExp, where: string) =>
    rows.filter((row) => what.test(row.what) && row.where.includes(where));
  const before = rowsOf(everyKind()).rows;

  const given: readonly (readonly [string, RegExp, string, (raw: ShopDocument) => void])[] = [
    ['altitude', /altitude of/, WHOLE_SHOP, (d) => set(d.air, 'altitude', 100, 'length')],
    ['throat', /take-off of a shoe/, 'P3', (d) => set(thing(d, 'P3').hood, 'throat', 0.4, 'coefficient')],
    ['bristle', /gap under the bristles/, 'P3', (d) => set(thing(d, 'P3').hood, 'bristle', 2, 'coefficient')],
    [
      'hole',
      /discharge coefficient of a hole/,
      'gap',
      (d) => set(thing(d, 'gap'), 'dischargeCoefficient', 0.62, 'coefficient'),
    ],
    ['outside', /pressure outside/, 'out', (d) => set(thing(d, 'out'), 'pressure', 5, 'pressure')],
    ['drag', /clean drag/, 'bag', (d) => set(layer(d), 'drag', 3000, 'filterDrag')],
    ['cake', /resistance of the cake/, 'bag', (d) => set(layer(d), 'cakeResistance', 5e4, 'cakeResistance')],
    ['passed', /goes through/, 'bag', (d) => set(layer(d), 'passedShare', 0.01, 'fraction')],
    ['load', /^cake on (?!a )/, 'bag', (d) => set(layer(d), 'load', 0.1, 'arealDensity')],
    ['fine', /behind a separator, own/, 'R15', (d) => set(d.dusts[0]!, 'fineVelocity', 12, 'velocity')],
    ['high', /wastefully high for own/, 'R5', (d) => set(d.dusts[0]!, 'highVelocity', 30, 'velocity')],
    ['full', /bin is full/, 'cyc', (d) => set(upkeep(d), 'binFull', 0.6, 'fraction')],
    ['cleaning', /cleaning takes off/, 'bag', (d) => set(upkeep(d), 'cleaningRestores', 0.9, 'fraction')],
    [
      'controller',
      /controller loses/,
      'bought',
      (d) => set(d.fans[1]!.motor!, 'controllerLoss', 0.04, 'fraction'),
    ],
    ['strength', /^strength of/, 'ring', (d) => set(d.fans[3]!.rotor!, 'strength', 2e7, 'stress')],
    ['friction', /friction of rigid duct/, 'R0.1', (d) => set(ranges(d), 'friction', 0.2, 'fraction')],
  ];

  it.each(given)('%s: a row of its own until the document says', (_name, what, where, change) => {
    const [old, ...more] = find(before, what, where);
    expect(more).toEqual([]);
    expect(old!.kind).toMatch(/default|catalogue|coefficient/);
    expect(old!.basis).not.toBe('measured-by-user');
    const document = structuredClone(everyKind());
    change(document);
    const [now, ...others] = find(rowsOf(document).rows, what, where);
    expect(others).toEqual([]);
    expect(now).toMatchObject({
      kind: 'reading',
      basis: 'measured-by-user',
      source: 'given in the document',
    });
    expect(now!.value).not.toBe(old!.value);
  });

  it('of running hours are told only where hours are asked about', () => {
    expect(before.some(({ what }) => what.includes('bin is full'))).toBe(true);
    expect(rowsOf(everyKind(), false).rows.some(({ what }) => what.includes('bin is full'))).toBe(false);
  });

  type Any = Record<string, unknown>;
  const set = (at: object, key: string, si: number, dimension: string) => {
    (at as Any)[key] = { dimension, rule: 'any', text: null, si };
  };
  const thing = (d: ShopDocument, id: string) =>
    d.things.find((one) => one.id === id) as unknown as Any & { hood: Any };
  const layer = (d: ShopDocument) => (thing(d, 'bag')['layers'] as Any[])[0]!;
  const upkeep = (d: ShopDocument) => ((d as Any)['upkeep'] ??= {}) as Any;
  const ranges = (d: ShopDocument) => ((d as Any)['ranges'] ??= {}) as Any;
});

describe('the table of relations', () => {
  it('has no relation that no shop can rest on', () => {
    const losses = Object.keys(CYCLONE_LOSS_MODELS);
    const grades = Object.keys(GRADE_MODELS);
    const shops = losses.map((lossModel, i) =>
      everyKind({}, { lossModel, gradeModel: grades[i % grades.length] }),
    );
    const told = new Set(
      shops.flatMap((shop) =>
        rowsOf(shop).rows.flatMap(({ kind, what }) => (kind === 'relation' ? [what] : [])),
      ),
    );
    const never = Object.values(RELATIONS).filter(({ what }) => !told.has(what));
    expect(never.map(({ what }) => what)).toEqual([]);
    expect(told.size).toBe(Object.keys(RELATIONS).length);
  });
});
