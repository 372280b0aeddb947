import { ELBOW_TABLES } from '../catalogue/elbows.ts';
import { SLIDE_GATE } from '../catalogue/gates.ts';
import type { Piece, PieceKind, Run } from '../document/schema-pieces.ts';
import { FRICTION_RANGE } from '../duct/friction.ts';
import {
  compressedHoseFactor,
  COMPRESSED_HOSE_RANGE,
  HAWTHORNE_RANGE,
  HOSE_BEND_RANGE,
  hoseBendCoefficient,
} from '../duct/hose.ts';
import { elbowCoefficient, ELBOW_RANGES } from '../fittings/elbow.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { findOutside } from '../quantities/range.ts';
import type { Outside } from '../quantities/range.ts';
import { stepBetween } from './compile-step.ts';
import { frictionSegment, materialOf, relativeRoughnessOf } from './friction-segment.ts';
import { measuredSegment } from './measured-segment.ts';
import { ductSegments, localSegment } from './net.ts';
import { PLAIN } from './piece-record.ts';
import { roundArea } from './round-area.ts';
import type { BuiltPiece } from './piece-record.ts';

/** What a piece takes from the run that it stands in. */
export interface PieceContext {
  readonly run: Run;
  /** Inside diameter of the duct that arrives [m]. */
  readonly diameter_m: number;
}

/** Practice by which elbows of other angles than 90 degrees are scaled. */
export const ANGLE_RULE = 'ashrae';

type Builder<K extends PieceKind> = (piece: Extract<Piece, { kind: K }>, context: PieceContext) => BuiltPiece;

/** A bend gentler than the table keeps the table's last value, which is on the safe side and needs no word. */
const tighterOnly = (outside: Outside[]): Outside[] =>
  outside.filter((o) => o.quantity !== 'radius over diameter' || o.value < (o.bounds.low ?? 0));

