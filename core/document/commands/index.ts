/** What the rest of the program uses of this folder. */
export { applyCommand } from './apply.ts';
export { copyParts, readClip, writeClip } from './clip.ts';
export type {
  AlongRef,
  Clip,
  Command,
  CommandKind,
  CommandOf,
  CommandRefusal,
  CommandResult,
  Edge,
  EndRef,
  FieldPath,
  FreeRef,
  PieceInput,
  PointRef,
  Target,
} from './command.ts';
export { blankDocument, PRESETS } from './defaults.ts';
export type { Preset } from './defaults.ts';
export { idFor } from './ids.ts';
export type { IdKind } from './ids.ts';
export { findDesign, findItem, itemTitle, thingsOf, titleOf } from './items.ts';
export type { Item } from './items.ts';
