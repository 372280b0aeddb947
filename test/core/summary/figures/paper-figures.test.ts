import { describe, expect, it } from 'vitest';
import { CYCLONE_PROPORTIONS } from '../../../../core/catalogue/cyclones.ts';
import { openShop, solveSetting } from '../../../../core/network/solve.ts';
import { systemCurve } from '../../../../core/network/system-curve.ts';
import { printQuantity } from '../../../../core/quantities/print.ts';
import { standardCyclone } from '../../../../core/separator/proportions.ts';
import { curveFigure } from '../../../../core/summary/figures/curve-figure.ts';
import { CYCLONE_LETTERS, cycloneFigure } from '../../../../core/summary/figures/cyclone-figure.ts';
import { PX_PER_M } from '../../../../core/summary/figures/paper.ts';
import { planFigure } from '../../../../core/summary/figures/plan-figure.ts';
import { staircaseFigure } from '../../../../core/summary/figures/staircase-figure.ts';
import { upkeepFigure } from '../../../../core/summary/figures/upkeep-figure.ts';
import { upkeep } from '../../../../core/upkeep/upkeep.ts';
import { EXAMPLES, exampleDocument } from '../../upkeep/examples.ts';
import { seen, takeApart } from '../page.ts';

const sizeOf = (svg: string) => {
  const { attributes } = takeApart(svg).tags[0]!;
  return { width: Number(attributes.get('width')), height: Number(attributes.get('height')) };
};
/** Lettering of a picture with where it stands and about how wide it is. */
const lettering = (svg: string) =>
  [...svg.matchAll(/<text([^>]*)>(.*?)<\/text>/g)].map((match) => {
    const of = (key: string) => / /.test(match[1]!) && new RegExp(` ${key}="([^"]*)"`).exec(match[1]!)?.[1];
    const text = seen(match[2]!);
    const width = text.length * Number(of('font-size') || 11) * 0.5;
    const x = Number(of('x'));
    const anchor = of('text-anchor') || 'start';
    const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
    return { text, left, right: left + width, y: Number(of('y')), turned: Boolean(of('transform')) };
  });
/** No letter is cut by the edge of the picture. */
function expectWhole(svg: string): void {
  const { width, height } = sizeOf(svg);
  for (const { text, left, right, y, turned } of lettering(svg)) {
    if (turned || text === '') continue;
    expect([text, left >= -1, right <= width + 1, y > 6, y <= height]).toEqual([
      text,
      true,
      true,
      true,
      true,
    ]);
  }
}

describe.each(EXAMPLES)('the plan of %s', (name) => {
  const document = exampleDocument(name);
  const input = { width: 672, height: 620, units: document.units };
  const plan = planFigure(document, input)!;
  const svg = plan.figure.text;

  it('is to scale: a metre of the shop is so many pixels of the paper', () => {
    const scale = Number(/scale\(([\d.]+)\)/.exec(svg)![1]);
    expect(scale).toBeCloseTo(PX_PER_M / plan.scale, 3);
    // the places of two things, as drawn, lie as far apart as in the shop
    const placed = document.things.filter(({ at }) => at !== undefined);
    const drawn = new Set(
      [...svg.matchAll(/translate\((-?[\d.]+) (-?[\d.]+)\) rotate/g)].map((m) => `${m[1]!} ${m[2]!}`),
    );
    const round = (metres: number) => String(Math.round(metres * 1e4) / 1e4);
    for (const { at } of placed) expect(drawn).toContain(`${round(at!.x.si)} ${round(at!.y.si)}`);
  });

  it('has a scale bar of that length, and says the scale', () => {
    const bars = [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)" height="6"/g)];
    const perUnit = PX_PER_M / plan.scale / (document.units === 'us' ? 1 / 0.3048 : 1);
    const texts = lettering(svg).map(({ text }) => text);
    const end = texts.find(
      (text) => new RegExp(`^[\\d.]+ ${document.units === 'us' ? 'ft' : 'm'}$`).test(text) && text.length < 7,
    )!;
    const total = bars.reduce((sum, bar) => sum + Number(bar[2]), 0);
    const bar = texts.findLast((text) => /^[\d.]+ (ft|m)$/.test(text) && !text.includes('.00'))!;
    expect(end).toBeDefined();
    expect(total / perUnit).toBeCloseTo(parseFloat(bar), 1);
    expect(texts).toContain(`scale 1:${plan.scale} when printed at full size`);
  });

  it('names every run and thing, and stays on the paper', () => {
    const size = sizeOf(svg);
    expect(size.width).toBeLessThanOrEqual(input.width);
    expect(size.height).toBeLessThanOrEqual(input.height);
    const all = lettering(svg).map(({ text }) => text);
    for (const { id } of document.runs) expect(all.some((text) => text.startsWith(id))).toBe(true);
    const joined = all.join(' ');
    for (const { id, name: full } of document.things) {
      expect([id, joined.includes(full ?? id) || all.includes(id)]).toEqual([id, true]);
    }
    expectWhole(svg);
  });
});

