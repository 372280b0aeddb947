import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../../core/document/commands/apply.ts';
import { copyParts } from '../../../../core/document/commands/clip.ts';
import type { Command, Target } from '../../../../core/document/commands/command.ts';
import { blankDocument } from '../../../../core/document/commands/defaults.ts';
import { effectivePieces } from '../../../../core/document/effective-pieces.ts';
import { ENDS } from '../../../../core/document/ends.ts';
import { MOTOR_WORDS } from '../../../../core/document/fan-fields.ts';
import { READING_WORDS } from '../../../../core/document/reading-fields.ts';
import { readDocument } from '../../../../core/document/read.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';
import type { ThingKind } from '../../../../core/document/schema-things.ts';
import { checkShape, findGaps } from '../../../../core/document/shape.ts';
import { writeDocument } from '../../../../core/document/write.ts';
import { simpleShop } from './helpers.ts';

/** Numbers that a command is made of once the document before it is known. */
interface Dice {
  readonly which: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly x: number;
  readonly y: number;
  readonly share: number;
}

const dice: fc.Arbitrary<Dice> = fc.record({
  which: fc.nat({ max: 9999 }),
  a: fc.nat({ max: 9999 }),
  b: fc.nat({ max: 9999 }),
  c: fc.nat({ max: 9999 }),
  x: fc.integer({ min: -100, max: 100 }).map((n) => n / 10),
  y: fc.integer({ min: -100, max: 100 }).map((n) => n / 10),
  share: fc.integer({ min: 0, max: 20 }).map((n) => n / 20),
});

const STARTS = [() => blankDocument('si'), simpleShop];
const KINDS = Object.keys(ENDS) as ThingKind[];
const TEXTS = ['100 mm', '4 in', '0 m', 'abc', '', '-2 m', '50 %', '3', 'reach', '30 deg', '1e99 m'];
const PATHS = [
  ['diameter'],
  ['at', 'x'],
  ['needs', 'flow'],
  ['name'],
  ['route', 'legs', 0, 'length'],
  ['route', 'corners', 0, 'angle'],
  ['outletDiameter'],
  ['opening'],
  ['length'],
  ['id'],
];
const FAN_TYPES = ['radial', 'mixed', 'axial', 'staged-axial', 'odd' as 'axial'] as const;
const READINGS = [...Object.keys(READING_WORDS), 'odd'];
const MOTORS = [...Object.keys(MOTOR_WORDS), 'odd'];
const FAN_PATHS = [
  ['wheelDiameter'],
  ['name'],
  ['readings', 0, 'suction'],
  ['readings', 0, 'errors', 'size'],
  ['readings', 1, 'holes'],
  ['readings', 0, 'heads', 1],
  ['motor', 'supply'],
  ['motor', 'poles'],
  ['rotor', 'bore'],
];
const pick = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(list.length, 1)];

function idsOf(shop: ShopDocument): string[] {
  const things = new Map(shop.things.map((thing) => [thing.id, thing]));
  const pieces = shop.runs.flatMap((run) => effectivePieces(run, things).map(({ key }) => key));
  return [...shop.things, ...shop.runs].map(({ id }) => id).concat(pieces, ['nothing']);
}

function target(shop: ShopDocument, n: number, d: Dice): Target {
  const thing = pick(shop.things, d.a + n);
  const run = pick(shop.runs, d.b + n);
  const free = { free: pick(['port', 'exhaust', 'joint'] as const, n)!, at: { x: d.x + n, y: d.y } };
  if (n % 4 === 0 && run) return { run: run.id, leg: d.c % 3, at: d.share };
  return n % 4 === 1 || !thing ? free : { thing: thing.id };
}

