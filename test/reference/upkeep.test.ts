import { describe, expect, it } from 'vitest';
import { FILTER_MEDIA } from '../../core/catalogue/filter-media.ts';
import { bogackiShampine } from '../../core/upkeep/step.ts';
import { constantPressure, DUST_KGS, marched, STEEP_FAN, steepFan } from '../core/upkeep/shops.ts';
import { against } from './ledger.ts';

const AREA_m2 = 4;
const MEDIUM = FILTER_MEDIA['felt-bag'];
const HELD_KGS = DUST_KGS * 0.99;

/** `dP/V = S_E + K2 W`, with `W = M t / A` of a cake that only grows. Source: EPA Cost Manual Sec 6 Ch 1, from memory. */
const dragAfter = (hours: number) =>
  MEDIUM.drag_Pasm + (MEDIUM.cakeResistance_pers * HELD_KGS * hours * 3600) / AREA_m2;

describe('growth of the cake against closed forms', () => {
  const steep = against({
    relation: 'core/upkeep/upkeep.ts#upkeep',
    source: 'closed form of a fan of straight curve on a cake that grows: flow and drop',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const straightLine = against({
    relation: 'core/upkeep/upkeep.ts#upkeep',
    source: 'at constant flow the drop grows in a straight line',
    basis: 'hand-calculation',
    kind: 'limit',
  });
  const constant = against({
    relation: 'core/upkeep/upkeep.ts#upkeep',
    source: 'closed form of a filter at constant pressure, a root of the quadratic of filter and hood',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const mass = against({
    relation: 'core/upkeep/upkeep.ts#upkeep',
    source: 'dust held in 30 hours by hand: all of it lies on the cloth',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const cleaning = against({
    relation: 'core/upkeep/upkeep.ts#upkeep',
    source: 'hour at which the closed form reaches the limit, and 85 % of it between later cleanings',
    basis: 'hand-calculation',
    kind: 'value',
  });
  const leftOver = against({
    relation: 'core/upkeep/upkeep.ts#upkeep',
    source: '15 % of the cake stays where 85 % is cleaned off',
    basis: 'hand-calculation',
    kind: 'value',
  });

  // hood: 30 velocity pressures in 100 mm duct; the runs have no length
  const HOOD = (30 * 1.2) / (2 * (Math.PI * 0.05 ** 2) ** 2);
  const flowAt = (r: number, k: number, pressure: number) =>
    (-r + Math.sqrt(r * r + 4 * k * pressure)) / (2 * k);

  // the outlet to the room loses one velocity pressure
  const [[q1, p1], [q2, p2]] = STEEP_FAN;
  const slope = (p1 - p2) / (q2 - q1);
  const steepFlow = (hours: number) =>
    flowAt(dragAfter(hours) / AREA_m2 + slope, (HOOD * 31) / 30, p1 + slope * q1);

  it('nearly constant flow: the drop grows in nearly a straight line', () => {
    const { timeline } = marched(steepFan(), 2.4);
    expect(timeline.length).toBeGreaterThan(10);
    const first = steepFlow(0);
    for (const { time_h, drops, settings } of timeline) {
      steep.within(settings[0]!.flow_m3s, steepFlow(time_h), 1e-6);
      const drop = (dragAfter(time_h) * steepFlow(time_h)) / AREA_m2;
      steep.within(drops[0]!.drop_Pa, drop, 1e-6);
      // off the straight line no more than the fan gives way: the growth of the drop over its slope
      const line = (dragAfter(time_h) * first) / AREA_m2;
      const givesWay = (line - (dragAfter(0) * first) / AREA_m2) / slope / first;
      straightLine.holds(1 - drop / line <= givesWay, 'off it no more than the fan gives way');
    }
    const [begin, end] = [timeline[0]!, timeline.at(-1)!].map(({ drops }) => drops[0]!.drop_Pa);
    straightLine.holds(end! > 1.5 * begin!, 'by more than half');
  });

  it('constant pressure: the flow is the root of the quadratic of filter and hood', () => {
    const pressure = 600;
    const { timeline, events } = marched(constantPressure(pressure), 30);
    expect(events).toEqual([]);
    for (const { time_h, settings, drops } of timeline) {
      const r = dragAfter(time_h) / AREA_m2;
      const flow = flowAt(r, HOOD, pressure);
      constant.within(drops[0]!.drop_Pa, r * flow, 1e-6);
      expect(settings[0]!.flow_m3s).toBe(0); // no fan here, so its flow is not asked
    }
    const cake = timeline.at(-1)!.cake[0]!.load_kgm2;
    mass.within(cake * AREA_m2, HELD_KGS * 30 * 3600, 1e-9);
  });

  it('finds the hour of cleaning where the closed form has it', () => {
    const { firstClean, timeline, events } = marched(steepFan(), 200);
    // the medium's limit over drag is the face velocity there; halved until both sides agree
    let low = 0;
    let high = 200;
    while (high - low > 1e-9) {
      const t = (low + high) / 2;
      if ((dragAfter(t) * steepFlow(t)) / AREA_m2 < MEDIUM.changeAtPressure_Pa) low = t;
      else high = t;
    }
    const exact_h = high;
    expect(exact_h).toBeLessThan(200);
    expect(firstClean).toMatchObject({ kind: 'filter-limit', where: 'filter' });
    cleaning.withinAbsolute(firstClean!.time_h, exact_h, 0.01, { unit: 'h' });
    // 85 % of the cake goes, so that 15 % of it is the start of the next
    const after = timeline[timeline.findIndex(({ time_h }) => time_h === firstClean!.time_h) + 1]!;
    const before = timeline.find(({ time_h }) => time_h === firstClean!.time_h)!;
    leftOver.withinAbsolute(after.cake[0]!.load_kgm2 / before.cake[0]!.load_kgm2, 0.15, 5e-13);
    const cleanings = events.filter(({ kind }) => kind === 'cleaned').map(({ time_h }) => time_h);
    expect(cleanings.length).toBeGreaterThan(50);
    cleanings.slice(1).forEach((time_h, i) => {
      cleaning.withinAbsolute(time_h - cleanings[i]!, 0.85 * exact_h, 0.01, { unit: 'h' });
    });
  });
});

describe('the pair of Bogacki and Shampine', () => {
  const order = against({
    relation: 'core/upkeep/step.ts#bogackiShampine',
    source: "closed form of y' = t - y: half the step, an eighth of the error, order 3",
    basis: 'hand-calculation',
    kind: 'value',
  });
  const cubicInTime = against({
    relation: 'core/upkeep/step.ts#bogackiShampine',
    source: 'a cubic in time, which a method of third order follows without error',
    basis: 'hand-calculation',
    kind: 'limit',
  });

  // y' = -y + t, y(0) = 1: y = 2 exp(-t) + t - 1; t is carried as a second number
  const rates = (y: Float64Array) => Float64Array.of(-y[0]! + y[1]!, 1);
  const errorWith = (steps: number) => {
    let y = Float64Array.of(1, 0);
    for (let i = 0; i < steps; i++)
      y = Float64Array.from(bogackiShampine(y, rates(y), 1 / steps, rates).state);
    return Math.abs(y[0]! - 2 * Math.exp(-1));
  };

  it('is of third order: half the step, an eighth of the error', () => {
    for (const steps of [8, 16, 32]) {
      order.withinAbsolute(Math.log2(errorWith(steps) / errorWith(2 * steps)), 3, 0.2);
    }
  });

  it('solves a cubic in time without error, and says so within its own estimate', () => {
    const cubic = (y: Float64Array) => Float64Array.of(3 * y[1]! ** 2, 1);
    const { state } = bogackiShampine(Float64Array.of(0, 0), cubic(Float64Array.of(0, 0)), 2, cubic);
    cubicInTime.withinAbsolute(state[0]!, 8, 5e-13);
  });
});
