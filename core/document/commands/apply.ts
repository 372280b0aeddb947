import { shorten } from '../../quantities/quantity-error.ts';
import { checkShape } from '../shape.ts';
import type { ShopDocument } from '../schema.ts';
import { duplicate, paste } from './clip.ts';
import type { Command, CommandKind, CommandResult, Handler } from './command.ts';
import { Refused } from './command.ts';
import { insertCorner, moveCorner, removeCorner } from './corners.ts';
import { drawRun } from './draw-run.ts';
import { addFan, duplicateFan, removeFan } from './fans.ts';
import { addPiece, movePiece, removePiece } from './pieces.ts';
import { refuseTooMany } from './limits.ts';
import { layRun } from './lay-run.ts';
import { mirror } from './mirror.ts';
import { moveLeg } from './move-leg.ts';
import { align, move, place, turn } from './place.ts';
import { remove } from './remove.ts';
import { reverse } from './reverse.ts';
import {
  addRow,
  removeRow,
  setChoice,
  setDocument,
  setField,
  setRows,
  setUnderlay,
  setValues,
} from './set-field.ts';
import { addSetting, removeSetting, renameSetting, setGate, setSetting } from './settings.ts';

const HANDLERS: { readonly [K in CommandKind]: Handler<K> } = {
  place,
  move,
  turn,
  align,
  moveCorner,
  insertCorner,
  removeCorner,
  moveLeg,
  mirror,
  layRun,
  drawRun,
  reverse,
  setField,
  setChoice,
  addRow,
  removeRow,
  setRows,
  addFan,
  removeFan,
  duplicateFan,
  setValues,
  setDocument,
  setUnderlay,
  addSetting,
  renameSetting,
  removeSetting,
  setSetting,
  setGate,
  addPiece,
  movePiece,
  removePiece,
  remove,
  paste,
  duplicate,
};

/** Commands that change places only, many times a second; no shape can break by them. */
const PLACES_ONLY: ReadonlySet<CommandKind> = new Set<CommandKind>(['move', 'turn', 'align', 'moveCorner']);

/** Longest refusal [characters]: what was typed or pasted may be far longer. */
const LONGEST_REFUSAL = 1000;

/**
 * Carries a command out. The new document shares all that did not change; a document that could not be read again is
 * never given back. Where nothing can be done, the message names the field and what was typed, and the remedy says what
 * would do.
 */
export function applyCommand(document: ShopDocument, command: Command): CommandResult {
  try {
    const handler = HANDLERS[command.kind] as Handler<CommandKind>;
    const result = handler(document, command as never);
    if (!result.ok || result.document === document || PLACES_ONLY.has(command.kind)) return result;
    refuseTooMany(document, result.document);
    const [broken] = checkShape(result.document);
    return broken ? { ok: false, message: broken.message, remedy: broken.remedy } : result;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return { ok: false, message: shorten(error.message, LONGEST_REFUSAL), remedy: error.remedy };
  }
}
