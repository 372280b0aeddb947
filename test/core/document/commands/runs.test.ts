import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../../core/document/commands/apply.ts';
import { straightLength } from '../../../../core/document/commands/pieces.ts';
import { effectivePieces } from '../../../../core/document/effective-pieces.ts';
import { isDrawn, measureRoute } from '../../../../core/document/route.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';
import { after, refusal, run, simpleShop, thing } from './helpers.ts';

const length = (shop: ShopDocument, id: string) => straightLength(run(shop, id), shop);
const keys = (shop: ShopDocument, id: string) =>
  run(shop, id).pieces.map(
    (piece) => `${piece.id ?? piece.kind}@${piece.along?.leg}:${piece.along?.at.toFixed(3)}`,
  );

/** R1 with a gate before and a given loss after the middle of its first leg. */
const gated = () =>
  after(
    simpleShop(),
    { kind: 'addPiece', run: 'R1', leg: 0, at: 0.25, piece: { kind: 'gate' } },
    { kind: 'addPiece', run: 'R1', leg: 0, at: 0.75, piece: { kind: 'given', id: 'loss', coefficient: 1 } },
    { kind: 'setField', id: 'R1', path: ['route', 'corners', 1, 'angle'], text: '80 deg' },
    { kind: 'setGate', setting: 'all open', gate: 'G1', text: '60 %' },
  );
const branch = (shop: ShopDocument, leg: number, at: number) =>
  after(shop, {
    kind: 'drawRun',
    from: { free: 'port', at: { x: 2, y: -3, z: 1 } },
    to: { run: 'R1', leg, at },
    corners: [],
  });

describe('drawing a run', () => {
  it('measures it between the things that it joins', () => {
    const shop = simpleShop();
    // the fan's inlet lies half its casing, 3 outlets of 125 mm, before its place
    const r1 = run(shop, 'R1');
    expect(
      isDrawn(r1) && measureRoute(r1, new Map(shop.things.map((t) => [t.id, t]))).legs.map((l) => l.length_m),
    ).toEqual([4, 2, expect.closeTo(2 - 0.1875, 12)]);
    expect([r1.from, r1.to]).toEqual(['port-1', 'fan-1.in']);
  });

  it('keeps it the way of the air, whichever end was drawn first', () => {
    const shop = after(simpleShop(), {
      kind: 'drawRun',
      from: { run: 'R1', leg: 0, at: 0.5 },
      to: { free: 'port', at: { x: 2, y: 5 } },
      corners: [
        { x: 2, y: 3 },
        { x: 3, y: 4 },
      ],
    });
    const drawn = run(shop, 'R3');
    expect([drawn.from, drawn.to]).toEqual(['port-2', 'wye-1.branch']);
    expect(drawn.route!.corners.map(({ x, y }) => [x.si, y.si])).toEqual([
      [3, 4],
      [2, 3],
    ]);
  });

  it('puts a wye in, with gates, typed values and pieces on their own side', () => {
    const before = gated();
    const shop = branch(before, 0, 0.5);
    expect(thing(shop, 'wye-1')).toMatchObject({
      angle: { text: '45 deg' },
      at: { x: { si: 2 }, y: { si: 0 }, z: { si: 1 } },
    });
    expect([run(shop, 'R1').from, run(shop, 'R1').to]).toEqual(['port-1', 'wye-1.main']);
    expect([run(shop, 'R4').from, run(shop, 'R4').to]).toEqual(['wye-1.out', 'fan-1.in']);
    expect([run(shop, 'R3').from, run(shop, 'R3').to]).toEqual(['port-2', 'wye-1.branch']);
    expect(keys(shop, 'R1')).toEqual(['G1@0:0.500']);
    expect(keys(shop, 'R4')).toEqual(['loss@0:0.500']);
    expect(run(shop, 'R4').route!.corners[1]!.angle!.text).toBe('80 deg');
    expect(shop.settings).toBe(before.settings);
    expect(run(shop, 'R2')).toBe(run(before, 'R2'));
    expect(thing(shop, 'fan-1')).toBe(thing(before, 'fan-1'));
  });

  it('takes the entry angle that is given', () => {
    const command = {
      kind: 'drawRun',
      from: { free: 'port', at: { x: 2, y: -3 } },
      to: { run: 'R1', leg: 0, at: 0.5 },
      corners: [],
    } as const;
    const shop = after(simpleShop(), { ...command, angle_rad: Math.PI / 6 });
    expect(thing(shop, 'wye-1')).toMatchObject({ angle: { si: Math.PI / 6, text: null } });
    expect(refusal(simpleShop(), { ...command, angle_rad: 4 }).message).toContain('entry angle: 4');
  });

  it('splits so that the lengths add up to the old one', () => {
    const shop = gated();
    const old = length(shop, 'R1');
    fc.assert(
      fc.property(fc.nat({ max: 2 }), fc.double({ min: 0, max: 1, noNaN: true }), (leg, at) => {
        const cut = branch(shop, leg, at);
        expect(length(cut, 'R1') + length(cut, 'R4')).toBeCloseTo(old, 5);
        const gates = ['R1', 'R4'].flatMap((id) => run(cut, id).pieces.map((piece) => piece.id));
        expect(gates.toSorted()).toEqual(['G1', 'loss']);
      }),
      { seed: 31, numRuns: 100 },
    );
  });

  it('shares out a typed length', () => {
    const shop = branch(
      after(simpleShop(), { kind: 'setField', id: 'R1', path: ['route', 'legs', 0, 'length'], text: '6 m' }),
      0,
      0.5,
    );
    // 4 m drawn less 0.15 m for the bend: cut at 2 m of 3.85 m
    expect(run(shop, 'R1').route!.legs![0]!.length!.si).toBeCloseTo((6 * 2) / 3.85, 9);
    expect(run(shop, 'R4').route!.legs![0]!.length!.si).toBeCloseTo((6 * 1.85) / 3.85, 9);
  });

  it('refuses what no air can go through', () => {
    const shop = simpleShop();
    const both = refusal(shop, {
      kind: 'drawRun',
      from: { free: 'port', at: { x: 0, y: 9 } },
      to: { thing: 'port-1' },
      corners: [],
    });
    expect(both.message).toContain('air would come in at both ends');
    const taken = refusal(shop, {
      kind: 'drawRun',
      from: { thing: 'port-1' },
      to: { free: 'exhaust', at: { x: 0, y: 9 } },
      corners: [],
    });
    expect(taken.message).toContain('port-1 has a run there already');
    expect(
      refusal(shop, { kind: 'drawRun', from: { thing: 'ghost' }, to: { thing: 'fan-1' }, corners: [] })
        .message,
    ).toContain('"ghost"');
    expect(
      refusal(shop, {
        kind: 'drawRun',
        from: { thing: 'fan-1', end: 'side' },
        to: { free: 'joint', at: { x: 1, y: 1 } },
        corners: [],
      }).remedy,
    ).toContain('fan-1.in, fan-1.out');
  });
});

