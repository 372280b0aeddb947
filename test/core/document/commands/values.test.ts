import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../../core/document/commands/apply.ts';
import { copyParts, readClip, writeClip } from '../../../../core/document/commands/clip.ts';
import { blankDocument, PRESETS } from '../../../../core/document/commands/defaults.ts';
import { idFor } from '../../../../core/document/commands/ids.ts';
import { ENDS } from '../../../../core/document/ends.ts';
import type { Command } from '../../../../core/document/commands/command.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';
import type { ThingKind, ThingOf } from '../../../../core/document/schema-things.ts';
import { findGaps } from '../../../../core/document/shape.ts';
import { solve } from '../../../../core/network/solve.ts';
import { after, refusal, run, simpleShop, thing } from './helpers.ts';

describe('placing', () => {
  it('names and starts every kind and preset so that nothing is broken', () => {
    for (const kind of Object.keys(ENDS) as ThingKind[]) {
      for (const units of ['si', 'us'] as const) {
        const result = applyCommand(blankDocument(units), { kind: 'place', thing: kind, at: { x: 1, y: 2 } });
        expect(result).toMatchObject({ ok: true, created: [`${kind}-1`] });
      }
    }
    for (const preset of PRESETS) {
      after(blankDocument(), { kind: 'place', thing: preset.kind, at: { x: 0, y: 0 }, preset: preset.id });
    }
    expect(
      refusal(blankDocument(), { kind: 'place', thing: 'fan', at: { x: 0, y: 0 }, preset: 'odd' }).message,
    ).toContain('odd');
  });

  it('makes a shop that has no gaps and can be solved', () => {
    const shop = simpleShop();
    expect(findGaps(shop)).toEqual([]);
    const solved = solve(shop);
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const [setting] = solved.solution.settings;
    expect(setting!.runs.find(({ id }) => id === 'R1')!.massFlow_kgs).toBeGreaterThan(0.01);
  });

  it('gives names that are free', () => {
    const shop = simpleShop();
    expect([idFor(shop, 'port'), idFor(shop, 'run'), idFor(shop, 'gate')]).toEqual(['port-2', 'R3', 'G1']);
  });
});

describe('moving and aligning', () => {
  it('drags the ends of runs with a thing, and corners when both ends move', () => {
    const before = simpleShop();
    const one = after(before, { kind: 'move', ids: ['port-1'], dx: 1, dy: 0 });
    expect(thing(one, 'port-1').at!.x.si).toBe(1);
    expect(one.runs).toBe(before.runs);
    expect(thing(one, 'fan-1')).toBe(thing(before, 'fan-1'));
    const both = after(before, { kind: 'move', ids: ['port-1', 'fan-1'], dx: 1, dy: 0.5 });
    expect(run(both, 'R1').route!.corners.map(({ x }) => x.si)).toEqual([5, 5]);
    expect(run(both, 'R2')).toBe(run(before, 'R2'));
  });

  it('keeps the typed text of what does not move', () => {
    const typed = after(simpleShop(), { kind: 'setField', id: 'port-1', path: ['at', 'y'], text: '1 ft' });
    const moved = after(typed, { kind: 'move', ids: ['port-1'], dx: 1, dy: 0 });
    expect(thing(moved, 'port-1').at!.y.text).toBe('1 ft');
  });

  it('lines things up on an edge', () => {
    const shop = after(simpleShop(), { kind: 'align', ids: ['port-1', 'fan-1'], edge: 'top' });
    expect(thing(shop, 'fan-1').at!.y.si).toBe(0);
    const centred = after(simpleShop(), { kind: 'align', ids: ['port-1', 'fan-1'], edge: 'centre-x' });
    expect([thing(centred, 'port-1').at!.x.si, thing(centred, 'fan-1').at!.x.si]).toEqual([3, 3]);
    expect(refusal(simpleShop(), { kind: 'align', ids: ['port-1'], edge: 'top' }).remedy).toContain('two');
  });

  it('turns a thing', () => {
    expect(thing(after(simpleShop(), { kind: 'turn', id: 'fan-1', angle_rad: 1 }), 'fan-1').turn!.si).toBe(1);
    expect(refusal(simpleShop(), { kind: 'turn', id: 'R1', angle_rad: 1 }).message).toContain('R1');
  });
});

