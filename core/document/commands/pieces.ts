import { isDrawn, measureRoute } from '../route.ts';
import type { DrawnRun } from '../route.ts';
import { namesOf, resolveWithin } from '../resolve.ts';
import { issueProblem } from '../issue-text.ts';
import { parseWhole } from '../parse-whole.ts';
import { quantityOf } from '../quantity-of.ts';
import { PIECE } from '../schema-pieces.ts';
import type { Piece, Run } from '../schema-pieces.ts';
import type { ShopDocument } from '../schema.ts';
import type { Handler, PieceInput } from './command.ts';
import { done, Refused } from './command.ts';
import { without } from './corners.ts';
import { isPieceKind, PIECE_STARTS } from './defaults.ts';
import { idFor } from './ids.ts';
import { itemTitle, needItem, needRun, replaceAt, thingsOf, titleOf, withRun } from './items.ts';
import { withoutPiece } from './remove.ts';
import type { DocumentProblem } from '../problem.ts';

function readPiece(document: ShopDocument, input: PieceInput): Piece {
  const kind = (input as { kind?: unknown } | null)?.kind;
  if (typeof kind !== 'string' || !isPieceKind(kind)) {
    throw new Refused(`piece: "${String(kind)}" is no kind of piece`, 'choose a kind of piece');
  }
  const raw = {
    ...PIECE_STARTS[kind],
    ...(kind === 'gate' ? { id: idFor(document, 'gate') } : {}),
    ...input,
  };
  const parsed = parseWhole(PIECE, raw);
  if (!parsed.ok) {
    const { message, remedy } =
      parsed.issues === null ? parsed.problems[0]! : issueProblem(parsed.issues[0]!, raw);
    throw new Refused(message, remedy);
  }
  const problems: DocumentProblem[] = [];
  const piece = resolveWithin(parsed.data, [], raw, namesOf(document, []), problems) as Piece;
  if (problems[0]) throw new Refused(problems[0].message, problems[0].remedy);
  return piece;
}

function alongOf(run: DrawnRun, leg: number, at: number): { leg: number; at: number } {
  const last = run.route.corners.length;
  if (!Number.isInteger(leg) || leg < 0 || leg > last) {
    throw new Refused(`${titleOf(run)} has no leg ${leg}`, 'choose a leg of the run');
  }
  if (!(at >= 0 && at <= 1)) throw new Refused(`at: ${at} is no share of a leg`, 'give 0 to 1');
  return { leg, at };
}

/** Puts a piece into a run that is typed piece by piece, cutting the straight that it stands in. */
function insertTyped(run: Run, leg: number, at: number, piece: Piece): Piece[] {
  if (!Number.isInteger(leg) || leg < 0 || leg > run.pieces.length || !(at >= 0 && at <= 1)) {
    throw new Refused(`${titleOf(run)} has no piece ${leg}`, 'choose a piece of the run');
  }
  const host = run.pieces[leg];
  if (host?.kind !== 'straight' || at === 0 || at === 1) {
    return run.pieces.toSpliced(at > 0.5 && host ? leg + 1 : leg, 0, piece);
  }
  const part = (share: number) => ({
    ...host,
    length: quantityOf('length', host.length.si * share, 'not-negative'),
  });
  return run.pieces.toSpliced(leg, 1, part(at), piece, without(part(1 - at), 'id') as Piece);
}

export const addPiece: Handler<'addPiece'> = (document, { run: id, leg, at, piece: input }) => {
  const { run, index } = needRun(document, id);
  const piece = readPiece(document, input);
  const pieces = isDrawn(run)
    ? [...run.pieces, { ...piece, along: alongOf(run, leg, at) }]
    : insertTyped(run, leg, at, piece);
  return done(
    withRun(document, index, { ...run, pieces }),
    `Add ${piece.kind} to ${titleOf(run)}`,
    piece.id === undefined ? [] : [piece.id],
  );
};

export const movePiece: Handler<'movePiece'> = (document, { id, leg, at }) => {
  const item = needItem(document, id);
  if (item.kind !== 'piece' || item.piece.source === undefined || !isDrawn(item.run)) {
    throw new Refused(
      `${itemTitle(item)} cannot be moved along a run`,
      'select a piece that was put on a drawn run',
    );
  }
  const { run, piece, index } = item;
  const moved = { ...run.pieces[piece.source!]!, along: alongOf(item.run, leg, at) } as Piece;
  const pieces = replaceAt(run.pieces, piece.source!, moved);
  return done(withRun(document, index, { ...run, pieces }), `Move ${itemTitle(item)}`);
};

export const removePiece: Handler<'removePiece'> = (document, { id }) => {
  const item = needItem(document, id);
  if (item.kind !== 'piece') throw new Refused(`${itemTitle(item)} is no piece of a run`, 'select a piece');
  return done(withoutPiece(document, item), `Remove ${itemTitle(item)}`);
};

/** Straight length of a whole run, as drawn or typed [m]. */
export function straightLength(run: Run, document: ShopDocument): number {
  const typed = run.pieces.reduce((sum, piece) => sum + (piece.kind === 'straight' ? piece.length.si : 0), 0);
  if (!isDrawn(run)) return typed;
  return measureRoute(run, thingsOf(document)).legs.reduce((sum, leg) => sum + leg.straight_m, typed);
}
