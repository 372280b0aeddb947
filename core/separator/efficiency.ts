import { BARTH_GRADE_EXPONENT } from '../catalogue/separator-models.ts';
import type { ValidRange } from '../quantities/range.ts';
import type { Sourced } from '../quantities/sourced.ts';
import { barthCutSize, barthGrade, lappleCutSize, theodoreDePaolaGrade } from './cut-size.ts';
import type { SeparatorFlow } from './cut-size.ts';
import { ioziaLeithCore, ioziaLeithGrade } from './iozia-leith.ts';
import { leithLichtCurve, leithLichtGrade } from './leith-licht.ts';
import type { CycloneGeometry } from './proportions.ts';

export { barthCutSize, barthGrade, lappleCutSize, lappleTurns, theodoreDePaolaGrade } from './cut-size.ts';
export type { SeparatorFlow } from './cut-size.ts';

/** Models of what a cyclone catches at each particle size. */
export type GradeModel = 'lapple' | 'leith-licht' | 'iozia-leith' | 'barth';

/** Share of the mass of one particle size [m] that is caught [-]. */
export type GradeCurve = (diameter_m: number) => number;

/** One model of grade efficiency. */
export interface GradeRow extends Sourced {
  readonly label: string;
  readonly range: ValidRange;
  /** Size caught by half [m]. */
  readonly cutSize: (geometry: CycloneGeometry, flow: SeparatorFlow) => number;
  /** The whole curve, with what does not depend on the size worked out once. */
  readonly curve: (geometry: CycloneGeometry, flow: SeparatorFlow) => GradeCurve;
  /** Share caught of one size [m], 0 to 1 [-]. */
  readonly grade: (diameter_m: number, geometry: CycloneGeometry, flow: SeparatorFlow) => number;
}

/** Quantities by which the grade models speak of a cyclone. */
export const GRADE_RANGE: ValidRange = {
  'inlet velocity': { low: 5, high: 30, unit: 'm/s' },
  'body diameter': { low: 0.1, high: 3, unit: 'm' },
};

function row(
  facts: Sourced & { readonly label: string },
  cutSize: GradeRow['cutSize'],
  curve: GradeRow['curve'],
): GradeRow {
  return {
    ...facts,
    range: GRADE_RANGE,
    cutSize,
    curve,
    grade: (diameter_m, geometry, flow) => curve(geometry, flow)(diameter_m),
  };
}

/** Every grade model, side by side. All describe clean flow: a leak at the dust outlet spoils any of them. */
export const GRADE_MODELS: Readonly<Record<GradeModel, GradeRow>> = {
  lapple: row(
    {
      label: 'Lapple; curve by Theodore and De Paola',
      source: 'Lapple 1951; Theodore and De Paola 1980; Cooper and Alley ch. 4',
      basis: 'from-memory',
    },
    lappleCutSize,
    (geometry, flow) => {
      const cutSize_m = lappleCutSize(geometry, flow);
      return (diameter_m) => theodoreDePaolaGrade(diameter_m, cutSize_m);
    },
  ),
  'leith-licht': row(
    {
      label: 'Leith and Licht',
      source: 'Leith and Licht 1972; Koch and Licht, Chem. Eng., 7 Nov 1977',
      basis: 'from-memory',
    },
    (geometry, flow) => {
      const { scale, power } = leithLichtCurve(geometry, flow);
      return (Math.LN2 / scale) ** (1 / power);
    },
    (geometry, flow) => {
      const curve = leithLichtCurve(geometry, flow);
      return (diameter_m) => leithLichtGrade(diameter_m, curve);
    },
  ),
  'iozia-leith': row(
    {
      label: 'Iozia and Leith',
      source: 'Iozia and Leith, Aerosol Sci. Technol. 1989 and 1990',
      basis: 'from-memory',
    },
    (geometry, flow) => ioziaLeithCore(geometry, flow).cutSize_m,
    (geometry, flow) => {
      const core = ioziaLeithCore(geometry, flow);
      return (diameter_m) => ioziaLeithGrade(diameter_m, core);
    },
  ),
  barth: row(
    {
      label: 'Barth; curve by Dirgo and Leith',
      source: `Barth 1956; ${BARTH_GRADE_EXPONENT.source}`,
      basis: 'from-memory',
    },
    barthCutSize,
    (geometry, flow) => {
      const cutSize_m = barthCutSize(geometry, flow);
      return (diameter_m) => barthGrade(diameter_m, cutSize_m);
    },
  ),
};