describe('typing values', () => {
  const set = (id: string, path: (string | number)[], text: string | null) =>
    ({ kind: 'setField', id, path, text }) as const;

  it('keeps the text beside its meaning and leaves the rest alone', () => {
    const before = simpleShop();
    const shop = after(before, set('fan-1', ['outletDiameter'], '4 in + 2 mm'));
    expect(thing(shop, 'fan-1')).toMatchObject({ outletDiameter: { text: '4 in + 2 mm', si: 0.1036 } });
    expect(thing(shop, 'port-1')).toBe(thing(before, 'port-1'));
    expect(shop.runs).toBe(before.runs);
  });

  it.each([
    ['abc', 'outletDiameter: `abc`'],
    ['3 kg', 'outletDiameter: `3 kg`'],
    ['0 mm', 'outletDiameter: `0 mm` must be above zero'],
    ['', 'outletDiameter: nothing is typed'],
  ])('refuses %j and says which field and why', (text, message) => {
    const { message: said, remedy } = refusal(simpleShop(), set('fan-1', ['outletDiameter'], text));
    expect(said).toContain(message);
    expect(remedy).not.toBe('');
  });

  it('makes and removes what is optional, and not what is needed', () => {
    const shop = after(simpleShop(), set('port-1', ['needs', 'flow'], '500 m3/h'));
    expect(thing(shop, 'port-1')).toMatchObject({ needs: { flow: { text: '500 m3/h' } } });
    expect(thing(after(shop, set('port-1', ['needs', 'flow'], null)), 'port-1')).toMatchObject({ needs: {} });
    expect(refusal(shop, set('fan-1', ['outletDiameter'], null)).message).toBe('outletDiameter: is missing');
    expect(refusal(shop, set('', ['name'], null)).message).toBe('name: is missing');
    expect(refusal(shop, set('', ['name'], '')).message).toContain('name: is empty');
  });

  it('puts a typed value in place of the drawing, through the piece or its run', () => {
    const shop = after(simpleShop(), set('R1.1', ['length'], '9 m'));
    expect(run(shop, 'R1').route!.legs![0]!.length!.text).toBe('9 m');
    const cleared = after(shop, set('R1', ['route', 'legs', 0, 'length'], null));
    expect(run(cleared, 'R1').route!.legs![0]!.length).toBeUndefined();
  });

  it('renames and takes along all that points there', () => {
    const gated = after(
      simpleShop(),
      { kind: 'addPiece', run: 'R1', leg: 0, at: 0.5, piece: { kind: 'gate' } },
      { kind: 'setGate', setting: 'all open', gate: 'G1', text: '50 %' },
    );
    const shop = after(gated, set('fan-1', ['id'], 'blower'), set('G1', ['id'], 'saw-gate'));
    expect([run(shop, 'R1').to, run(shop, 'R2').from]).toEqual(['blower.in', 'blower.out']);
    expect(Object.keys(shop.settings[0]!.gates)).toEqual(['saw-gate']);
    expect(refusal(shop, set('blower', ['id'], 'port-1')).message).toContain('"port-1" is taken');
    expect(refusal(shop, set('blower', ['id'], '1 x')).message).toContain('"1 x"');
  });

  it('refuses points of a fan curve in the wrong order', () => {
    expect(refusal(simpleShop(), set('fan-1', ['curve', 'points', 1, 'flow'], '0 m3/h')).message).toContain(
      'above the flow of the point before',
    );
    const more = after(simpleShop(), { kind: 'addRow', id: 'fan-1', path: ['curve', 'points'] });
    expect(thing(more, 'fan-1')).toMatchObject({ curve: { points: { length: 5 } } });
  });
});

