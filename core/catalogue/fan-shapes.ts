import type { Sourced } from '../quantities/sourced.ts';

/** A figure of which only the middle and the spread are known: log-normal. */
export interface Spread {
  /** Middle of the figure [-]. */
  readonly median: number;
  /** Standard deviation of its logarithm [-]. */
  readonly logError: number;
}

/**
 * How the curve of a kind of fan usually looks: what is known before anything is measured. Shares of the value with the
 * inlet blocked, or of that at free delivery, over flow as a share of free delivery (fan static pressure zero).
 */
export interface FanShape extends Sourced {
  readonly id: string;
  readonly label: string;
  /** Flow over that at free delivery [-], from 0 to 1. */
  readonly flow: readonly number[];
  /** Fan static pressure over that with the inlet blocked [-], from 1 to 0. */
  readonly pressure: readonly number[];
  /** Shaft power over that at free delivery [-]. */
  readonly power: readonly number[];
  /** Fan static pressure with the inlet blocked over `rho u^2/2` of the tip [-]. */
  readonly shutOff: Spread;
  /** Velocity in the outlet at free delivery over tip speed [-]. */
  readonly freeOutlet: Spread;
  /** Power coefficient at free delivery over flow coefficient there [-]: air power and losses in one. */
  readonly freePower: Spread;
  /** Logarithm of the power to which flow is raised before the shape is read: steeper or flatter [-]. */
  readonly bend: number;
  /** How far a real curve strays from the shape, standard deviation as a share of the pressure when blocked [-]. */
  readonly stray: number;
}

const FLOW = [0, 0.2, 0.4, 0.6, 0.8, 1] as const;
const BY_SIGHT = {
  source: 'none: drawn from the usual look of such curves in teaching texts; spans chosen wide',
  basis: 'assumed',
} as const;

/** Shapes by the kind of fan; the id is that of `fanShapeId`. */
export const FAN_SHAPES: Readonly<Record<string, FanShape>> = {
  'radial-backward': {
    id: 'radial-backward',
    label: 'radial wheel, blades leaning back',
    flow: FLOW,
    pressure: [1, 0.97, 0.87, 0.69, 0.4, 0],
    power: [0.42, 0.6, 0.8, 0.95, 1.03, 1],
    shutOff: { median: 1.05, logError: 0.3 },
    freeOutlet: { median: 0.6, logError: 0.45 },
    freePower: { median: 1, logError: 0.5 },
    bend: 0.15,
    stray: 0.04,
    ...BY_SIGHT,
  },
  'radial-radial': {
    id: 'radial-radial',
    label: 'radial wheel, straight radial blades',
    flow: FLOW,
    pressure: [1, 0.98, 0.89, 0.71, 0.42, 0],
    power: [0.4, 0.52, 0.65, 0.77, 0.89, 1],
    shutOff: { median: 1.15, logError: 0.3 },
    freeOutlet: { median: 0.65, logError: 0.45 },
    freePower: { median: 1.4, logError: 0.5 },
    bend: 0.15,
    stray: 0.04,
    ...BY_SIGHT,
  },
  'radial-forward': {
    id: 'radial-forward',
    label: 'radial wheel, blades leaning forward',
    flow: FLOW,
    pressure: [1, 0.96, 0.92, 0.8, 0.52, 0],
    power: [0.28, 0.38, 0.52, 0.68, 0.84, 1],
    shutOff: { median: 1.4, logError: 0.35 },
    freeOutlet: { median: 0.9, logError: 0.5 },
    freePower: { median: 2, logError: 0.5 },
    bend: 0.15,
    stray: 0.06,
    ...BY_SIGHT,
  },
  mixed: {
    id: 'mixed',
    label: 'mixed flow',
    flow: FLOW,
    pressure: [1, 0.92, 0.81, 0.65, 0.4, 0],
    power: [0.85, 0.88, 0.94, 0.99, 1.01, 1],
    shutOff: { median: 0.75, logError: 0.35 },
    freeOutlet: { median: 0.45, logError: 0.45 },
    freePower: { median: 0.7, logError: 0.5 },
    bend: 0.18,
    stray: 0.06,
    ...BY_SIGHT,
  },
  axial: {
    id: 'axial',
    label: 'axial',
    flow: FLOW,
    pressure: [1, 0.82, 0.68, 0.57, 0.36, 0],
    power: [1.6, 1.38, 1.22, 1.14, 1.08, 1],
    shutOff: { median: 0.4, logError: 0.45 },
    freeOutlet: { median: 0.3, logError: 0.4 },
    freePower: { median: 0.25, logError: 0.6 },
    bend: 0.2,
    stray: 0.09,
    ...BY_SIGHT,
  },
  'staged-axial': {
    id: 'staged-axial',
    label: 'axial in stages',
    flow: FLOW,
    pressure: [1, 0.88, 0.78, 0.66, 0.42, 0],
    power: [1.4, 1.26, 1.16, 1.1, 1.05, 1],
    shutOff: { median: 0.9, logError: 0.5 },
    freeOutlet: { median: 0.35, logError: 0.4 },
    freePower: { median: 0.6, logError: 0.6 },
    bend: 0.2,
    stray: 0.08,
    ...BY_SIGHT,
  },
};
