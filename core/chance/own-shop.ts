import { MIXING_KINDS } from '../document/ends.ts';
import type { CompiledShop } from '../network/compile.ts';
import { FAN, localSegment } from '../network/net.ts';
import type { Element, FanDrive } from '../network/net.ts';
import { packNet } from '../network/packed.ts';
import { roundArea } from '../network/round-area.ts';

/** An end of a run at a place where streams mix, with the segment that may add to its loss. */
export interface JunctionEnd {
  /** Number of the run. */
  readonly run: number;
  readonly atStart: boolean;
  /** Index in the packed net. */
  readonly segment: number;
}

/** Fan element whose drive is exchanged from sample to sample. */
export interface OwnFan extends Omit<Element, 'fan'> {
  fan: FanDrive;
}

/** A shop of the chances' own, whose coefficients and fans may be changed without anybody seeing it. */
export interface OwnShop {
  readonly shop: CompiledShop;
  readonly junctionEnds: readonly JunctionEnd[];
  /** By element. */
  readonly fans: ReadonlyMap<number, OwnFan>;
}

/**
 * Copies a compiled shop, so that what the screen solves stays as it is. Streams that mix have no coefficient that
 * could be off; so each run gets a segment without loss for each of its ends at a junction, to put a loss in.
 */
export function ownShop(shop: CompiledShop): OwnShop {
  const { packed } = shop;
  const fans = new Map<number, OwnFan>();
  const elements: Element[] = packed.net.elements.map((element, e) => {
    if (element.kind !== FAN) return element;
    const { motor, ...drive } = element.fan!;
    const turning = motor === undefined ? {} : { motor: { ...motor, guess_rpm: motor.guess_rpm.slice() } };
    const own: OwnFan = { ...element, fan: { ...drive, ...turning } };
    fans.set(e, own);
    return own;
  });
  const added: { run: number; element: number; atStart: boolean; local: number }[] = [];
  shop.runs.forEach(({ element: e, from, to, startDiameter_m, endDiameter_m }, run) => {
    for (const atStart of [true, false]) {
      const diameter_m = atStart ? startDiameter_m : endDiameter_m;
      if (diameter_m === null || !MIXING_KINDS.has((atStart ? from : to).thing.kind)) continue;
      const { segments } = elements[e]!;
      added.push({ run, element: e, atStart, local: segments.length });
      elements[e] = { ...elements[e]!, segments: [...segments, localSegment(roundArea(diameter_m), 0)] };
    }
  });
  const own = packNet({ ...packed.net, elements });
  const gates = shop.gates.map((gate) => ({
    ...gate,
    segment: own.segmentStart[gate.element]! + gate.segment - packed.segmentStart[gate.element]!,
  }));
  return {
    shop: { ...shop, packed: own, gates },
    junctionEnds: added.map(({ run, element, atStart, local }) => ({
      run,
      atStart,
      segment: own.segmentStart[element]! + local,
    })),
    fans,
  };
}
