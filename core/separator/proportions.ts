import type { CycloneProportions } from '../catalogue/cyclones.ts';
import { ImpossibleInput, requireNotNegative, requirePositive } from '../quantities/impossible-input.ts';
import { findOutside } from '../quantities/range.ts';
import type { Outside, ValidRange } from '../quantities/range.ts';

/** Inside dimensions of a cyclone with a tangential slot inlet. */
export interface CycloneGeometry {
  /** `D`, body [m]. */
  readonly bodyDiameter_m: number;
  /** `a`, inlet along the axis [m]. */
  readonly inletHeight_m: number;
  /** `b`, inlet along the radius [m], less than the radius of the body. */
  readonly inletWidth_m: number;
  /** `De`, outlet pipe (vortex finder) [m]. */
  readonly outletDiameter_m: number;
  /** `S`, outlet pipe below the roof [m]. */
  readonly outletDepth_m: number;
  /** `h`, straight part of the body [m]. */
  readonly cylinderHeight_m: number;
  /** `H`, roof to dust outlet [m]. */
  readonly totalHeight_m: number;
  /** `B`, dust outlet at the tip of the cone [m]. */
  readonly dustOutletDiameter_m: number;
}

/**
 * Dimensions of a cyclone built to standard proportions.
 *
 * Every ratio of the row is multiplied by the body diameter.
 *
 * @param proportions - a row of CYCLONE_PROPORTIONS, ratios to `D` [-]
 * @param bodyDiameter_m - `D`, inside diameter of the straight part [m]
 * @returns all eight dimensions [m]
 * @throws ImpossibleInput naming `bodyDiameter_m`: not finite or not above zero
 *
 * @remarks
 * Range: none; any size above zero. Models built on it were fitted at 0.1 m and more.
 * Outside: not applicable.
 * Leaves out: wall thickness; all dimensions are inside.
 * Limits: every dimension grows in proportion to `D`.
 * Basis: published (five of the eight sets read as tabulated in an open library; each row tells).
 * Source: the rows of the table of proportions; Cooper and Alley, Air Pollution Control, Table 4.1.
 * Checked: test/reference/cyclone.test.ts.
 *
 * @example
 * ```ts
 * standardCyclone(CYCLONE_PROPORTIONS.lapple, 1).inletWidth_m; // 0.25
 * ```
 */
export function standardCyclone(proportions: CycloneProportions, bodyDiameter_m: number): CycloneGeometry {
  const D = requirePositive('bodyDiameter_m', bodyDiameter_m);
  return {
    bodyDiameter_m: D,
    inletHeight_m: proportions.inletHeight * D,
    inletWidth_m: proportions.inletWidth * D,
    outletDiameter_m: proportions.outletDiameter * D,
    outletDepth_m: proportions.outletDepth * D,
    cylinderHeight_m: proportions.cylinderHeight * D,
    totalHeight_m: proportions.totalHeight * D,
    dustOutletDiameter_m: proportions.dustOutletDiameter * D,
  };
}

/** Round-off that a geometry may carry from multiplying ratios, as a share of `D`. */
const SLACK = 1e-9;

/**
 * Refuses a cyclone that cannot be built.
 *
 * The outlet pipe must fit in the body and stop above the place where the cone gets as narrow as the pipe; the inlet
 * must stay on one side of the axis and fit in the straight part; the cone must have a length and not widen.
 *
 * @param geometry - dimensions [m]
 * @returns the same geometry
 * @throws ImpossibleInput naming the first dimension [m] that breaks one of these rules
 *
 * @remarks
 * Range: none; these are limits of what can exist, not of a model.
 * Outside: not applicable; it throws.
 * Leaves out: whether the shape is a good one: findPoorShape.
 * Limits: an inlet exactly as high as the straight part passes.
 * Basis: from-memory (geometry; no source needed).
 * Source: none, follows from the shape.
 * Checked: test/core/separator/proportions.test.ts.
 *
 * @example
 * ```ts
 * checkCycloneGeometry(standardCyclone(CYCLONE_PROPORTIONS.lapple, 0.2)).totalHeight_m; // 0.8
 * ```
 */
export function checkCycloneGeometry(geometry: CycloneGeometry): CycloneGeometry {
  for (const [field, value] of Object.entries(geometry)) requirePositive(field, value as number);
  const { bodyDiameter_m: D, outletDiameter_m: De, outletDepth_m: S, dustOutletDiameter_m: B } = geometry;
  const { inletHeight_m: a, inletWidth_m: b, cylinderHeight_m: h, totalHeight_m: H } = geometry;
  const slack = SLACK * D;
  if (De >= D) throw new ImpossibleInput('outletDiameter_m', De, `narrower than the body (${D})`);
  if (b >= D / 2)
    throw new ImpossibleInput('inletWidth_m', b, `narrower than the radius of the body (${D / 2})`);
  if (a > h + slack) throw new ImpossibleInput('inletHeight_m', a, `no higher than the straight part (${h})`);
  if (h >= H) throw new ImpossibleInput('cylinderHeight_m', h, `lower than the whole cyclone (${H})`);
  if (B > D + slack) throw new ImpossibleInput('dustOutletDiameter_m', B, `no wider than the body (${D})`);
  if (S >= H) throw new ImpossibleInput('outletDepth_m', S, `less deep than the body (${H})`);
  if (coneDiameter(geometry, S) <= De) {
    throw new ImpossibleInput(
      'outletDepth_m',
      S,
      'short enough that the outlet pipe stays clear of the cone',
    );
  }
  return geometry;
}

