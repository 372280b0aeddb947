import type { SystemCurve } from '../network/system-curve.ts';
import { LOSS_SHARES } from '../network/solution.ts';
import { displayUnit, printQuantity, toDisplay } from '../quantities/print.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { textTable } from './text-table.ts';
import type { Column } from './text-table.ts';

/** A system curve as a table: what the shop asks at each flow, in shares, beside what the fan gives. */
export function curveText(curve: SystemCurve, units: UnitSystem): string {
  const right = (head: string): Column => ({ head, align: 'right' });
  const decimals = units === 'si' ? 0 : 2;
  const pressure = (si: number | null) =>
    si === null
      ? '–'
      : toDisplay(si, 'pressure', units)
          .toFixed(decimals)
          .replace(/^-(0(\.0*)?)$/, '$1');
  const other = curve.points.some((p) => Math.abs(p.otherShare_Pa) > 0.01);
  const columns = [
    right(`flow ${displayUnit('flow', units)}`),
    right('demand'),
    right('fan total'),
    ...LOSS_SHARES.map(right),
    ...(other ? [right('other')] : []),
  ];
  const rows = curve.points.map((p) => [
    toDisplay(p.flow_m3s, 'flow', units).toFixed(0),
    pressure(p.demand_Pa),
    pressure(p.fanTotal_Pa),
    ...LOSS_SHARES.map((share) => pressure(p.shares_Pa[share])),
    ...(other ? [pressure(p.otherShare_Pa)] : []),
  ]);
  const points = curve.operatingPoints.map(
    (p) =>
      `  runs at ${printQuantity(p.flow_m3s, 'flow', units)} and ${printQuantity(p.totalPressure_Pa, 'pressure', units)} (${p.stable ? 'stable' : 'unstable'})`,
  );
  return [
    `${curve.document}, setting "${curve.setting}", fan ${curve.fan}`,
    `system curve, total pressure in ${displayUnit('pressure', units)}, with its shares`,
    ...textTable(columns, rows, '  '),
    ...points,
    '',
  ].join('\n');
}
