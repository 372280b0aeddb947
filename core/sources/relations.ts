import type { Relation } from './relation.ts';
import { BENCH_RELATIONS } from './relations-bench.ts';
import { DEVICE_RELATIONS } from './relations-devices.ts';
import { DUCT_RELATIONS } from './relations-duct.ts';
import { FAN_RELATIONS } from './relations-fan.ts';

export type RelationId =
  | keyof typeof DUCT_RELATIONS
  | keyof typeof DEVICE_RELATIONS
  | keyof typeof FAN_RELATIONS
  | keyof typeof BENCH_RELATIONS;

/** Every relation that a result may rest on. */
export const RELATIONS: Readonly<Record<RelationId, Relation>> = {
  ...DUCT_RELATIONS,
  ...DEVICE_RELATIONS,
  ...FAN_RELATIONS,
  ...BENCH_RELATIONS,
};
