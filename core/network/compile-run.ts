import type { RunEnd } from '../document/ends.ts';
import { MIXING_KINDS } from '../document/ends.ts';
import { effectivePieces } from '../document/effective-pieces.ts';
import type { EffectivePiece } from '../document/effective-pieces.ts';
import type { Things } from '../document/route.ts';
import type { Run } from '../document/schema-pieces.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import { buildExhaust, buildHood, buildLeak } from './compile-ends.ts';
import { buildPiece, ownDiameter } from './compile-pieces.ts';
import { stepBetween } from './compile-step.ts';
import type { Segment } from './net.ts';
import type { BuiltPiece, PieceRecord } from './piece-record.ts';

/** A run turned into segments, with a record for each piece. */
export interface BuiltRun {
  readonly segments: readonly Segment[];
  readonly pieces: readonly PieceRecord[];
  /** Gates by segment within the run. */
  readonly gates: readonly { readonly id: string; readonly segment: number; readonly opening: number }[];
  /** Inside diameter at either end [m]; null where the run has no duct. */
  readonly startDiameter_m: number | null;
  readonly endDiameter_m: number | null;
}

/** Diameters closer than this are the same duct [m]. */
const SAME_DIAMETER = 1e-6;

/** Lays a run out in the order of flow: hood or leak, pieces with the steps between them, exhaust. */
export function buildRun(run: Run, from: RunEnd, to: RunEnd, things: Things): BuiltRun {
  const segments: Segment[] = [];
  const pieces: PieceRecord[] = [];
  const gates: { id: string; segment: number; opening: number }[] = [];
  const add = (id: string, built: BuiltPiece) => {
    pieces.push({ ...built.record, id, segments: built.segments.length });
    segments.push(...built.segments);
  };

  const laid = effectivePieces(run, things);
  const first = laid[0];
  const start = run.diameter?.si ?? (first ? ownDiameter(first) : null);
  const needed = from.thing.kind === 'port' || to.thing.kind === 'exhaust' || mixes(from) || mixes(to);
  if (start === null && (needed || laid.length > 0)) {
    throw new ImpossibleInput('diameter', 'not given', 'given for the run or for its first piece');
  }
  let diameter = start ?? 0;
  if (from.thing.kind === 'port') add(from.thing.id, buildHood(from.thing, diameter));
  if (from.thing.kind === 'leak') add(from.thing.id, buildLeak(from.thing));
  if (from.thing.kind === 'fan' && start !== null) {
    const outlet = from.thing.outletDiameter.si;
    if (Math.abs(outlet - start) > SAME_DIAMETER) {
      add(`${run.id}.outlet`, stepBetween(outlet, start, null, 'size-change'));
    }
  }

  laid.forEach((piece, i) => {
    const number = `${run.id}.${i + 1}`;
    try {
      const own = ownDiameter(piece);
      if (own !== null && Math.abs(own - diameter) > SAME_DIAMETER) {
        add(`${number}.step`, stepBetween(diameter, own, null, 'size-change'));
        diameter = own;
      }
      if (piece.kind === 'gate') {
        gates.push({ id: piece.id, segment: segments.length, opening: piece.opening?.si ?? 1 });
      }
      const built = buildPiece(piece, { run, diameter_m: diameter });
      add(piece.key, built);
      diameter = built.diameterAfter_m;
    } catch (error) {
      if (!(error instanceof ImpossibleInput)) throw error;
      throw new ImpossibleInput(`${fieldOf(piece)}.${error.field}`, error.value, error.rule);
    }
  });
  if (to.thing.kind === 'exhaust') add(to.thing.id, buildExhaust(to.thing, diameter));
  return {
    segments,
    pieces,
    gates,
    startDiameter_m: start,
    endDiameter_m: start === null ? null : diameter,
  };
}

const mixes = (end: RunEnd): boolean => MIXING_KINDS.has(end.thing.kind);

/** Where in the run the values of a piece stand: in its list, or in the drawing that it follows from. */
function fieldOf(piece: EffectivePiece): string {
  if (piece.source !== undefined) return `pieces[${piece.source}]`;
  return piece.corner === undefined ? `route.legs[${piece.leg ?? 0}]` : `route.corners[${piece.corner}]`;
}