/** Shapes that can be built but let dust pass. The published high-throughput shapes break the first: they have a scroll. */
export const CYCLONE_SHAPE_RANGE: ValidRange = {
  'inlet width over gap round the outlet pipe': { high: 1, unit: '-' },
  'outlet pipe depth over inlet height': { low: 1, unit: '-' },
};

/**
 * Finds what makes a cyclone that can be built a poor one.
 *
 * An inlet wider than the gap `(D - De)/2` blows on the outlet pipe unless it winds round the body as a scroll; a pipe
 * that ends above the lower edge of the inlet lets dust cut straight across.
 *
 * @param geometry - dimensions [m]
 * @returns nothing, or each ratio [-] that lies outside
 * @throws ImpossibleInput as checkCycloneGeometry
 *
 * @remarks
 * Range: as data in CYCLONE_SHAPE_RANGE.
 * Outside: reported, not refused.
 * Leaves out: whether the inlet is a scroll, which the dimensions do not say.
 * Limits: the bounds themselves pass.
 * Basis: common-practice.
 * Source: common practice, no source; seen in the standard proportions, all but the two high-throughput ones.
 * Checked: test/reference/cyclone-limits.test.ts.
 *
 * @example
 * ```ts
 * findPoorShape(standardCyclone(CYCLONE_PROPORTIONS['stairmand-high-throughput'], 0.2)).length; // 1
 * ```
 */
export function findPoorShape(geometry: CycloneGeometry): Outside[] {
  const { bodyDiameter_m: D, outletDiameter_m: De, inletWidth_m: b } = checkCycloneGeometry(geometry);
  const inGap = (2 * b) / (D - De);
  const depth = geometry.outletDepth_m / geometry.inletHeight_m;
  return findOutside(CYCLONE_SHAPE_RANGE, {
    'inlet width over gap round the outlet pipe': inGap <= 1 + SLACK ? Math.min(1, inGap) : inGap,
    'outlet pipe depth over inlet height': depth >= 1 - SLACK ? Math.max(1, depth) : depth,
  });
}

/**
 * Inside diameter of the body at a depth below the roof.
 *
 * Constant `D` in the straight part, then falling in proportion to depth, to `B` at the dust outlet.
 *
 * @param geometry - dimensions [m]
 * @param depth_m - below the roof [m], within 0 and `H`
 * @returns the diameter there [m]
 * @throws none; it trusts a geometry that passed checkCycloneGeometry
 *
 * @remarks
 * Range: depths from 0 to `H`.
 * Outside: the cone is continued.
 * Leaves out: wall thickness.
 * Limits: `D` at the roof, `B` at the dust outlet.
 * Basis: from-memory (geometry; no source needed).
 * Source: none, follows from the shape.
 * Checked: test/core/separator/proportions.test.ts.
 *
 * @example
 * ```ts
 * coneDiameter(standardCyclone(CYCLONE_PROPORTIONS.lapple, 1), 3); // 0.625
 * ```
 */
export function coneDiameter(geometry: CycloneGeometry, depth_m: number): number {
  const { bodyDiameter_m: D, dustOutletDiameter_m: B, cylinderHeight_m: h, totalHeight_m: H } = geometry;
  return depth_m <= h ? D : D - ((D - B) * (depth_m - h)) / (H - h);
}

/**
 * Velocity in the inlet slot.
 *
 * `vi = Q/(a b)`.
 *
 * @param flow_m3s - `Q`, volume flow at the inlet [m3/s]
 * @param geometry - dimensions [m]
 * @returns `vi` [m/s]
 * @throws ImpossibleInput naming `flow_m3s` below zero, or an inlet dimension [m] not above zero
 *
 * @remarks
 * Range: none; a definition.
 * Outside: not applicable.
 * Leaves out: the profile in the slot.
 * Limits: no flow gives 0.
 * Basis: from-memory (continuity).
 * Source: none, follows from continuity.
 * Checked: test/reference/cyclone.test.ts (Cooper and Alley's example, 20 m/s).
 *
 * @example
 * ```ts
 * inletVelocity(2.5, standardCyclone(CYCLONE_PROPORTIONS.lapple, 1)); // 20
 * ```
 */
export function inletVelocity(flow_m3s: number, geometry: CycloneGeometry): number {
  requireNotNegative('flow_m3s', flow_m3s);
  const a = requirePositive('inletHeight_m', geometry.inletHeight_m);
  return flow_m3s / (a * requirePositive('inletWidth_m', geometry.inletWidth_m));
}
