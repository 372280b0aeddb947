import type * as z from 'zod';
import type { ShopDocument } from '../schema.ts';
import type { PIECE } from '../schema-pieces.ts';
import type { ThingKind } from '../schema-things.ts';
import type { UNDERLAY } from '../schema-route.ts';
import type { FanDesign } from '../schema-fans.ts';

/** A point of the plan [m]; without `z` the height is that of what it belongs to. */
export interface PointRef {
  readonly x: number;
  readonly y: number;
  readonly z?: number;
}
/** An end of a thing; without `end` the one that is free and fits. */
export interface EndRef {
  readonly thing: string;
  readonly end?: string;
}
/** A place on a run: share `at` of leg `leg`; of a run that is not drawn, of its piece `leg`. */
export interface AlongRef {
  readonly run: string;
  readonly leg: number;
  readonly at: number;
}
/** A new end where nothing is. */
export interface FreeRef {
  readonly free: 'port' | 'exhaust' | 'joint';
  readonly at: PointRef;
}
export type Target = EndRef | AlongRef | FreeRef;
/** Names and places from an item to one of its values. */
export type FieldPath = readonly (string | number)[];
export type Edge = 'left' | 'right' | 'top' | 'bottom' | 'centre-x' | 'centre-y';
/** Parts of a shop as a small document, so that the clipboard holds text that is read like any file. */
export type Clip = ShopDocument;
export type PieceInput = { readonly kind: 'gate' } | z.input<typeof PIECE>;

/** Every edit of a document. Ids name things, runs or pieces; an empty id means the document itself. Angles [rad]. */
export type Command =
  | { kind: 'place'; thing: ThingKind; at: PointRef; preset?: string }
  | { kind: 'move'; ids: readonly string[]; dx: number; dy: number; dz?: number }
  | { kind: 'turn'; id: string; angle_rad: number }
  | { kind: 'align'; ids: readonly string[]; edge: Edge }
  | { kind: 'moveCorner'; run: string; corner: number; at: PointRef }
  | { kind: 'insertCorner'; run: string; leg: number; at: PointRef }
  | { kind: 'removeCorner'; run: string; corner: number }
  /** One leg of a drawn run, with the corners at its ends [m]. */
  | { kind: 'moveLeg'; run: string; leg: number; dx: number; dy: number; dz?: number }
  | { kind: 'mirror'; id: string }
  /** Draws a run that was typed, straight from thing to thing. */
  | { kind: 'layRun'; run: string }
  | {
      kind: 'drawRun';
      from: Target;
      to: Target;
      corners: readonly PointRef[];
      /** Run whose size, material and bends the new one has. */
      like?: string;
      /** Angle at which it enters the run that it ends on. */
      angle_rad?: number;
    }
  | { kind: 'reverse'; run: string }
  | { kind: 'setField'; id: string; path: FieldPath; text: string | null }
  | { kind: 'setChoice'; id: string; path: FieldPath; value: string | boolean | number | null }
  | { kind: 'addRow'; id: string; path: FieldPath; row?: unknown }
  | { kind: 'removeRow'; id: string; path: FieldPath; index: number }
  | { kind: 'setRows'; id: string; path: FieldPath; rows: readonly unknown[] }
  | { kind: 'addFan'; type?: FanDesign['type'] }
  | { kind: 'removeFan'; id: string }
  | { kind: 'duplicateFan'; id: string }
  | { kind: 'setValues'; rows: readonly { readonly name: string; readonly text: string }[] }
  | { kind: 'setDocument'; path: FieldPath; value: string | boolean | number | null }
  | { kind: 'setUnderlay'; underlay: z.input<typeof UNDERLAY> | null }
  | { kind: 'addSetting'; setting: string; like?: string }
  | { kind: 'renameSetting'; setting: string; name: string }
  | { kind: 'removeSetting'; setting: string }
  | { kind: 'setSetting'; setting: string; gates: Readonly<Record<string, string | null>> }
  | { kind: 'setGate'; setting: string; gate: string; text: string | null }
  | { kind: 'addPiece'; run: string; leg: number; at: number; piece: PieceInput }
  | { kind: 'movePiece'; id: string; leg: number; at: number }
  | { kind: 'removePiece'; id: string }
  | { kind: 'remove'; ids: readonly string[] }
  | { kind: 'paste'; clip: Clip; at?: PointRef }
  | { kind: 'duplicate'; ids: readonly string[] };

export type CommandKind = Command['kind'];
export type CommandOf<K extends CommandKind> = Extract<Command, { kind: K }>;

/** A new document with what undo calls the step and the ids that were made, or why nothing was done. */
export type CommandResult =
  | {
      readonly ok: true;
      readonly document: ShopDocument;
      readonly label: string;
      readonly created?: readonly string[];
    }
  | CommandRefusal;

export interface CommandRefusal {
  readonly ok: false;
  readonly message: string;
  readonly remedy: string;
}

export type Handler<K extends CommandKind> = (document: ShopDocument, command: CommandOf<K>) => CommandResult;

/** Thrown by helpers of this folder where a command cannot be carried out; `applyCommand` turns it into a refusal. */
export class Refused extends Error {
  override readonly name = 'Refused';

  constructor(
    message: string,
    readonly remedy: string,
  ) {
    super(message);
  }
}

export function done(document: ShopDocument, label: string, created?: readonly string[]): CommandResult {
  return created === undefined ? { ok: true, document, label } : { ok: true, document, label, created };
}
