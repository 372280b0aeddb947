import type { FanDesign, Motor } from '../document/schema-fans.ts';
import { CONTROLLER_LOSS } from '../fan-bench/motor-of.ts';
import { benchMotor } from '../fan-bench/reduction.ts';
import { BELT_EFFICIENCY, BREAKDOWN_SHARE, COPPER_SHARE } from '../fan/motor/induction.ts';
import { SUITED } from '../fan/motor/match.ts';
import { SHORT_RUN_s } from '../checks/motor-findings.ts';
import type { Sourced } from '../quantities/sourced.ts';
import { sourced } from './piece-sources.ts';
import { GIVEN } from './source-list.ts';
import type { SourceList } from './source-list.ts';

type Where = readonly string[];
type Teller<K extends Motor['kind']> = (
  motor: Extract<Motor, { kind: K }>,
  list: SourceList,
  where: Where,
) => void;

const TELLERS: { readonly [K in Motor['kind']]: Teller<K> } = {
  brushless: (motor, list, where) => {
    list.use(where, 'brushless');
    const { value, source, basis } = CONTROLLER_LOSS;
    list.either(
      motor.controllerLoss,
      'share that a controller loses',
      'motor.controllerLoss',
      { kind: 'default', si: value, dimension: 'fraction', source, basis },
      where,
    );
    list.either(
      motor.supplyResistance,
      'resistance of battery and leads',
      'motor.supplyResistance',
      { kind: 'default', si: 0, dimension: 'resistance', ...NOTHING },
      where,
    );
    list.either(
      motor.throttle,
      'throttle',
      'motor.throttle',
      {
        kind: 'default',
        si: 1,
        dimension: 'fraction',
        source: 'no source; fully open',
        basis: 'assumed',
      },
      where,
    );
  },
  series: (motor, list, where) => {
    list.use(where, 'series');
    const value = `${motor.points.length} points`;
    list.add({ kind: 'reading', what: 'points of a series motor', value, ...GIVEN }, where);
  },
  induction: (motor, list, where) => {
    list.use(where, 'induction');
    fraction(list, 'torque over the rated at which a motor stalls', BREAKDOWN_SHARE, where, 'coefficient');
    fraction(list, 'share of the losses that heats the windings', COPPER_SHARE, where);
    if (motor.ratio) fraction(list, 'share that a belt passes on', BELT_EFFICIENCY, where);
    if (!motor.powerFactor || !motor.efficiency) {
      list.add(
        {
          kind: 'default',
          what: 'power factor or efficiency that the plate leaves out, from volts, amps and power',
          source: 'no source; both alike where the plate gives neither',
          basis: 'assumed',
        },
        where,
      );
    }
  },
};

const NOTHING: Sourced = { source: 'no source; taken as nothing', basis: 'assumed' };

/** Motor of a fan of the list. */
export function motorSources(list: SourceList, design: FanDesign, where: Where): void {
  const { motor } = design;
  if (!motor || benchMotor(design).motor === null) return;
  (TELLERS[motor.kind] as Teller<Motor['kind']>)(motor, list, where);
  const value = `on ${list.print({ si: motor.supply.si, dimension: 'voltage' })}`;
  list.add({ kind: 'reading', what: 'figures of the motor', value, ...GIVEN }, where);
  list.use(where, 'driven', 'motorLoad', 'motorSpeed', 'motorDiameter');
  const suited = `${SUITED.low} to ${SUITED.high}`;
  list.add(
    {
      kind: 'default',
      what: 'load over what a motor bears, where it suits',
      value: suited,
      ...sourced(SUITED),
    },
    where,
  );
  if (motor.kind !== 'brushless' || !motor.batteryEnergy) return;
  list.add(
    {
      kind: 'default',
      what: 'time on a battery that is worth a word where it is less',
      value: { si: SHORT_RUN_s, dimension: 'time' },
      source: 'no source; a cut of a quarter of an hour',
      basis: 'assumed',
    },
    where,
  );
}

function fraction(
  list: SourceList,
  what: string,
  row: Sourced & { readonly value: number },
  where: Where,
  dimension: 'fraction' | 'coefficient' = 'fraction',
): void {
  list.add({ kind: 'default', what, value: { si: row.value, dimension }, ...sourced(row) }, where);
}
