import { diameterAfter, isHose } from '../../document/route.ts';
import { effectivePieces } from '../../document/effective-pieces.ts';
import type { EffectivePiece } from '../../document/effective-pieces.ts';
import type { Things } from '../../document/route.ts';
import type { Run } from '../../document/schema-pieces.ts';

/** Something that is bought or made, as it stands in a run: hose and duct whole, bends of hose a part of it. */
export type Built =
  | {
      readonly kind: 'duct';
      readonly material: string;
      readonly diameter_m: number;
      readonly length_m: number;
    }
  | {
      readonly kind: 'hose';
      readonly material: string;
      readonly diameter_m: number;
      /** As it is laid, and pulled out full [m]. */
      readonly length_m: number;
      readonly stretched_m: number;
    }
  | {
      readonly kind: 'elbow';
      readonly material: string;
      readonly diameter_m: number;
      readonly style: string;
      readonly angle_rad: number;
      readonly radiusRatio: number | null;
    }
  | {
      readonly kind: 'reducer';
      readonly diameter_m: number;
      readonly to_m: number;
      readonly angle_rad: number | null;
    }
  | { readonly kind: 'gate'; readonly diameter_m: number; readonly id: string }
  | { readonly kind: 'other'; readonly diameter_m: number | null; readonly name: string };

/** A run as it is built, with the size at either end. */
export interface BuiltRun {
  readonly run: Run;
  readonly built: readonly Built[];
  readonly startDiameter_m: number | null;
  readonly endDiameter_m: number | null;
}

/** Reads the parts of a run off its pieces. */
export function buildOf(run: Run, things: Things): BuiltRun {
  let diameter = run.diameter?.si ?? null;
  let start: number | null = null;
  const built: Built[] = [];
  for (const piece of effectivePieces(run, things)) {
    const own = 'diameter' in piece && piece.diameter ? piece.diameter.si : diameter;
    start ??= own;
    const part = partOf(piece, own, run);
    if (part !== null) join(built, part);
    diameter = diameterAfter(piece, own);
  }
  return { run, built, startDiameter_m: start ?? diameter, endDiameter_m: diameter };
}

/** The part that a piece is; null for a straight of no length. */
function partOf(piece: EffectivePiece, diameter: number | null, run: Run): Built | null {
  const diameter_m = diameter ?? 0;
  const material = ('material' in piece ? piece.material : undefined) ?? run.material ?? 'own';
  switch (piece.kind) {
    case 'straight': {
      const length_m = piece.length.si;
      if (length_m <= 0) return null;
      if (!isHose(material)) return { kind: 'duct', material, diameter_m, length_m };
      const stretched_m = length_m / (1 - Math.min(piece.compression?.si ?? 0, 0.9));
      return { kind: 'hose', material, diameter_m, length_m, stretched_m };
    }
    case 'hose-bend': {
      const length_m = piece.radius.si * piece.angle.si;
      return { kind: 'hose', material, diameter_m, length_m, stretched_m: length_m };
    }
    case 'elbow':
      return {
        kind: 'elbow',
        material,
        diameter_m,
        style: piece.style,
        angle_rad: piece.angle.si,
        radiusRatio: piece.style === 'mitre' ? null : (piece.radiusRatio?.si ?? null),
      };
    case 'reducer':
      return { kind: 'reducer', diameter_m, to_m: piece.to.si, angle_rad: piece.angle?.si ?? null };
    case 'gate':
      return { kind: 'gate', diameter_m, id: piece.id };
    case 'bare':
      return { kind: 'duct', material, diameter_m: piece.diameter.si, length_m: piece.length.si };
    case 'given':
    case 'measured':
      return { kind: 'other', diameter_m: diameter, name: piece.name ?? piece.key };
  }
}

/** Adds a part; a hose goes on through its bends, and a duct through corners that turn by nothing. */
function join(built: Built[], part: Built): void {
  const last = built.at(-1);
  const same = (a: number, b: number) => Math.abs(a - b) < 1e-6;
  if (last?.kind === 'hose' && part.kind === 'hose') {
    if (last.material === part.material && same(last.diameter_m, part.diameter_m)) {
      const length_m = last.length_m + part.length_m;
      built[built.length - 1] = { ...last, length_m, stretched_m: last.stretched_m + part.stretched_m };
      return;
    }
  } else if (last?.kind === 'duct' && part.kind === 'duct') {
    if (last.material === part.material && same(last.diameter_m, part.diameter_m)) {
      built[built.length - 1] = { ...last, length_m: last.length_m + part.length_m };
      return;
    }
  }
  built.push(part);
}
