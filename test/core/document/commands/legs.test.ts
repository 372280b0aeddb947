import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../../core/document/commands/apply.ts';
import { effectivePieces } from '../../../../core/document/effective-pieces.ts';
import { readDocument } from '../../../../core/document/read.ts';
import { measureRoute } from '../../../../core/document/route.ts';
import type { DrawnRun } from '../../../../core/document/route.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';
import { writeDocument } from '../../../../core/document/write.ts';
import { History } from '../../../../renderer/state/history.ts';
import { after, refusal, run, simpleShop, thing } from './helpers.ts';

const thingsOf = (shop: ShopDocument) => new Map(shop.things.map((one) => [one.id, one]));
const measured = (shop: ShopDocument, id: string) => measureRoute(run(shop, id) as DrawnRun, thingsOf(shop));
const flat = ({ x, y, z }: { x: number; y: number; z: number }) => [x, y, z];

describe('moving a leg', () => {
  it('moves both its corners, and the legs beside it follow', () => {
    const shop = after(simpleShop(), { kind: 'moveLeg', run: 'R1', leg: 1, dx: 0.5, dy: 0 });
    const { points, legs } = measured(shop, 'R1');
    expect(points.slice(1, 3).map(flat)).toEqual([
      [4.5, 0, 1],
      [4.5, 2, 1],
    ]);
    // 4 m along from the port are 4.5 m now
    expect(legs[0]!.length_m).toBeCloseTo(4.5, 9);
    expect(legs[1]!.length_m).toBeCloseTo(2, 9);
  });

  it('gives the run a corner where an end stands on a thing', () => {
    const before = after(
      simpleShop(),
      { kind: 'setField', id: 'R1', path: ['route', 'legs', 0, 'length'], text: '3 m' },
      { kind: 'addPiece', run: 'R1', leg: 0, at: 0.5, piece: { kind: 'gate' } },
    );
    const shop = after(before, { kind: 'moveLeg', run: 'R1', leg: 0, dx: 0, dy: -1 });
    const { points, legs } = measured(shop, 'R1');
    expect(points.map(flat).slice(0, 3)).toEqual([
      [0, 0, 1],
      [0, -1, 1],
      [4, -1, 1],
    ]);
    expect(points).toHaveLength(5);
    // the typed length stays with the leg that it was typed for, and so does the gate
    expect(legs[1]!.straight_m).toBe(3);
    expect(run(shop, 'R1').route!.legs![0]!.length).toBeUndefined();
    expect(run(shop, 'R1').pieces[0]!.along).toEqual({ leg: 1, at: 0.5 });
    const last = after(simpleShop(), { kind: 'moveLeg', run: 'R1', leg: 2, dx: 0, dy: 1 });
    expect(measured(last, 'R1').points).toHaveLength(5);
    expect(measured(last, 'R1').points.at(-1)).toEqual(measured(simpleShop(), 'R1').points.at(-1));
  });

  it('lifts no leg but its own', () => {
    const shop = after(simpleShop(), { kind: 'moveLeg', run: 'R1', leg: 1, dx: 0, dy: 0, dz: 1 });
    expect(measured(shop, 'R1').points.map(({ z }) => z)).toEqual([1, 2, 2, 1]);
    expect(refusal(simpleShop(), { kind: 'moveLeg', run: 'R1', leg: 9, dx: 1, dy: 0 }).message).toMatch(
      /no leg 9/,
    );
    expect(refusal(simpleShop(), { kind: 'moveLeg', run: 'R1', leg: 1, dx: NaN, dy: 0 }).message).toMatch(
      /no place/,
    );
  });

  it('keeps its own length and gives the others theirs, and undo brings the document back', () => {
    const shift = fc.integer({ min: -300, max: 300 }).map((n) => n / 100);
    fc.assert(
      fc.property(fc.nat({ max: 2 }), shift, shift, shift, (leg, dx, dy, dz) => {
        const shop = simpleShop();
        const history = new History(shop);
        const moved = after(shop, { kind: 'moveLeg', run: 'R1', leg, dx, dy, dz });
        history.push('Move leg', moved);
        const [old, now] = [measured(shop, 'R1'), measured(moved, 'R1')];
        const still = dx === 0 && dy === 0 && dz === 0;
        const at = leg === 0 && !still ? 1 : leg;
        expect(now.legs[at]!.length_m).toBeCloseTo(old.legs[leg]!.length_m, 6);
        for (const { length_m, from, to } of now.legs) {
          expect(length_m).toBeCloseTo(Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z), 9);
        }
        // the ends stay on their things
        expect(flat(now.points[0]!)).toEqual(flat(old.points[0]!));
        expect(flat(now.points.at(-1)!)).toEqual(flat(old.points.at(-1)!));
        if (still) expect(moved).toBe(shop);
        else history.undo();
        expect(history.document).toBe(shop);
        expect(shop).toEqual(simpleShop());
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe('mirroring a wye', () => {
  const joined = () =>
    after(simpleShop(), {
      kind: 'drawRun',
      from: { free: 'port', at: { x: 1, y: -2 } },
      to: { run: 'R1', leg: 0, at: 0.5 },
      corners: [{ x: 1.5, y: -0.5 }],
    });

  it('puts the branch on the other side, its nearest corner with it, and back again', () => {
    const before = joined();
    const after_ = after(before, { kind: 'mirror', id: 'wye-1' });
    const branch = after_.runs.find(({ to }) => to === 'wye-1.branch')!;
    // the main lies along y = 0
    expect(branch.route!.corners.map(({ x, y }) => [x.si, y.si])).toEqual([[1.5, 0.5]]);
    expect(thing(after_, 'wye-1')).toMatchObject({ mirrored: true });
    expect(after_.runs.filter((one) => !before.runs.includes(one))).toEqual([branch]);
    const twice = after(after_, { kind: 'mirror', id: 'wye-1' });
    expect('mirrored' in thing(twice, 'wye-1')).toBe(false);
    expect(twice.runs.find(({ id }) => id === branch.id)!.route!.corners[0]!.y.si).toBe(-0.5);
    expect(readDocument(writeDocument(after_), { allowIncomplete: true })).toMatchObject({ ok: true });
    expect(refusal(before, { kind: 'mirror', id: 'port-1' }).remedy).toBe('select a wye');
  });
});

describe('drawing a run that was typed', () => {
  it('is the same duct to the air', () => {
    const drawn = simpleShop();
    const typed: ShopDocument = {
      ...drawn,
      runs: drawn.runs.map((one) => {
        if (one.id !== 'R1') return one;
        const pieces = effectivePieces(one, thingsOf(drawn)).map((piece) => {
          const { key, derived, overridden, leg, corner, span, source, tight, ...plain } = piece;
          void [key, derived, overridden, leg, corner, span, source, tight];
          return plain;
        });
        const { route, ...rest } = one;
        void route;
        return { ...rest, pieces } as typeof one;
      }),
    };
    const laid = applyCommand(typed, { kind: 'layRun', run: 'R1' });
    if (!laid.ok) throw new Error(laid.message);
    expect(laid.label).toBe('Draw R1: 1 straight leg, lengths as typed, 2 pieces kept');
    const now = effectivePieces(run(laid.document, 'R1'), thingsOf(laid.document));
    const old = effectivePieces(run(typed, 'R1'), thingsOf(typed));
    expect(now.map(({ kind }) => kind)).toEqual(old.map(({ kind }) => kind));
    expect(now.map((piece) => ('length' in piece ? piece.length.si : piece.kind))).toEqual(
      old.map((piece) => ('length' in piece ? expect.closeTo(piece.length.si, 9) : piece.kind)),
    );
    expect(refusal(laid.document, { kind: 'layRun', run: 'R1' }).message).toMatch(/drawn already/);
  });
});