it('draws no plan of a shop without places', () => {
  const document = exampleDocument('one-router');
  const things = document.things.map((thing) => ({ ...thing, at: undefined }));
  expect(
    planFigure({ ...document, things } as typeof document, { width: 600, height: 600, units: 'si' }),
  ).toBeNull();
});

describe.each(Object.values(CYCLONE_PROPORTIONS))('the drawing of $label', (row) => {
  const geometry = standardCyclone(row, 0.3);
  const svg = cycloneFigure(geometry, { width: 672, height: 420, units: 'si', name: row.label }).text;

  it('has all eight dimensions, in the proportions of the thing', () => {
    takeApart(svg);
    const texts = lettering(svg).map(({ text }) => text);
    for (const { letter, field } of CYCLONE_LETTERS) {
      expect(texts).toContain(`${letter} ${printQuantity(geometry[field], 'length', 'si')}`);
    }
    // the body: across the roof, down the straight part, in along the cone
    const body = /d="M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)L([\d.]+) ([\d.]+)V/.exec(svg)!.slice(1).map(Number);
    const [x0, y0, x1, y1, , y2] = body as [number, number, number, number, number, number];
    const D = x1 - x0;
    expect((y1 - y0) / D).toBeCloseTo(row.cylinderHeight, 2);
    expect((y2 - y0) / D).toBeCloseTo(row.totalHeight, 2);
    expectWhole(svg);
  });
});

describe('charts on paper', () => {
  const document = exampleDocument('five-machines');
  const opened = openShop(document);
  if (!opened.ok) throw new Error('not opened');
  const common = { width: 672, units: document.units, nameOf: (id: string) => id };

  it('the staircase: total a whole line, static a dashed one, both named', () => {
    const result = solveSetting(opened.bench, 'saw and sander');
    const { figure, from } = staircaseFigure(result, { ...common, height: 300 })!;
    expectWhole(figure.text);
    expect(['saw-cabinet', 'saw-guard', 'sander']).toContain(from);
    expect(seen(figure.text)).toContain('total pressure');
    expect(figure.text).toContain('stroke-dasharray="5 3"');
    expect(seen(figure.text)).toContain('in wg');
  });

  it('fan and system: shares told apart by hatch, the point, and where it runs in most cases', () => {
    const curve = systemCurve(opened.bench, 'saw and sander', 'fan');
    const point = curve.operatingPoints[0]!;
    const near = (value: number) => ({ low: value * 0.95, middle: value, high: value * 1.05 });
    const { figure } = curveFigure(curve, {
      ...common,
      height: 350,
      runs: { flow_m3s: near(point.flow_m3s), totalPressure_Pa: near(point.totalPressure_Pa) },
      bench: null,
      idPrefix: 'x',
    });
    expectWhole(figure.text);
    const patterns = [...figure.text.matchAll(/<pattern id="(x-\w+)".*?<path d="([^"]*)"/g)];
    expect(patterns.length).toBeGreaterThanOrEqual(5);
    expect(new Set(patterns.map((match) => match[2])).size).toBe(patterns.length);
    expect(seen(figure.text)).toContain('runs here in 90 of 100 cases');
    expect(seen(figure.text)).toContain('cfm');
  });

  it('upkeep: a line of its own for each setting, cleanings marked', () => {
    const outcome = upkeep(document, 500);
    if (!outcome.ok) throw new Error('no upkeep');
    const svg = upkeepFigure(outcome.result, { ...common, height: 340 })!.text;
    expectWhole(svg);
    for (const { setting } of outcome.result.duty) expect(seen(svg)).toContain(`flow, ${setting}`);
    const cleaned = new Set(
      outcome.result.events.filter(({ kind }) => kind === 'cleaned').map(({ time_h }) => time_h),
    ).size;
    expect(svg.match(/>cleaned</g)).toHaveLength(cleaned);
    expect(seen(svg)).toContain('running hours');
  });
});
