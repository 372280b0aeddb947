import type { ShopDocument } from '../document/schema.ts';
import type { FanBenchResult } from './result.ts';

export interface BenchOptions {
  /** Whole curves drawn for the band. */
  readonly samples?: number;
  readonly seed?: number;
}

/** What the fan bench says of one fan of the document. */
export function benchFan(document: ShopDocument, id: string, _options: BenchOptions = {}): FanBenchResult {
  const design = document.fans.find((fan) => fan.id === id);
  if (design === undefined) throw new RangeError(`no fan of the document is called "${id}"`);
  return {
    id,
    name: design.name ?? id,
    readings: [],
    curve: null,
    motor: null,
    rotor: null,
    findings: [],
  };
}
