import { BENCH_MESSAGES } from './bench-messages.ts';
import type { MessageRow } from './message-row.ts';
import { MOTOR_MESSAGES } from './motor-messages.ts';
import { ROTOR_MESSAGES } from './rotor-messages.ts';

export type { MessageRow } from './message-row.ts';

/** Every finding that a solved shop or a fan on the bench can have, by code. */
export const MESSAGES = {
  'velocity-low': {
    severity: 'fault',
    message: 'too slow: {} where {} is needed, {} % short; chips will settle and clog the run',
    remedy: 'use a smaller diameter, shut other gates, or lower the loss so that more air flows',
  },
  'velocity-close': {
    severity: 'warning',
    message: 'holds by {} % only: {} where {} is needed; a filter that fills will take that away',
    remedy: 'leave a tenth or more in hand: a smaller diameter, or less loss',
  },
  'velocity-high': {
    severity: 'advice',
    message: 'faster than it need be: {} where {} would do; loss grows with the square of velocity',
    remedy: 'use a larger diameter, as long as every setting still holds',
  },
  'flow-low': {
    severity: 'fault',
    message: 'the port takes {} where {} is needed to capture the dust',
    remedy: 'lower the loss of this run, shut other gates, or use a larger diameter if its velocity allows',
  },
  'air-reversed': {
    severity: 'fault',
    message: 'air runs backwards here, {}: it blows out of a port, or in at an exhaust',
    remedy: 'fit a gate to the branch and shut it when idle, or balance the branches',
  },
  'leak-blows-dust': {
    severity: 'warning',
    message: 'this leak is on the pushing side and blows {} of dusty air into the room',
    remedy: 'seal it, or put the fan after the separator and filter',
  },
  'suction-over-rating': {
    severity: 'danger',
    message: 'suction of {} where {} is what it stands: it may collapse',
    remedy: 'use a stronger hose or bin, or fit a relief valve; never stand by to see whether it holds',
  },
  'suction-at-shut-off': {
    severity: 'warning',
    message: 'with the inlet blocked the fan can pull {} here, where {} is what it stands',
    remedy: 'use a stronger hose or bin, or fit a relief valve',
  },
  'face-velocity-high': {
    severity: 'warning',
    message: 'face velocity {} through the filter, above {}: it drives dust into and through the medium',
    remedy: 'use more filter area',
  },
  'filter-full': {
    severity: 'warning',
    message: 'the filter drops {}, above {} where this medium is cleaned or changed',
    remedy: 'clean or change the filter',
  },
  'inlet-velocity': {
    severity: 'warning',
    message: 'inlet velocity {} is outside {} to {}, where a cyclone of this kind works as designed',
    remedy: 'use another body diameter, or another flow',
  },
  're-entrainment': {
    severity: 'advice',
    message:
      'inlet velocity is {} times the limit of a published rule for keeping caught dust down in the cone',
    remedy: 'see whether the filter fills faster than the catch says; a larger body helps',
  },
  'cyclone-shape': {
    severity: 'warning',
    message: '{} is {}, where {} is good; dust may cut straight across to the outlet',
    remedy: 'use a standard shape; a wide inlet needs a scroll that winds round the body',
  },
  'fan-unstable': {
    severity: 'fault',
    message: 'the fan stands at an unstable point of its curve: flow will hunt or jump',
    remedy: 'lower the loss so that it runs to the right of the hump, or use another fan',
  },
  'fan-several-points': {
    severity: 'warning',
    message:
      'the fan can run at {} flows in this shop; shown is the lowest stable one, which it reaches from rest',
    remedy: 'lower the loss so that it runs to the right of the hump, or use another fan',
  },
  'fan-extrapolated': {
    severity: 'warning',
    message: 'the fan runs at {}, a little beyond the points of its curve',
    remedy: 'measure or look up a point there',
  },
  'fan-no-path': {
    severity: 'warning',
    message: 'no air can pass this fan in this setting: it stands at shut-off',
    remedy: 'open a gate on its way, or switch it off',
  },
  'outside-range': {
    severity: 'warning',
    message: '{}: {} is {}, outside {} for which the relation was found; take its result as a rough guess',
    remedy: 'use a size inside the range, or measure the real thing and enter that',
  },
  'bend-tight': {
    severity: 'warning',
    message: 'the bend at corner {} has no room for its radius: {} fits between the corners, {} is wanted',
    remedy: 'move the corners apart, or ask for a smaller bend',
  },
  'dust-load-high': {
    severity: 'warning',
    message: 'the run carries {} kg of dust for each kg of air; the loss added by dust is known up to {}',
    remedy: 'check the dust rate; a real load like this needs more air',
  },
  'flow-unsettled': {
    severity: 'advice',
    message:
      'so little air moves here (Reynolds number {}) that its friction may be anything between two laws',
    remedy: 'take the loss of this run as a rough figure; no dust travels at such a flow',
  },
  'air-very-fast': {
    severity: 'warning',
    message: 'air at {} is close to where these relations end (about 100 m/s)',
    remedy: 'use a larger diameter',
  },
  'caution-combustible': {
    severity: 'caution',
    message:
      'This dust can burn and, as a cloud in a duct, bin or filter, explode. This workbook certifies nothing about that.',
    remedy:
      'Keep sparks, embers and metal out, empty bins, and follow local codes and a licensed professional (in the US, NFPA 660).',
  },
  'caution-fine-dust': {
    severity: 'caution',
    message:
      'Fine dust, of wood above all, harms the lungs. Figures for catch are clean-flow theory, and exhaust to the room brings back what a filter lets through.',
    remedy:
      'Wear a respirator where dust can be seen or smelt, and keep to the exposure limits that apply where you are.',
  },
  'caution-static': {
    severity: 'caution',
    message:
      'Plastic duct and hose charge up. An insulated metal part can hold enough for a spark or a shock.',
    remedy: 'Bond and earth every metal part, wire helix, clamp and bin; local codes may ask for metal duct.',
  },
  'caution-make-up-air': {
    severity: 'caution',
    message:
      'Air blown outside must come in again. A flued heater in the room may then draw its smoke back in.',
    remedy: 'Give the shop an opening for make-up air, and ask a licensed fitter about any flued appliance.',
  },
  'caution-collapse': {
    severity: 'caution',
    message: 'A blocked inlet puts the whole suction of the fan on bins, hoses and panels.',
    remedy: 'Check what they stand, fit a relief valve, and stay clear of a bin that creaks.',
  },
  ...BENCH_MESSAGES,
  ...MOTOR_MESSAGES,
  ...ROTOR_MESSAGES,
} as const satisfies Record<string, MessageRow>;

export type FindingCode = keyof typeof MESSAGES;
