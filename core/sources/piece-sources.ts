import { ANGLE_RULES, ELBOW_TABLES } from '../catalogue/elbows.ts';
import { SLIDE_GATE, SLIDE_GATE_OPEN } from '../catalogue/gates.ts';
import type { MaterialRow } from '../catalogue/materials.ts';
import type { EffectivePiece } from '../document/effective-pieces.ts';
import { effectivePieces } from '../document/effective-pieces.ts';
import { SLIDE_GATE_SHUT_BELOW, slideGateCoefficient } from '../fittings/gate.ts';
import { AS_DRAWN, findSetting, openings, settingNames } from '../network/apply-setting.ts';
import type { CompiledRun } from '../network/compile.ts';
import { ANGLE_RULE } from '../network/compile-pieces.ts';
import { materialOf } from '../network/friction-segment.ts';
import type { PieceRecord } from '../network/piece-record.ts';
import type { Basis } from '../quantities/sourced.ts';
import type { SourceContext } from './context.ts';
import { READ } from './source-list.ts';
import type { SourceList } from './source-list.ts';

/** A piece of a run as it was built, with the loss coefficient of its local loss; null where it has none. */
export interface BuiltPieceOf {
  readonly record: PieceRecord;
  readonly k: number | null;
}

/** Pieces of a run with the coefficient of the segment that each ends with. */
export function builtPieces(compiled: CompiledRun): BuiltPieceOf[] {
  let at = 0;
  return compiled.pieces.map((record) => {
    const segment = record.segments > 0 ? compiled.segments[at + record.segments - 1]! : null;
    at += record.segments;
    // friction comes as length over diameter
    return { record, k: segment === null || segment.diameter_m > 0 ? null : segment.forward };
  });
}

type Of<K extends EffectivePiece['kind']> = Extract<EffectivePiece, { kind: K }>;
type Teller<K extends EffectivePiece['kind']> = (
  piece: Of<K>,
  built: BuiltPieceOf,
  context: SourceContext,
  compiled: CompiledRun,
) => void;

/** What each kind of piece rests on. */
const TELLERS: { readonly [K in EffectivePiece['kind']]: Teller<K> } = {
  straight: (piece, _built, { list }, { run }) => {
    const where = [piece.key];
    friction(list, where, materialOf(piece.material ?? run.material));
    if ((piece.compression?.si ?? 0) > 0) {
      list.use(where, 'compressedHose');
      list.given(piece.compression, 'how far a hose is pushed together', 'compression', where);
    }
  },
  elbow: (piece, { k, record }, { list }) => {
    const where = [piece.key];
    const angle = { si: piece.angle.si, dimension: 'angle' } as const;
    const label = piece.style === 'mitre' ? 'mitre' : `elbow, ${ELBOW_TABLES[piece.style].label}`;
    list.use(where, piece.style === 'mitre' ? 'mitre' : 'elbow');
    coefficient(
      list,
      `${label}${piece.style === 'mitre' ? '' : `, R/D ${short(piece.radiusRatio?.si ?? NaN)}`}, ${list.print(angle)}`,
      k,
      record,
    );
    if (piece.style === 'mitre') return;
    const rule = ANGLE_RULES[ANGLE_RULE];
    list.add({ kind: 'model', what: `elbows of other angles: ${rule.label}`, ...sourced(rule) }, where);
  },
  'hose-bend': (piece, { k, record }, { list }, { run }) => {
    const where = [piece.key];
    friction(list, where, materialOf(piece.material ?? run.material));
    list.use(where, 'hoseBend');
    const ratio = short(piece.radius.si / (record.diameter_m ?? NaN));
    coefficient(
      list,
      `bend of hose, R/D ${ratio}, ${list.print({ si: piece.angle.si, dimension: 'angle' })}`,
      k,
      record,
    );
  },
  reducer: (piece, built, { list }) => step(list, built, piece.angle?.si ?? null),
  gate: (piece, _built, { shop, list }) => {
    const where = [piece.key];
    list.use(where, 'gate');
    for (const opening of openedTo(shop, piece.key)) {
      const row = opening === 1 ? SLIDE_GATE_OPEN : SLIDE_GATE;
      const how = opening === 1 ? 'fully open' : `${list.print({ si: opening, dimension: 'fraction' })} open`;
      list.add(
        {
          kind: 'coefficient',
          what: `slide gate, ${how}`,
          value: { si: slideGateCoefficient(opening).k, dimension: 'coefficient' },
          ...sourced(row),
        },
        where,
      );
    }
  },
  given: (piece, { record, k }, { list }) => typed(list, `loss coefficient${named(piece)}`, k, record),
  measured: (piece, _built, { list }) => {
    const loss = list.print({ si: piece.loss.si, dimension: 'pressure' });
    const flow = list.print({ si: piece.flow.si, dimension: 'flow' });
    list.use([piece.key], 'readLoss');
    list.add(
      { kind: 'reading', what: `loss of a piece${named(piece)}`, value: `${loss} at ${flow}`, ...READ },
      [piece.key],
    );
  },
  bare: (piece, { record }, { list }) => {
    const where = [piece.key];
    list.use(where, 'ductFriction', 'colebrook', 'slowFlow');
    list.given(piece.roughness, 'roughness of a length', 'roughness', where);
    typed(list, 'all local losses of a length', piece.coefficient.si, record);
  },
};

