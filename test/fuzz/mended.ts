import { ENDS } from '../../core/document/ends.ts';

interface Made {
  [field: string]: unknown;
  things?: { id: string; kind: keyof typeof ENDS; design?: string }[];
  runs?: {
    id: string;
    from: string;
    to: string;
    pieces: { id?: string; kind: string; along?: unknown }[];
    route?: unknown;
  }[];
  settings?: { name: string; gates: object }[];
  fans?: { id: string; readings: { id: string }[] }[];
  dusts?: { id: string }[];
}

/** A made-up document with its names put right: each once, ends that are there, one run at each end. */
export function mended(made: unknown): unknown {
  const shop = structuredClone(made) as Made;
  const things = shop.things ?? [];
  things.forEach((thing, i) => {
    thing.id = `t${i}`;
    delete thing.design;
  });
  const open = (side: 'from' | 'to') =>
    things.flatMap(({ id, kind }) => {
      if (side === 'to' ? kind === 'port' || kind === 'leak' : kind === 'exhaust') return [];
      const ends: readonly string[] = ENDS[kind].all;
      const fits = ends.filter((end) => (side === 'from' ? end !== 'in' : end !== 'out'));
      return fits.map((end) => (end === '' ? id : `${id}.${end}`));
    });
  const used = new Set<string>();
  const take = (side: 'from' | 'to') => {
    const end = open(side).find((name) => !used.has(name));
    if (end !== undefined) used.add(end);
    return end;
  };
  let pieces = 0;
  shop.runs = (shop.runs ?? []).flatMap((run, i) => {
    const [from, to] = [take('from'), take('to')];
    if (from === undefined || to === undefined) return [];
    for (const piece of run.pieces) {
      if (piece.id !== undefined) piece.id = `p${pieces++}`;
      delete piece.along;
    }
    return [{ ...run, id: `r${i}`, from, to }];
  });
  shop.settings = (shop.settings ?? []).map((setting, i) => ({ ...setting, name: `s${i}`, gates: {} }));
  (shop.fans ?? []).forEach((fan, i) => {
    fan.id = `f${i}`;
    fan.readings.forEach((reading, r) => (reading.id = `m${r}`));
  });
  (shop.dusts ?? []).forEach((dust, i) => (dust.id = `d${i}`));
  shop['values'] = [];
  shop['options'] = { compressible: false };
  return shop;
}