function build(shop: ShopDocument, d: Dice): Command {
  const ids = idsOf(shop);
  const [one, two, three] = [pick(ids, d.a)!, pick(ids, d.b)!, pick(ids, d.c)!];
  const runId = pick(shop.runs, d.a)?.id ?? 'nothing';
  const at = { x: d.x, y: d.y, ...(d.c % 3 === 0 ? { z: d.share * 3 } : {}) };
  const corners = Array.from({ length: d.c % 4 }, (_, i) => ({ x: d.x + i, y: d.y - (i % 2) }));
  const setting = pick(shop.settings, d.a)?.name ?? 'none';
  const gates = shop.runs.flatMap((run) =>
    run.pieces.flatMap((piece) => (piece.kind === 'gate' ? [piece.id] : [])),
  );
  const gate = pick(gates, d.a) ?? 'none';
  const fan =
    pick(
      shop.things.filter(({ kind }) => kind === 'fan'),
      d.a,
    )?.id ?? 'none';
  const design = pick(shop.fans, d.a)?.id ?? 'none';
  const row = (n: number) => ({ flow: `${n} m3/h`, pressure: '1 kPa' });
  const picture = { name: 'hall', width_px: 100, height_px: 80, at: { x: 0, y: 0 }, metresPerPixel: d.share };
  const make: (() => Command)[] = [
    () => ({ kind: 'setRows', id: fan, path: ['curve', 'points'], rows: [row(d.a), row(d.b), row(d.c)] }),
    () => ({ kind: 'setUnderlay', underlay: d.a % 2 === 0 ? null : picture }),
    () => ({ kind: 'setSetting', setting, gates: { [gate]: '30 %' } }),
    () => ({ kind: 'addPiece', run: runId, leg: 0, at: d.share, piece: { kind: 'gate' } }),
    () => ({ kind: 'movePiece', id: gate, leg: d.b % 2, at: d.share }),
    () => ({ kind: 'place', thing: pick(KINDS, d.a)!, at }),
    () => ({ kind: 'place', thing: pick(KINDS, d.b)!, at }),
    () => ({ kind: 'drawRun', from: target(shop, d.a, d), to: target(shop, d.b, d), corners }),
    () => ({
      kind: 'drawRun',
      from: target(shop, d.b, d),
      to: target(shop, d.c, d),
      corners,
      angle_rad: d.share * 4,
    }),
    () => ({
      kind: 'drawRun',
      from: { free: 'port', at },
      to: { run: runId, leg: d.b % 3, at: d.share },
      corners: [],
    }),
    () => ({ kind: 'move', ids: [one, two], dx: d.x, dy: d.y, dz: d.share }),
    () => ({ kind: 'turn', id: one, angle_rad: d.x }),
    () => ({ kind: 'align', ids: [one, two, three], edge: pick(['left', 'top', 'centre-x'] as const, d.a)! }),
    () => ({ kind: 'moveCorner', run: runId, corner: d.b % 3, at }),
    () => ({ kind: 'insertCorner', run: runId, leg: d.b % 3, at }),
    () => ({ kind: 'removeCorner', run: runId, corner: d.b % 3 }),
    () => ({ kind: 'reverse', run: runId }),
    () => ({ kind: 'moveLeg', run: runId, leg: d.b % 3, dx: d.x, dy: d.y, dz: d.share }),
    () => ({
      kind: 'mirror',
      id:
        pick(
          shop.things.filter(({ kind }) => kind === 'wye'),
          d.a,
        )?.id ?? one,
    }),
    () => ({ kind: 'layRun', run: runId }),
    () => ({
      kind: 'setField',
      id: one,
      path: pick(PATHS, d.b)!,
      text: d.c % 12 === 11 ? null : pick(TEXTS, d.c)!,
    }),
    () => ({ kind: 'setField', id: one, path: pick(PATHS, d.b)!, text: pick(TEXTS, d.c)! }),
    () => ({
      kind: 'setChoice',
      id: one,
      path: ['hood', 'kind'],
      value: pick(['slot', 'tapered', 'odd'], d.b)!,
    }),
    () => ({ kind: 'setChoice', id: one, path: ['cut'], value: d.b % 2 === 0 }),
    () => ({ kind: 'addRow', id: fan, path: ['curve', 'points'] }),
    () => ({ kind: 'removeRow', id: fan, path: ['curve', 'points'], index: d.b % 4 }),
    () => ({ kind: 'setValues', rows: d.a % 2 === 0 ? [{ name: 'reach', text: `${d.share} m` }] : [] }),
    () => ({ kind: 'addSetting', setting: `s${d.a % 3}` }),
    () => ({ kind: 'renameSetting', setting, name: `s${d.b % 3}` }),
    () => ({ kind: 'removeSetting', setting }),
    () => ({
      kind: 'setGate',
      setting,
      gate: gate,
      text: d.c % 3 === 0 ? null : '40 %',
    }),
    () => ({ kind: 'addPiece', run: runId, leg: d.b % 3, at: d.share, piece: { kind: 'gate' } }),
    () => ({
      kind: 'addPiece',
      run: runId,
      leg: d.b % 3,
      at: d.share,
      piece: { kind: 'reducer', to: '80 mm' },
    }),
    () => ({ kind: 'movePiece', id: gate, leg: d.b % 3, at: d.share }),
    () => ({ kind: 'removePiece', id: pick(ids, d.a + 1)! }),
    () => ({ kind: 'remove', ids: [one] }),
    () => ({ kind: 'remove', ids: [one, two, three] }),
    () => ({ kind: 'paste', clip: copyParts(shop, [one, two, three]), at }),
    () => ({ kind: 'duplicate', ids: [one, two, three] }),
    () => ({ kind: 'addFan', type: pick(FAN_TYPES, d.a)! }),
    () => ({ kind: 'addFan' }),
    () => ({ kind: 'duplicateFan', id: design }),
    () => ({ kind: 'removeFan', id: design }),
    () => ({ kind: 'setChoice', id: fan, path: ['design'], value: d.b % 3 === 0 ? null : design }),
    () => ({ kind: 'setField', id: design, path: ['id'], text: `blower-${d.b % 3}` }),
    () => ({ kind: 'addRow', id: design, path: ['readings'], row: { kind: pick(READINGS, d.b)! } }),
    () => ({ kind: 'removeRow', id: design, path: ['readings'], index: d.b % 3 }),
    () => ({ kind: 'setChoice', id: design, path: ['motor'], value: d.b % 3 > 0 }),
    () => ({ kind: 'setChoice', id: design, path: ['motor', 'kind'], value: pick(MOTORS, d.b)! }),
    () => ({ kind: 'setField', id: design, path: pick(FAN_PATHS, d.b)!, text: pick(TEXTS, d.c)! }),
    () => ({ kind: 'setDocument', path: ['name'], value: d.a % 5 === 0 ? '' : 'Shop' }),
  ];
  return pick(make, d.which)!();
}

