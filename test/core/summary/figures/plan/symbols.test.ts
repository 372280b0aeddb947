import { describe, expect, it } from 'vitest';
import * as symbols from '../../../../../core/summary/figures/plan/symbols.ts';
import type { PlanSymbol } from '../../../../../core/summary/figures/plan/symbols.ts';

const ALL: Readonly<Record<string, PlanSymbol>> = {
  cyclone: symbols.cycloneSymbol(0.3),
  bin: symbols.binSymbol(0.6),
  filter: symbols.filterSymbol(0.6),
  fan: symbols.fanSymbol(0.375, 0.125),
  port: symbols.portSymbol(0.1),
  sweep: symbols.sweepSymbol(0.1),
  exhaust: symbols.exhaustSymbol(0.3),
  leak: symbols.leakSymbol(),
  pressure: symbols.pressureSymbol(),
  wye: symbols.wyeSymbol([
    { direction_rad: Math.PI, bore_m: 0.15 },
    { direction_rad: (3 / 4) * Math.PI, bore_m: 0.1 },
    { direction_rad: 0, bore_m: 0.15 },
  ]),
  joint: symbols.jointSymbol(0.1),
  gate: symbols.gateSymbol(0.1, 1),
  riser: symbols.verticalSymbol(0.1, 'up'),
};

describe('plan symbols', () => {
  it.each(Object.entries(ALL))('%s has a body and whole numbers only', (_, symbol) => {
    expect(symbol.paths.some(({ as }) => as === 'body')).toBe(true);
    for (const { d } of symbol.paths) {
      expect(d).toMatch(/^M/);
      expect(d).not.toMatch(/NaN|Infinity|undefined|e-/);
    }
  });

  it('differ from each other', () => {
    const drawn = Object.values(ALL).map(({ paths }) => paths.map(({ d }) => d).join());
    expect(new Set(drawn).size).toBe(drawn.length);
  });

  it('are as large as the thing', () => {
    expect(ALL['cyclone']).toMatchObject({ middle_m: { x: 0, y: 0 }, halfLength_m: 0.15, halfWidth_m: 0.15 });
  });

  it('show the blade of a gate across the duct when shut and out of it when open', () => {
    const blade = (opening: number) => {
      const { d } = symbols.gateSymbol(0.2, opening).paths.find(({ as }) => as === 'mark')!;
      const [, top, , height] = /^M\S+ ([^h]+)h([^v]+)v([^h]+)/.exec(d)!.map(Number) as [
        number,
        number,
        number,
        number,
      ];
      return { top, bottom: top + height };
    };
    const shut = blade(0);
    expect(shut.top).toBeCloseTo(-0.1, 9);
    expect(shut.bottom).toBeCloseTo(0.1, 9);
    expect(blade(1).bottom).toBeCloseTo(-0.1, 9);
    expect(blade(0.5).bottom).toBeCloseTo(0, 9);
  });

  it('mark a riser by a dot and a drop by a cross', () => {
    expect(symbols.verticalSymbol(0.1, 'up').paths[1]!.as).toBe('mark');
    expect(symbols.verticalSymbol(0.1, 'down').paths[1]!.d.match(/M/g)).toHaveLength(2);
  });
});
