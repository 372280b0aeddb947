import { keptRoute } from './kept-route.ts';
import { quantityOf } from './quantity-of.ts';
import { diameterAfter, handPieces, isDrawn, isHose } from './route.ts';
import type { BendMeasure, DrawnRun, LegMeasure, Things } from './route.ts';
import type { Piece, Run } from './schema-pieces.ts';
import type { Leg } from './schema-route.ts';

/** A piece in the order of flow, with where it comes from. */
export type EffectivePiece = Piece & {
  /** How results, findings and the selection call it: its own id, or `R3.2` for the second piece of R3. */
  readonly key: string;
  /** It follows from the drawing. */
  readonly derived: boolean;
  /** A typed value stands in place of what the drawing gives. */
  readonly overridden: boolean;
  /** Leg that it lies on. */
  readonly leg?: number;
  /** Corner that it turns at. */
  readonly corner?: number;
  /** Place in `run.pieces`, for a piece placed by hand. */
  readonly source?: number;
  /** Share of the leg where it starts and where it ends, bends left out. */
  readonly span?: readonly [start: number, end: number];
  /** The legs leave no room for the radius wanted; the piece has what fits. */
  readonly tight?: boolean;
};

/** Full included angle of a reducer that a change of size in the drawing gets; common practice, no source [rad]. */
export const DRAWN_REDUCER_RAD = Math.PI / 6;

/** Diameters closer than this are the same duct [m]. */
const SAME_DIAMETER_M = 1e-6;

type Extra = Omit<EffectivePiece, keyof Piece | 'key' | 'kind'>;
type Draft = Piece & Extra;

/** Pieces of a run as the air meets them: those of the drawing and those placed by hand; as typed where nothing is drawn. */
export function effectivePieces(run: Run, things: Things): EffectivePiece[] {
  const drafts = isDrawn(run)
    ? drawnPieces(run, things)
    : run.pieces.map((piece, source): Draft => ({ ...piece, derived: false, overridden: false, source }));
  return drafts.map((draft, i) => ({ ...draft, key: draft.id ?? `${run.id}.${i + 1}` }) as EffectivePiece);
}

function drawnPieces(run: DrawnRun, things: Things): Draft[] {
  const measure = keptRoute(run, things);
  const bends = new Map(measure.bends.map((bend) => [bend.corner, bend]));
  const drafts: Draft[] = [];
  let diameter = run.diameter?.si ?? null;
  for (const leg of measure.legs) {
    const bend = bends.get(leg.leg - 1);
    if (bend) drafts.push(bendPiece(run, bend, diameter));
    const typed = run.route.legs?.[leg.leg];
    const asked = typed?.diameter?.si;
    if (asked !== undefined && diameter !== null && Math.abs(asked - diameter) > SAME_DIAMETER_M) {
      drafts.push(reducer(asked, leg.leg));
    }
    diameter = asked ?? diameter;
    const first = drafts.length;
    diameter = layLeg(run, leg, typed, diameter, drafts);
    // the first duct of a run without a size of its own gives it
    if (run.diameter === undefined && typed?.diameter && first < drafts.length) {
      drafts[first] = { ...drafts[first]!, diameter: typed.diameter } as Draft;
    }
  }
  return drafts;
}

/** Straights of one leg with the pieces placed by hand between them; returns the diameter at its end. */
function layLeg(
  run: DrawnRun,
  leg: LegMeasure,
  typed: Leg | undefined,
  diameter_m: number | null,
  drafts: Draft[],
): number | null {
  let diameter = diameter_m;
  const overridden =
    typed?.length !== undefined || typed?.material !== undefined || typed?.compression !== undefined;
  const { length_m, before_m, drawn_m } = leg;
  const low = length_m > 0 ? before_m / length_m : 0;
  const high = length_m > 0 ? (before_m + drawn_m) / length_m : 1;
  const straight = (from: number, to: number) => {
    // pieces share out the straight length in use as they share out the drawn one
    const share = high > low ? (to - from) / (high - low) : 1;
    const length = leg.straight_m * share;
    if (length <= 0) return;
    const whole = from === low && to === high;
    drafts.push({
      kind: 'straight',
      length: whole && typed?.length ? typed.length : quantityOf('length', length, 'not-negative'),
      ...(typed?.material === undefined ? {} : { material: typed.material }),
      ...(typed?.compression === undefined ? {} : { compression: typed.compression }),
      derived: true,
      overridden,
      leg: leg.leg,
      span: [from, to],
    });
  };
  let at = low;
  const placed = handPieces(run, leg.leg);
  placed.forEach(({ piece, index, at: wanted }) => {
    const next = Math.min(Math.max(wanted, at), high);
    if (next > at) straight(at, next);
    at = next;
    drafts.push({ ...piece, derived: false, overridden: false, leg: leg.leg, source: index, span: [at, at] });
    diameter = diameterAfter(piece, diameter);
  });
  if (high > at || (high === low && leg.straight_m > 0)) straight(at, high);
  return diameter;
}

function reducer(to_m: number, leg: number): Draft {
  return {
    kind: 'reducer',
    to: quantityOf('length', to_m),
    angle: quantityOf('angle', DRAWN_REDUCER_RAD),
    derived: true,
    overridden: false,
    leg,
  };
}

function bendPiece(run: DrawnRun, bend: BendMeasure, diameter_m: number | null): Draft {
  const corner = run.route.corners[bend.corner]!;
  const material = run.route.legs?.[bend.leg]?.material;
  const common = {
    angle: corner.angle ?? quantityOf('angle', bend.drawn_rad),
    derived: true,
    overridden: corner.angle !== undefined || corner.style !== undefined || corner.radiusRatio !== undefined,
    corner: bend.corner,
    ...(bend.tight ? { tight: true } : {}),
  };
  if (isHose(material ?? run.material) && bend.radius_m > 0) {
    return {
      kind: 'hose-bend',
      radius: quantityOf('length', bend.radius_m),
      ...(material === undefined ? {} : { material }),
      ...common,
    };
  }
  const ratio = bend.tight && diameter_m ? quantityOf('coefficient', bend.radius_m / diameter_m) : null;
  return {
    kind: 'elbow',
    style: bend.style,
    radiusRatio: ratio ?? corner.radiusRatio ?? run.route.bend.radiusRatio,
    ...common,
  };
}
