import type { MessageRow } from './message-row.ts';

/** Findings about the tests of a fan on the bench. */
export const BENCH_MESSAGES = {
  'reading-left-out': {
    severity: 'fault',
    message: 'reading {} is left out of the curve: {}',
    remedy: 'correct it at its row; the other readings go on without it',
  },
  'reading-astray': {
    severity: 'warning',
    message: 'reading {} lies {} standard errors from the curve through the others',
    remedy:
      'measure it again: a leak, a wrong size or a wrong speed shows like this, or the errors given are too small',
  },
  'fan-no-curve': {
    severity: 'fault',
    message: 'no curve: {}',
    remedy: 'measure a sealed lift and a plate or two, and correct the rows that are left out',
  },
  'fan-shape-assumed': {
    severity: 'warning',
    message: 'the shape of the curve is assumed, that usual for {}: only one place on it was measured',
    remedy: 'measure one plate or more; each narrows the band',
  },
  'fan-motor-impossible': {
    severity: 'fault',
    message: 'its motor tells nothing: {}',
    remedy: 'correct the figures of the motor',
  },
  'caution-fan-tests': {
    severity: 'caution',
    message:
      'A bare fan pulls in fingers, hair and cloth, and a wheel that breaks flies out in the plane that it turns in.',
    remedy:
      'Test behind a guard, stand out of the plane of the wheel, never reach in while it turns, and unplug it before any change; keep water away from mains, and leave mains wiring to a licensed electrician.',
  },
} as const satisfies Record<string, MessageRow>;