/** Pieces of a run and the steps between them; its ends are another part's. */
export function pieceSources(context: SourceContext, compiled: CompiledRun): void {
  const pieces = new Map(
    effectivePieces(compiled.run, context.shop.things).map((piece) => [piece.key, piece]),
  );
  for (const built of builtPieces(compiled)) {
    const piece = pieces.get(built.record.id);
    if (piece) (TELLERS[piece.kind] as Teller<EffectivePiece['kind']>)(piece, built, context, compiled);
    else if (built.record.kind === 'size-change') step(context.list, built, null);
  }
}

function friction(list: SourceList, where: readonly string[], material: MaterialRow): void {
  list.use(where, 'ductFriction');
  const row = { kind: 'catalogue', field: 'material', ...sourced(material) } as const;
  if (material.corrugationPitch_m !== undefined) {
    list.use(where, 'corrugated');
    const value = { si: material.corrugationPitch_m, dimension: 'length' } as const;
    list.add({ ...row, what: `pitch of ${material.label}`, value }, where);
    return;
  }
  list.use(where, 'colebrook', 'slowFlow');
  const value = { si: material.roughness_m, dimension: 'length' } as const;
  list.add({ ...row, what: `roughness of ${material.label}`, value }, where);
}

/** A change of size, tapered or in one step. */
function step(list: SourceList, { record, k }: BuiltPieceOf, angle_rad: number | null): void {
  const widens = (record.areaAfter_m2 ?? 0) > (record.area_m2 ?? 0) * (1 + 1e-9);
  const where = [record.id];
  if (angle_rad === null) list.use(where, widens ? 'suddenExpansion' : 'suddenContraction');
  else list.use(where, widens ? 'taperedExpansion' : 'taperedContraction');
  const how =
    angle_rad === null ? 'in one step' : `at ${list.print({ si: angle_rad, dimension: 'angle' })} in all`;
  const to = list.print({ si: record.diameter_m ?? NaN, dimension: 'length' });
  coefficient(list, `duct that ${widens ? 'widens' : 'narrows'} to ${to} ${how}`, k, record);
}

function coefficient(list: SourceList, what: string, k: number | null, record: PieceRecord): void {
  if (k === null || record.source === null) return;
  const { source } = record;
  const basis = (record.basis ?? 'assumed') as Basis;
  list.add({ kind: 'coefficient', what, value: { si: k, dimension: 'coefficient' }, source, basis }, [
    record.id,
  ]);
}

/** A coefficient that the document gives. */
function typed(list: SourceList, what: string, k: number | null, record: PieceRecord): void {
  const { source } = record;
  const value = { si: k ?? 0, dimension: 'coefficient' } as const;
  const row = { kind: 'reading', what, value, field: 'coefficient', basis: 'measured-by-user' } as const;
  list.add({ ...row, source: source ?? 'given in the document' }, [record.id]);
}

/** Openings that a gate has in the settings and that let air through, widest first. */
function openedTo(shop: SourceContext['shop'], id: string): number[] {
  const found = settingNames(shop.document).map((name) => {
    const setting = findSetting(shop.document, name) ?? { name: AS_DRAWN, gates: {} };
    return openings(shop, setting).get(id) ?? 1;
  });
  return [...new Set(found)].filter((opening) => opening >= SLIDE_GATE_SHUT_BELOW).sort((a, b) => b - a);
}

/** Source and basis of a row, without what else it holds. */
export const sourced = ({ source, basis }: { source: string; basis: Basis }) => ({ source, basis });

const named = ({ name }: { readonly name?: string | undefined }) => (name ? `: ${name}` : '');

const short = (value: number) => String(Number(value.toPrecision(3)));
