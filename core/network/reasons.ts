/** Why a setting has no result: a closed list, each with its sentence and what would mend it. */
export const REASONS = {
  'no-open-path': {
    text: 'no open path: in this setting no air can get from an opening through the fan and out again',
    remedy: 'open a gate, or join the open end, the fan and the exhaust',
  },
  'sealed-ring': {
    text: 'the fan blows round a loop without any opening to the room',
    remedy: 'add a port, an exhaust or a leak to the loop',
  },
  'fan-cannot-overcome': {
    text: 'the fan cannot overcome the pressure against it: air would blow back through it',
    remedy: 'use a fan with more shut-off pressure, or lower the pressure that it works against',
  },
  'beyond-fan-curve': {
    text: 'the fan would run beyond its curve, where nothing is known of it',
    remedy: 'add a measured point of the fan at that flow, or throttle the shop',
  },
  'too-fast': {
    text: 'air would reach a good part of the speed of sound somewhere, which this model does not cover',
    remedy: 'use a larger diameter, or less pressure',
  },
  'did-not-settle': {
    text: 'the network did not settle to a balance',
    remedy: 'look at the place named for a size or pressure that cannot be meant',
  },
} as const;

export type Reason = keyof typeof REASONS;
