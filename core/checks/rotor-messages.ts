import type { MessageRow } from './message-row.ts';

/** Findings about the strength and the gaps of a fan's wheel. */
export const ROTOR_MESSAGES = {
  'rotor-factor-low': {
    severity: 'danger',
    message:
      'safety factor {} at {}, where {} is the least for {}: the wheel may burst and throw pieces through the housing',
    remedy:
      'slow it down or build it stronger before it turns again; guard it, stand clear, spin-test it only behind a barrier, and ask a licensed engineer',
  },
  'rotor-over-speed': {
    severity: 'danger',
    message:
      'it reaches {}, above {}, its limit with the safety factor; on paper it bursts at {}, a real one sooner',
    remedy:
      'hold the speed down by supply, throttle or pulley so that a blocked inlet cannot lift it; guard it and stand clear',
  },
  'rotor-tip-fast': {
    severity: 'warning',
    message: 'the tip runs at {}, above {}, where practice stops with such wheels',
    remedy: 'use a smaller or slower wheel: blades, hub and joints give way before a plain disc does',
  },
  'rim-gap-closed': {
    severity: 'danger',
    message: 'the rim grows by {} at speed, and its gap is {}: the wheel will rub, heat up and may break',
    remedy: 'leave a gap of several times the growth, or slow the wheel down',
  },
  'rotor-hot': {
    severity: 'danger',
    message:
      'the wheel runs at {}, and its plastic softens at {}: it creeps, grows and may burst well before',
    remedy:
      'keep the heat of the motor away, cool the wheel, or use another material; stop, let it cool and look for creep',
  },
  'cut-off-close': {
    severity: 'advice',
    message: 'the gap to the cut-off edge is {} % of the wheel, below 5 %: expect a scream{}',
    remedy: 'widen the gap to 5 to 10 % of the diameter, or round and slant the edge',
  },
  'cut-off-wide': {
    severity: 'advice',
    message: 'the gap to the cut-off edge is {} % of the wheel, above 12 %: air leaks round past the edge',
    remedy: 'narrow the gap to 5 to 10 % of the diameter',
  },
  'rotor-speed-unknown': {
    severity: 'warning',
    message: 'no speed is known for this rotor, so nothing tells whether it is strong enough',
    remedy: 'give its highest speed, a motor, the speed of the fan, or a reading with a speed',
  },
  'rotor-unchecked': {
    severity: 'warning',
    message: 'not checked on this rotor: {}',
    remedy: 'give or correct that; until then take it as unsafe',
  },
  'caution-rotor': {
    severity: 'caution',
    message:
      'A wheel can burst at any speed through a flaw that no formula sees. This workbook certifies nothing about it.',
    remedy:
      'Guard it, stand clear of its plane, run it first behind a barrier with nobody near, and follow local codes and a licensed engineer.',
  },
} as const satisfies Record<string, MessageRow>;