describe('choices', () => {
  const choose = (id: string, path: (string | number)[], value: string | boolean) =>
    ({ kind: 'setChoice', id, path, value }) as const;

  it('start a new kind of hood, and groups, with values', () => {
    const shop = after(
      simpleShop(),
      choose('port-1', ['hood', 'kind'], 'tapered'),
      choose('port-1', ['cut'], true),
    );
    expect(thing(shop, 'port-1')).toMatchObject({
      hood: { kind: 'tapered', shape: 'round' },
      cut: { width: { si: 0.006 } },
    });
    expect(thing(after(shop, choose('port-1', ['cut'], false)), 'port-1')).not.toHaveProperty('cut');
    expect(refusal(shop, choose('port-1', ['hood', 'kind'], 'odd')).remedy).toContain('tapered');
  });

  it('of air by its density also stop it from thinning', () => {
    const shop = after(simpleShop(), choose('', ['air', 'kind'], 'given'));
    expect([shop.air.kind, shop.options.compressible]).toEqual(['given', false]);
    expect(refusal(shop, choose('', ['options', 'compressible'], true)).message).toContain(
      'options.compressible',
    );
  });
});

describe('named values and settings', () => {
  it('follow a named value where it is used, and keep it while it is', () => {
    const shop = after(
      simpleShop(),
      { kind: 'setValues', rows: [{ name: 'bore', text: '100 mm' }] },
      { kind: 'setField', id: 'R1', path: ['diameter'], text: 'bore' },
    );
    const wider = after(shop, { kind: 'setValues', rows: [{ name: 'bore', text: '125 mm' }] });
    expect(run(wider, 'R1').diameter).toMatchObject({ text: 'bore', si: 0.125 });
    expect(run(wider, 'R2')).toBe(run(shop, 'R2'));
    expect(refusal(wider, { kind: 'setValues', rows: [] }).message).toContain('runs[0](R1).diameter');
    expect(refusal(wider, { kind: 'setValues', rows: [{ name: 'bore', text: 'bore' }] }).message).toContain(
      'circle',
    );
  });

  it('add, copy, rename and remove settings', () => {
    const shop = after(
      simpleShop(),
      { kind: 'addPiece', run: 'R1', leg: 0, at: 0.5, piece: { kind: 'gate' } },
      { kind: 'setSetting', setting: 'all open', gates: { G1: '70 %' } },
      { kind: 'addSetting', setting: 'saw', like: 'all open' },
      { kind: 'setGate', setting: 'saw', gate: 'G1', text: null },
      { kind: 'renameSetting', setting: 'saw', name: 'saw alone' },
    );
    expect(shop.settings.map(({ name, gates }) => [name, gates.G1?.text])).toEqual([
      ['all open', '70 %'],
      ['saw alone', undefined],
    ]);
    expect(refusal(shop, { kind: 'addSetting', setting: 'saw alone' }).message).toContain(
      'two settings are named',
    );
    expect(refusal(shop, { kind: 'setGate', setting: 'saw alone', gate: 'G9', text: '1' }).message).toContain(
      'no gate has this name',
    );
    expect(
      refusal(shop, { kind: 'setGate', setting: 'saw alone', gate: 'G1', text: '120 %' }).message,
    ).toContain('gates.G1');
    expect(after(shop, { kind: 'removeSetting', setting: 'saw alone' }).settings).toHaveLength(1);
  });

  it('take a plan picture and refuse what is none', () => {
    const underlay = {
      name: 'hall.png',
      width_px: 10,
      height_px: 10,
      at: { x: 0, y: 0 },
      metresPerPixel: 0.01,
    };
    const shop = after(simpleShop(), {
      kind: 'setUnderlay',
      underlay: { ...underlay, data: 'data:image/png;base64,AAAA' },
    });
    expect(shop.underlay!.metresPerPixel.si).toBe(0.01);
    expect(
      refusal(shop, { kind: 'setUnderlay', underlay: { ...underlay, data: 'data:text/html;base64,AAAA' } })
        .message,
    ).toContain('underlay.data');
    expect(after(shop, { kind: 'setUnderlay', underlay: null })).not.toHaveProperty('underlay');
  });
});

