import type { LossShare, PieceResult } from '../../../network/solution.ts';
import type { Basis } from '../../../quantities/sourced.ts';
import { BASIS_WORDS } from '../../basis-words.ts';

const KIND_WORDS: Readonly<Record<string, string>> = {
  hood: 'hood',
  port: 'machine port',
  leak: 'leak',
  exhaust: 'exhaust',
  pressure: 'given pressure',
  straight: 'straight duct',
  elbow: 'elbow',
  'hose-bend': 'hose bend',
  reducer: 'change of size',
  gate: 'gate',
  given: 'given loss',
  measured: 'measured loss',
  bare: 'length with losses',
  wye: 'wye',
  tee: 'tee',
  breeches: 'breeches',
  joint: 'joint',
  cyclone: 'cyclone',
  bin: 'drop-out bin',
  filter: 'filter',
  fan: 'fan',
};

/** What a kind of piece or device is called. */
export const kindWord = (kind: string): string => KIND_WORDS[kind] ?? kind;

/** What a piece is called; hose is told from rigid duct. */
export const pieceWord = (piece: Pick<PieceResult, 'kind' | 'share'>): string =>
  piece.kind === 'straight' && piece.share === 'hose' ? 'hose' : kindWord(piece.kind);

export const SHARE_WORDS: Readonly<Record<LossShare | 'other', string>> = {
  hood: 'hood',
  duct: 'straight duct',
  hose: 'hose',
  fittings: 'fittings',
  separator: 'separator',
  filter: 'filter',
  solids: 'dust carried',
  other: 'other fans and given pressures',
};

/** How sure a figure is, in words. */
export const basisWords = (basis: string | null): string =>
  basis === null
    ? 'follows from the sizes; no table stands behind it'
    : (BASIS_WORDS[basis as Basis] ?? basis);

/** First letter large. */
export const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