/** The machine may be busy with other tests. */
const PATIENCE_ms = 60_000;

describe('any sequence of commands', () => {
  it(
    'never throws, never breaks the document, and leaves one that is written and read again',
    () => {
      const carried = new Map<string, number>();
      fc.assert(
        fc.property(fc.array(dice, { minLength: 10, maxLength: 60, size: 'max' }), (rolls) => {
          let shop = STARTS[rolls[0]!.a % 2]!();
          for (const roll of rolls) {
            const before = JSON.stringify(shop);
            const command = build(shop, roll);
            const result = applyCommand(shop, command);
            expect(JSON.stringify(shop)).toBe(before);
            if (!result.ok) {
              expect(result.message).not.toBe('');
              expect(result.remedy).not.toBe('');
              continue;
            }
            carried.set(command.kind, (carried.get(command.kind) ?? 0) + 1);
            shop = result.document;
            expect(checkShape(shop)).toEqual([]);
            expect(result.label).not.toBe('');
          }
          const read = readDocument(writeDocument(shop), { allowIncomplete: true });
          if (!read.ok) throw new Error(JSON.stringify(read.problems));
          expect(read.document).toEqual(shop);
          expect(read.gaps).toEqual(findGaps(shop));
        }),
        { seed: 21, numRuns: 200 },
      );
      // each kind must have been carried out, or it was not tested
      expect(Math.min(...carried.values())).toBeGreaterThan(5);
      expect(carried.size).toBe(33);
    },
    PATIENCE_ms,
  );
});
