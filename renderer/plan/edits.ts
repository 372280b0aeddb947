import type { Command, Target } from '../../core/document/commands/command.ts';
import type { Point3 } from '../../core/document/route.ts';
import type { EndView } from '../../core/summary/figures/plan/thing-view.ts';

/** Where a drawn run starts or ends. */
export type RunEndPoint =
  | { readonly kind: 'end'; readonly thing: string; readonly end: string; readonly air: EndView['air'] }
  | { readonly kind: 'run'; readonly run: string; readonly leg: number; readonly at: number }
  | { readonly kind: 'free'; readonly at: Point3 };

export type Edit =
  { readonly ok: true; readonly command: Command } | { readonly ok: false; readonly message: string };

/** Angles at which wyes are sold, to choose from; common practice, no source [rad]. */
export const ENTRY_ANGLES_RAD: readonly number[] = [30, 45, 60, 90].map(
  (degrees) => (degrees * Math.PI) / 180,
);

/**
 * The command that draws a run. A run may be drawn from either end: it is turned so that it starts where air comes from.
 */
export function drawRun(
  start: RunEndPoint,
  end: RunEndPoint,
  corners: readonly Point3[],
  entry_rad: number,
): Edit {
  const backwards =
    (start.kind === 'end' && start.air === 'into') || (end.kind === 'end' && end.air === 'out of');
  const [from, to] = backwards ? [end, start] : [start, end];
  const way = backwards ? [...corners].reverse() : [...corners];
  if (from.kind === 'end' && from.air === 'into') {
    return { ok: false, message: 'air goes into both of these ends; end the run where air comes out' };
  }
  if (to.kind === 'end' && to.air === 'out of') {
    return { ok: false, message: 'air comes out of both of these ends; end the run where air goes in' };
  }
  if (from.kind === 'run') {
    return {
      ok: false,
      message: 'a branch leads to a run, not from it: start at a machine and end on the run',
    };
  }
  const command: Command = {
    kind: 'drawRun',
    from: targetOf(from),
    to: targetOf(to),
    corners: way,
    ...(to.kind === 'run' ? { angle_rad: entry_rad } : {}),
  };
  return { ok: true, command };
}

function targetOf(point: RunEndPoint): Target {
  if (point.kind === 'end') return { thing: point.thing, ...(point.end === '' ? {} : { end: point.end }) };
  if (point.kind === 'run') return { run: point.run, leg: point.leg, at: point.at };
  return { free: 'joint', at: point.at };
}
