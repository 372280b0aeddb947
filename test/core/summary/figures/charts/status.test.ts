import { describe, expect, it } from 'vitest';
import type { PieceResult, RunResult } from '../../../../../core/network/solution.ts';
import {
  marginOf,
  marginText,
  STATUS_LOOKS,
  statusesOf,
  statusOf,
} from '../../../../../core/summary/figures/charts/status.ts';
import { solvedExample } from '../solved-example.ts';

const hood = { kind: 'hood' } as PieceResult;
const run = (over: Partial<RunResult>): RunResult => ({
  id: 'R1',
  name: null,
  from: 'a',
  to: 'b',
  massFlow_kgs: 0.2,
  flow_m3s: 0.17,
  velocity_ms: 22,
  requiredVelocity_ms: 20,
  requiredFlow_m3s: null,
  holds: true,
  lossTotal_Pa: 100,
  dust_kgs: 0,
  pieces: [hood],
  ...over,
});

describe('status of a run', () => {
  it.each([
    ['holds', {}],
    ['holds', { velocity_ms: 21.01 }],
    ['slim', { velocity_ms: 20.99 }],
    ['slim', { velocity_ms: 20 }],
    ['too slow', { velocity_ms: 19.99, holds: false }],
    ['short', { requiredFlow_m3s: 0.2, holds: false }],
    ['slim', { requiredFlow_m3s: 0.168 }],
    ['shut', { massFlow_kgs: 0, flow_m3s: 0, velocity_ms: 0, holds: null }],
    ['none', { requiredVelocity_ms: null, holds: null }],
    ['backwards', { massFlow_kgs: -0.2, flow_m3s: -0.17, holds: false }],
    // a drawn direction is no promise: between two junctions air may go either way
    ['holds', { massFlow_kgs: -0.2, flow_m3s: -0.17, pieces: [] }],
  ] as const)('is %s for %j', (status, over) => {
    expect(statusOf(run(over as Partial<RunResult>))).toBe(status);
  });

  it('is fast above the high velocity only, and never in place of a fault', () => {
    expect(statusOf(run({ velocity_ms: 30 }), 28)).toBe('fast');
    expect(statusOf(run({ velocity_ms: 27 }), 28)).toBe('holds');
    expect(statusOf(run({ velocity_ms: 30, requiredFlow_m3s: 0.2, holds: false }), 28)).toBe('short');
  });

  it('takes the smaller of the margins of velocity and flow', () => {
    expect(marginOf(run({ requiredFlow_m3s: 0.16 }))).toBeCloseTo(0.0625, 12);
    expect(marginOf(run({ requiredFlow_m3s: 0.1 }))).toBeCloseTo(0.1, 12);
    expect(marginOf(run({ requiredVelocity_ms: null }))).toBeNull();
  });

  it('cuts a margin and does not round it', () => {
    expect([0.2999, 0.0499, -0.0321, -0.839, null].map(marginText)).toEqual([
      '+29 %',
      '+4.9 %',
      '-3.2 %',
      '-83 %',
      '–',
    ]);
  });

  it('agrees with the findings of a solved shop', () => {
    for (const setting of ['planer alone', 'jointer alone', 'all open']) {
      const result = solvedExample('five-machines', setting);
      const statuses = statusesOf(result);
      const coded = (code: string) => result.findings.filter((f) => f.code === code).map((f) => f.where);
      for (const id of coded('velocity-low')) expect(statuses.get(id)).toBe('too slow');
      for (const id of coded('velocity-close')) expect(statuses.get(id)).toBe('slim');
      for (const { id, holds } of result.runs) {
        if (holds === false) expect(['too slow', 'short', 'backwards']).toContain(statuses.get(id));
        if (holds === true) expect(['holds', 'slim', 'fast']).toContain(statuses.get(id));
      }
    }
    expect(statusesOf(solvedExample('five-machines', 'jointer alone')).get('R2')).toBe('fast');
  });

  it('has a mark of its own for each word, so that colour is not needed', () => {
    const looks = Object.values(STATUS_LOOKS);
    expect(new Set(looks.map((l) => `${l.mark} ${String(l.filled)}`)).size).toBe(looks.length);
    expect(new Set(looks.map((l) => l.word)).size).toBe(looks.length);
  });
});
