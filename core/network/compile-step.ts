import { sizeChange, TAPERED_CONTRACTION_RANGE, TAPERED_EXPANSION_RANGE } from '../fittings/size-change.ts';
import { findOutside } from '../quantities/range.ts';
import type { Outside } from '../quantities/range.ts';
import { localSegment } from './net.ts';
import { PLAIN } from './piece-record.ts';
import { roundArea } from './round-area.ts';
import type { BuiltPiece } from './piece-record.ts';

/** A change of diameter, tapered or abrupt; against the run it narrows where it widened. */
export function stepBetween(
  before_m: number,
  after_m: number,
  angle_rad: number | null,
  kind: string,
): BuiltPiece {
  const along = sizeChange({
    upstreamDiameter_m: before_m,
    downstreamDiameter_m: after_m,
    includedAngle_rad: angle_rad,
  });
  const against = sizeChange({
    upstreamDiameter_m: after_m,
    downstreamDiameter_m: before_m,
    includedAngle_rad: angle_rad,
  });
  // both coefficients refer to the narrow side, whichever way the air goes
  const area_m2 = roundArea(Math.min(before_m, after_m));
  return {
    segments: [localSegment(area_m2, along.k, against.k, after_m > before_m ? 'upstream' : 'downstream')],
    record: {
      ...PLAIN,
      kind,
      share: 'fittings',
      area_m2,
      areaAfter_m2: roundArea(after_m),
      diameter_m: after_m,
      source: 'Rennels and Hudson, Pipe Flow, 2012, as quoted in an open library; Borda-Carnot',
      basis: 'published',
      outside: taperOutside(before_m, after_m, angle_rad),
      relation: 'loss of a taper',
    },
    diameterAfter_m: after_m,
  };
}

function taperOutside(before_m: number, after_m: number, angle_rad: number | null): Outside[] {
  if (angle_rad === null) return [];
  const range = after_m > before_m ? TAPERED_EXPANSION_RANGE : TAPERED_CONTRACTION_RANGE;
  return findOutside(range, { 'included angle': angle_rad });
}