describe('removing', () => {
  it('a run frees its wye and makes one run of the main again', () => {
    const before = gated();
    const shop = after(branch(before, 0, 0.5), { kind: 'remove', ids: ['R3', 'port-2'] });
    expect(shop.things.map(({ id }) => id)).toEqual(before.things.map(({ id }) => id));
    expect(shop.runs.map(({ id }) => id).toSorted()).toEqual(['R1', 'R2']);
    expect(length(shop, 'R1')).toBeCloseTo(length(before, 'R1'), 9);
    expect(keys(shop, 'R1')).toEqual(keys(before, 'R1'));
    expect(run(shop, 'R1').route!.corners).toHaveLength(2);
  });

  it('a wye joins its main and leaves the branch with a joint', () => {
    const shop = after(branch(gated(), 0, 0.5), { kind: 'remove', ids: ['wye-1'] });
    expect([run(shop, 'R1').from, run(shop, 'R1').to]).toEqual(['port-1', 'fan-1.in']);
    expect(run(shop, 'R3').to).toBe('joint-1');
  });

  it('a device joins the runs beside it, with a reducer where sizes differ', () => {
    const shop = after(
      simpleShop(),
      { kind: 'setField', id: 'R2', path: ['diameter'], text: '125 mm' },
      { kind: 'remove', ids: ['fan-1'] },
    );
    const joined = run(shop, 'R1');
    expect([joined.from, joined.to]).toEqual(['port-1', 'exhaust-1']);
    const pieces = effectivePieces(joined, new Map(shop.things.map((t) => [t.id, t])));
    expect(pieces.flatMap((piece) => (piece.kind === 'reducer' ? [piece.to.si] : []))).toEqual([0.125]);
  });

  it('a gate leaves the settings clean, and a bend goes with its corner', () => {
    const shop = after(gated(), { kind: 'remove', ids: ['G1'] });
    expect(shop.settings[0]!.gates).toEqual({});
    const bends = after(simpleShop(), { kind: 'remove', ids: ['R1.2'] });
    expect(run(bends, 'R1').route!.corners).toHaveLength(1);
    expect(refusal(simpleShop(), { kind: 'remove', ids: ['R1.1'] }).message).toContain(
      'follows from the drawing',
    );
  });

  it('refuses to take away a joint that holds three runs', () => {
    const joint = { thing: 'joint-1' };
    const free = (x: number) => ({ free: 'port', at: { x, y: 0 } }) as const;
    const shop = after(
      simpleShop(),
      { kind: 'place', thing: 'joint', at: { x: 0, y: 5 } },
      ...[1, 2, 3].map((x) => ({ kind: 'drawRun', from: free(x), to: joint, corners: [] }) as const),
    );
    expect(refusal(shop, { kind: 'remove', ids: ['joint-1'] }).message).toContain('R3, R4, R5');
  });
});