describe('copying', () => {
  const gated = () =>
    after(
      simpleShop(),
      { kind: 'addPiece', run: 'R1', leg: 0, at: 0.5, piece: { kind: 'gate' } },
      { kind: 'setGate', setting: 'all open', gate: 'G1', text: '50 %' },
    );

  it('renames everything, settings included, through the clipboard', () => {
    const clip = readClip(writeClip(copyParts(gated(), ['port-1', 'fan-1'])))!;
    const shop = after(gated(), { kind: 'paste', clip, at: { x: 10, y: 10 } });
    expect(shop.things.map(({ id }) => id)).toEqual(['port-1', 'fan-1', 'exhaust-1', 'port-2', 'fan-2']);
    expect([run(shop, 'R3').from, run(shop, 'R3').to]).toEqual(['port-2', 'fan-2.in']);
    expect(Object.entries(shop.settings[0]!.gates).map(([gate, { text }]) => [gate, text])).toEqual([
      ['G1', '50 %'],
      ['G2', '50 %'],
    ]);
    expect(thing(shop, 'port-2').at!.x.si).toBe(10);
    expect(run(shop, 'R3').route!.corners[0]!.x.si).toBe(14);
    expect(readClip('not a shop')).toBeNull();
  });

  it('duplicates beside, and ends a lone run at joints', () => {
    const shop = after(gated(), { kind: 'duplicate', ids: ['R1'] });
    expect([run(shop, 'R3').from, run(shop, 'R3').to]).toEqual(['joint-1', 'joint-2']);
    expect(run(shop, 'R3').route!.corners[0]!.x.si).toBe(4.5);
    expect(refusal(shop, { kind: 'paste', clip: copyParts(shop, []) }).message).toContain(
      'nothing was copied',
    );
  });

  it('keeps the size but not the name of a value that another shop does not have', () => {
    const named = after(
      gated(),
      { kind: 'setValues', rows: [{ name: 'bore', text: '90 mm' }] },
      { kind: 'setField', id: 'R1', path: ['diameter'], text: 'bore' },
    );
    const shop = after(simpleShop(), { kind: 'paste', clip: copyParts(named, ['R1']) });
    expect(run(shop, 'R3').diameter).toMatchObject({ text: null, si: 0.09 });
  });
});

describe('a cyclone of own dimensions', () => {
  const shop = after(simpleShop(), { kind: 'place', thing: 'cyclone', at: { x: 3, y: 5 } });
  const free: Command = { kind: 'setChoice', id: 'cyclone-1', path: ['proportions'], value: 'free' };
  const sizes = (document: ShopDocument) => {
    const cyclone = thing(document, 'cyclone-1') as ThingOf<'cyclone'>;
    return Object.fromEntries(
      Object.entries(cyclone.dimensions ?? {}).map(([key, field]) => [key, field?.si]),
    );
  };

  it('starts with what its proportions gave, so that nothing is missing', () => {
    // Stairmand's high-efficiency proportions times 300 mm
    const expected = [0.15, 0.06, 0.15, 0.15, 0.45, 1.2, 0.1125];
    const got = Object.values(sizes(after(shop, free)));
    expect(got).toHaveLength(expected.length);
    got.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 9));
  });

  it('keeps what was given before, and what it has when chosen again', () => {
    const own = after(
      shop,
      { kind: 'setField', id: 'cyclone-1', path: ['dimensions', 'inletWidth'], text: '70 mm' },
      free,
      { kind: 'setField', id: 'cyclone-1', path: ['dimensions', 'totalHeight'], text: '1 m' },
      free,
    );
    expect(sizes(own)).toMatchObject({ inletWidth: 0.07, totalHeight: 1, inletHeight: 0.15 });
  });
});
