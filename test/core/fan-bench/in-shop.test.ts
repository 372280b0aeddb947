import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/document/commands/apply.ts';
import type { Command } from '../../../core/document/commands/command.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { benchFan } from '../../../core/fan-bench/bench.ts';
import { compareFans } from '../../../core/fan-bench/compare.ts';
import { fanInShop, placeOfDesign, withDesign } from '../../../core/fan-bench/in-shop.ts';
import { benchPicture } from '../../../core/fan-bench/picture.ts';
import { solve } from '../../../core/network/solve.ts';
import { documentOf } from '../document/samples.ts';

const after = (document: ShopDocument, ...commands: Command[]) =>
  commands.reduce((shop, command) => {
    const result = applyCommand(shop, command);
    if (!result.ok) throw new Error(result.message);
    return result.document;
  }, document);
const reading = (id: string, row: object): Command => ({ kind: 'addRow', id, path: ['readings'], row });
const tests = (id: string, speed: string): Command[] => [
  reading(id, { kind: 'sealed-lift', lift: '210 mm', speed }),
  ...[
    ['32 mm', '2000 Pa'],
    ['50 mm', '1700 Pa'],
    ['70 mm', '1150 Pa'],
  ].map(([hole, suction]) => reading(id, { kind: 'hole-plate', hole, suction, speed })),
];
/** The example without fans of its own. */
const plain: ShopDocument = { ...documentOf('one-router'), fans: [] };
const shop = after(plain, { kind: 'addFan' }, ...tests('design-1', '2900 rpm'));
const setting = 'router';
const bench = benchFan(shop, 'design-1');
const input = { document: shop, design: 'design-1', thing: 'fan', setting, curve: bench.curve };

describe('a fan tried in the shop', () => {
  const { result } = fanInShop(input);

  it('runs where the shop runs once it stands there', () => {
    const standing = after(shop, { kind: 'setChoice', id: 'fan', path: ['design'], value: 'design-1' });
    const solved = solve(standing, setting);
    if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
    const fan = solved.solution.settings[0]!.fans[0]!;
    expect(result.at!.flow_m3s).toBeCloseTo(fan.flow_m3s, 8);
    expect(result.at!.staticPressure_Pa).toBeCloseTo(fan.staticPressure_Pa, 4);
    const runs = solved.solution.settings[0]!.runs.filter(({ holds }) => holds !== null);
    expect([result.asked, result.held]).toEqual([runs.length, runs.filter(({ holds }) => holds).length]);
  });

  it('leaves the shop as it is', () => {
    expect(shop.things.some((thing) => thing.kind === 'fan' && thing.design !== undefined)).toBe(false);
    expect(placeOfDesign(shop, 'design-1')).toBe('fan');
    expect(withDesign(shop, 'fan', 'design-1').runs).toBe(shop.runs);
  });

  it('meets demand and curve at that flow, and its band holds it', () => {
    const { at, points, band } = result;
    const i = points.findIndex(({ flow_m3s }) => flow_m3s >= at!.flow_m3s);
    const more = (p: (typeof points)[number]) => p.given_Pa! - p.demand_Pa;
    expect(more(points[i - 1]!)).toBeGreaterThan(0);
    expect(more(points[i]!)).toBeLessThanOrEqual(0);
    expect(band!.low.flow_m3s).toBeLessThan(at!.flow_m3s);
    expect(band!.high.flow_m3s).toBeGreaterThan(at!.flow_m3s);
    expect(band!.low.pressure_Pa).toBeLessThan(band!.high.pressure_Pa);
  });

  it('has a wider band with fewer tests', () => {
    const fewer = after(shop, { kind: 'removeRow', id: 'design-1', path: ['readings'], index: 3 });
    const { curve } = benchFan(fewer, 'design-1');
    const { band } = fanInShop({ ...input, document: fewer, curve }).result;
    const width = (b: typeof band) => b!.high.flow_m3s - b!.low.flow_m3s;
    expect(width(band)).toBeGreaterThan(width(result.band));
  });

  it('says why where the shop cannot be solved, or the curve is not known', () => {
    const bare = after(plain, { kind: 'addFan' });
    const tried = fanInShop({ ...input, document: bare, curve: null });
    expect(tried.result.at).toBeNull();
    expect(tried.result.reason).toBeTruthy();
  });
});

/** Pressure in a room near sea level; the example's differs by little. */
const ROOM_Pa = 101_325;

describe('a picture of the tests', () => {
  it('brings each reading to the speed of the curve by the affinity laws', () => {
    const mixed = after(
      shop,
      reading('design-1', { kind: 'sealed-lift', lift: '100 mm', speed: '2000 rpm' }),
    );
    const result = benchFan(mixed, 'design-1');
    const { readings, scales } = benchPicture(mixed.fans[0]!, result);
    const slow = result.readings.at(-1)!;
    // pressure with the square of speed
    const ratio = (result.curve!.speed_rpm! / 2000) ** 2 * (result.curve!.density_kgm3 / slow.density_kgm3);
    expect(readings.at(-1)!.brought).toBe(true);
    // and with the density at the inlet, where the air is thinner by the suction
    const read = slow.staticPressure_Pa!.value;
    const inlet = ROOM_Pa / (ROOM_Pa - read);
    expect(readings.at(-1)!.staticPressure_Pa.value / (read * ratio * inlet)).toBeCloseTo(1, 3);
    expect(scales!.pressure_Pa).toBeGreaterThan(0);
  });
});

describe('fans compared', () => {
  const power = (watts: number) => ({ voltage: '100 V', current: `${watts / 100} A` });
  const drawn = (id: string, speed: string, watts: readonly number[]): Command[] =>
    tests(id, speed).map((command, i) =>
      command.kind === 'addRow'
        ? { ...command, row: { ...(command.row as object), ...power(watts[i]!) } }
        : command,
    );
  const two = after(
    plain,
    { kind: 'addFan' },
    ...drawn('design-1', '2900 rpm', [200, 260, 330, 400]),
    { kind: 'addFan' },
    ...drawn('design-2', '2900 rpm', [400, 520, 660, 800]),
  );
  const comparison = compareFans(two, setting, true);

  it('have lift, power and current of their sealed tests', () => {
    const [lift] = comparison.fans[0]!.lifts;
    expect(lift).toMatchObject({ current_A: 2 });
    expect(lift!.power_W).toBeCloseTo(200, 6);
    expect(lift!.lift_Pa).toBeGreaterThan(2000);
  });

  it('turn slower at equal power by the cube root, and press less by its square', () => {
    const [one, other] = comparison.fans;
    expect(comparison.power_W).toBeCloseTo(one!.best!.power_W!, 6);
    expect(one!.equalPower!.speedRatio).toBeCloseTo(1, 9);
    const ratio = Math.cbrt(one!.best!.power_W! / other!.best!.power_W!);
    expect(other!.equalPower!.speedRatio).toBeCloseTo(ratio, 9);
    expect(other!.equalPower!.points[0]!.staticPressure_Pa).toBeCloseTo(
      other!.curve!.points[0]!.staticPressure_Pa * ratio ** 2,
      6,
    );
  });

  it('need no shop that can be solved', () => {
    const unsolved = compareFans(two, setting, false);
    expect(unsolved.fans.map(({ inShop }) => inShop)).toEqual([null, null]);
    expect(unsolved.fans[0]!.curve).not.toBeNull();
  });
});