describe('corners, pieces and turning round', () => {
  it('keeps pieces where they are when a corner comes on the line and goes again', () => {
    const before = gated();
    const there = after(before, { kind: 'insertCorner', run: 'R1', leg: 0, at: { x: 2, y: 0 } });
    expect(keys(there, 'R1')).toEqual(['G1@0:0.500', 'loss@1:0.500']);
    expect(length(there, 'R1')).toBeCloseTo(length(before, 'R1'), 9);
    const back = after(there, { kind: 'removeCorner', run: 'R1', corner: 0 });
    expect(keys(back, 'R1')).toEqual(keys(before, 'R1'));
  });

  it('moves a corner and nothing else', () => {
    const before = simpleShop();
    const shop = after(before, { kind: 'moveCorner', run: 'R1', corner: 0, at: { x: 3, y: 0 } });
    expect(run(shop, 'R1').route!.corners[0]!.x.si).toBe(3);
    expect(run(shop, 'R2')).toBe(run(before, 'R2'));
    expect(shop.things).toBe(before.things);
    expect(
      refusal(before, { kind: 'moveCorner', run: 'R2', corner: 0, at: { x: 3, y: 0 } }).message,
    ).toContain('no corner 0');
    expect(
      refusal(before, { kind: 'moveCorner', run: 'R1', corner: 0, at: { x: NaN, y: 0 } }).message,
    ).toContain('NaN');
  });

  it('turns a run round and back to the same pieces', () => {
    const shop = after(
      gated(),
      { kind: 'setField', id: 'R1', path: ['route', 'legs', 1, 'diameter'], text: '80 mm' },
      { kind: 'place', thing: 'joint', at: { x: 0, y: 0, z: 1 } },
      { kind: 'place', thing: 'joint', at: { x: 9, y: 5, z: 1 } },
      {
        kind: 'drawRun',
        from: { thing: 'joint-1' },
        to: { thing: 'joint-2' },
        corners: [{ x: 4, y: 0 }],
        like: 'R1',
      },
      { kind: 'setField', id: 'R3', path: ['route', 'legs', 1, 'diameter'], text: '80 mm' },
      { kind: 'addPiece', run: 'R3', leg: 1, at: 0.25, piece: { kind: 'gate' } },
    );
    const once = after(shop, { kind: 'reverse', run: 'R3' });
    expect([run(once, 'R3').from, run(once, 'R3').to]).toEqual(['joint-2', 'joint-1']);
    expect(run(once, 'R3').diameter!.si).toBe(0.08);
    expect(keys(once, 'R3')).toEqual(['G2@0:0.750']);
    // the bend now follows the 80 mm duct, so that its tangents are shorter by 1.5 times 20 mm at 45 degrees
    expect(length(once, 'R3')).toBeCloseTo(length(shop, 'R3') + 2 * 0.03 * Math.tan(Math.PI / 8), 9);
    const twice = after(once, { kind: 'reverse', run: 'R3' });
    expect(keys(twice, 'R3')).toEqual(keys(shop, 'R3'));
    expect(length(twice, 'R3')).toBeCloseTo(length(shop, 'R3'), 9);
    expect(refusal(shop, { kind: 'reverse', run: 'R1' }).message).toContain('air comes in at a port');
  });

  it('moves a piece along its run, and refuses a leg that is not there', () => {
    const shop = after(gated(), { kind: 'movePiece', id: 'G1', leg: 1, at: 0.5 });
    expect(keys(shop, 'R1')[0]).toBe('G1@1:0.500');
    expect(
      refusal(shop, { kind: 'addPiece', run: 'R1', leg: 9, at: 0, piece: { kind: 'gate' } }).message,
    ).toContain('no leg 9');
    expect(
      refusal(shop, {
        kind: 'addPiece',
        run: 'R1',
        leg: 0,
        at: 0,
        piece: { kind: 'given', coefficient: 'abc' },
      }).message,
    ).toContain('abc');
    const result = applyCommand(shop, { kind: 'removePiece', id: 'fan-1' });
    expect(result.ok).toBe(false);
  });
});