/** One builder for each kind of piece. */
const BUILDERS: { readonly [K in PieceKind]: Builder<K> } = {
  straight: (piece, { run, diameter_m }) => {
    const material = materialOf(piece.material ?? run.material);
    const compression = piece.compression?.si ?? 0;
    if (compression > 0 && !material.flexible) {
      throw new ImpossibleInput('compression', compression, 'absent: only hose can be pushed together');
    }
    const factor = compression > 0 ? compressedHoseFactor(diameter_m, compression) : 1;
    const { segment, fixed } = frictionSegment(piece.length.si, diameter_m, material, factor);
    const outside = fixed
      ? findOutside(HAWTHORNE_RANGE, { 'pitch over diameter': material.corrugationPitch_m! / diameter_m })
      : findOutside(FRICTION_RANGE, { 'relative roughness': material.roughness_m / diameter_m });
    const hose =
      compression > 0 ? findOutside(COMPRESSED_HOSE_RANGE, { diameter: diameter_m, compression }) : [];
    return {
      segments: piece.length.si > 0 ? [segment] : [],
      record: {
        ...PLAIN,
        kind: 'straight',
        share: material.flexible ? 'hose' : 'duct',
        area_m2: segment.area_m2,
        areaAfter_m2: segment.area_m2,
        diameter_m,
        length_m: piece.length.si,
        carries: true,
        source: material.source,
        basis: material.basis,
        outside: [...outside, ...hose],
        relation: hose.length > 0 ? 'loss of compressed hose' : 'wall friction',
      },
      diameterAfter_m: diameter_m,
    };
  },
  elbow: (piece, { diameter_m }) => {
    const radiusRatio = piece.radiusRatio?.si ?? 1;
    const angle_rad = piece.angle.si;
    const { k } = elbowCoefficient({ style: piece.style, radiusRatio, angle_rad, angleRule: ANGLE_RULE });
    const area_m2 = roundArea(diameter_m);
    const table = piece.style === 'mitre' ? null : ELBOW_TABLES[piece.style];
    return {
      segments: [localSegment(area_m2, k)],
      record: {
        ...PLAIN,
        kind: 'elbow',
        share: 'fittings',
        area_m2,
        areaAfter_m2: area_m2,
        diameter_m,
        carries: true,
        source: table?.source ?? 'Rennels and Hudson, Pipe Flow, 2012, mitre bend',
        basis: table?.basis ?? 'from-memory',
        outside: tighterOnly(
          findOutside(ELBOW_RANGES[piece.style], {
            angle: angle_rad,
            ...(piece.style === 'mitre' ? {} : { 'radius over diameter': radiusRatio }),
          }),
        ),
        relation: 'elbow table',
      },
      diameterAfter_m: diameter_m,
    };
  },
  'hose-bend': (piece, { run, diameter_m }) => {
    const material = materialOf(piece.material ?? run.material);
    const angle_rad = piece.angle.si;
    const length_m = angle_rad * piece.radius.si;
    const { k } = hoseBendCoefficient({ bendRadius_m: piece.radius.si, diameter_m, angle_rad });
    const { segment } = frictionSegment(length_m, diameter_m, material);
    return {
      segments: [segment, localSegment(segment.area_m2, k)],
      record: {
        ...PLAIN,
        kind: 'hose-bend',
        share: 'hose',
        area_m2: segment.area_m2,
        areaAfter_m2: segment.area_m2,
        diameter_m,
        length_m,
        carries: true,
        source: 'rounded bend with the hose friction along its arc; no published value for small hose',
        basis: 'common-practice',
        outside: tighterOnly(
          findOutside(HOSE_BEND_RANGE, { 'radius over diameter': piece.radius.si / diameter_m }),
        ),
        relation: 'bend of hose',
      },
      diameterAfter_m: diameter_m,
    };
  },
  reducer: (piece, { diameter_m }) =>
    stepBetween(diameter_m, piece.to.si, piece.angle?.si ?? null, 'reducer'),
  gate: (_piece, { diameter_m }) => {
    const area_m2 = roundArea(diameter_m);
    return {
      // a setting writes the coefficient
      segments: [localSegment(area_m2, 0)],
      record: {
        ...PLAIN,
        kind: 'gate',
        share: 'fittings',
        area_m2,
        areaAfter_m2: area_m2,
        diameter_m,
        source: SLIDE_GATE.source,
        basis: SLIDE_GATE.basis,
      },
      diameterAfter_m: diameter_m,
    };
  },
  given: (piece, { diameter_m }) => {
    const area_m2 = roundArea(diameter_m);
    return {
      segments: [localSegment(area_m2, piece.coefficient.si)],
      record: {
        ...PLAIN,
        kind: 'given',
        share: 'fittings',
        area_m2,
        areaAfter_m2: area_m2,
        diameter_m,
        source: 'coefficient given in the document',
        basis: 'measured-by-user',
      },
      diameterAfter_m: diameter_m,
    };
  },
  measured: (piece, { diameter_m }) => {
    const area_m2 = roundArea(diameter_m);
    // loss grows with the square of flow, so the reading fixes a coefficient once the density is known
    return {
      segments: [measuredSegment(area_m2, piece.loss.si, piece.flow.si)],
      record: {
        ...PLAIN,
        kind: 'measured',
        share: 'fittings',
        area_m2,
        areaAfter_m2: area_m2,
        diameter_m,
        source: 'reading in the document',
        basis: 'measured-by-user',
      },
      diameterAfter_m: diameter_m,
    };
  },
  bare: (piece) => {
    const diameter_m = piece.diameter.si;
    const area_m2 = roundArea(diameter_m);
    const relativeRoughness = relativeRoughnessOf(piece.roughness.si, diameter_m);
    return {
      segments: ductSegments({
        length_m: piece.length.si,
        diameter_m,
        roughness_m: piece.roughness.si,
        coefficient: piece.coefficient.si,
      }),
      record: {
        ...PLAIN,
        kind: 'bare',
        share: 'duct',
        area_m2,
        areaAfter_m2: area_m2,
        diameter_m,
        length_m: piece.length.si,
        carries: true,
        source: 'length, roughness and coefficient given in the document',
        basis: 'measured-by-user',
        outside: findOutside(FRICTION_RANGE, { 'relative roughness': relativeRoughness }),
        relation: 'wall friction',
      },
      diameterAfter_m: diameter_m,
    };
  },
};

/** Turns one piece into segments. */
export function buildPiece(piece: Piece, context: PieceContext): BuiltPiece {
  const builder = BUILDERS[piece.kind] as Builder<PieceKind>;
  return builder(piece as never, context);
}

/** Inside diameter that a piece asks for, where it has one of its own [m]. */
export function ownDiameter(piece: Piece): number | null {
  return piece.kind === 'reducer' ? null : (piece.diameter?.si ?? null);
}
