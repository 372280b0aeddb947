import type { NodeResult, PieceResult, SettingResult } from '../../../network/solution.ts';
import type { AirPath } from './air-path.ts';
import { kindWord, pieceWord } from './words.ts';

/** One step of the staircase: a piece, a separator, a filter or a fan. */
export interface StairStep {
  /** Id of the piece or device. */
  readonly id: string;
  /** Id of the run, or of the device itself. */
  readonly stop: string;
  readonly kind: string;
  readonly word: string;
  /** Length along the path; 0 for what has none. */
  readonly length_m: number;
  readonly totalBefore_Pa: number;
  readonly totalAfter_Pa: number;
  readonly staticBefore_Pa: number;
  readonly staticAfter_Pa: number;
}

export interface StairStop {
  readonly id: string;
  readonly kind: 'run' | 'device' | 'fan';
  /** First step, and the one after the last. */
  readonly from: number;
  readonly to: number;
}

export interface Stair {
  readonly steps: readonly StairStep[];
  readonly stops: readonly StairStop[];
}

/** Total and static pressure along one way of the air, step by step in the order of flow. */
export function stairSteps(result: SettingResult, path: AirPath): Stair {
  const nodes = new Map(result.nodes.map((node) => [node.id, node]));
  const steps: StairStep[] = [];
  const stops: StairStop[] = [];
  const start = nodes.get(path.from);
  let total = start?.totalPressure_Pa ?? 0;
  let fixed = start?.staticPressure_Pa ?? total;
  const add = (step: Pick<StairStep, 'id' | 'stop' | 'kind' | 'word' | 'length_m'>, after: After) => {
    steps.push({
      ...step,
      totalBefore_Pa: total,
      totalAfter_Pa: after.total,
      staticBefore_Pa: fixed,
      staticAfter_Pa: after.fixed,
    });
    total = after.total;
    fixed = after.fixed;
  };
  for (const stop of path.stops) {
    const from = steps.length;
    let id: string;
    if (stop.kind === 'run') {
      const { run } = stop;
      id = run.id;
      for (const { piece, after } of inFlowOrder(run.pieces, run.massFlow_kgs < 0)) {
        const end = after?.totalPressureAfter_Pa ?? total - piece.loss_Pa;
        // past an outlet the air stands still, and its static pressure is its total
        const name = { id: piece.id, stop: id, kind: piece.kind, word: pieceWord(piece) };
        add(
          { ...name, length_m: piece.length_m ?? 0 },
          { total: end, fixed: after?.staticPressureAfter_Pa ?? end },
        );
      }
    } else {
      const device = stop.kind === 'fan' ? stop.fan : stop.device;
      const kind = stop.kind === 'fan' ? 'fan' : stop.device.kind;
      id = device.id;
      const change = stop.kind === 'fan' ? stop.fan.totalPressure_Pa : -stop.device.loss_Pa;
      const name = { id, stop: id, kind, word: kindWord(kind), length_m: 0 };
      add(name, nodeAfter(nodes.get(`${id}.out`), total + change));
    }
    if (steps.length > from) stops.push({ id, kind: stop.kind, from, to: steps.length });
  }
  return { steps, stops };
}

interface After {
  readonly total: number;
  readonly fixed: number;
}

const nodeAfter = (node: NodeResult | undefined, total: number): After => ({
  total: node?.totalPressure_Pa ?? total,
  fixed: node?.staticPressure_Pa ?? node?.totalPressure_Pa ?? total,
});

/** Pieces as the air meets them; each with the piece whose "after" is the pressure behind it. */
function inFlowOrder(pieces: readonly PieceResult[], reversed: boolean) {
  if (!reversed) return pieces.map((piece) => ({ piece, after: piece as PieceResult | null }));
  return pieces.map((piece, i) => ({ piece, after: pieces[i - 1] ?? null })).reverse();
}

/** The steps that lose most total pressure, the largest first. */
export function worstSteps(stair: Stair, count: number): StairStep[] {
  return stair.steps
    .filter((step) => step.kind !== 'fan' && dropOf(step) > 0)
    .sort((a, b) => dropOf(b) - dropOf(a))
    .slice(0, count);
}

/** What a step is called, with its id where that says more. */
export const stepTitle = ({ word, id }: Pick<StairStep, 'word' | 'id'>): string =>
  word === id ? word : `${word} ${id}`;

/** Total pressure that a step loses [Pa]; below zero for a rise. */
export const dropOf = (step: StairStep): number => step.totalBefore_Pa - step.totalAfter_Pa;
