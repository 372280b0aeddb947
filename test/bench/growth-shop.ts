import { EXAMPLES } from '../../core/examples/index.ts';

type Json = Record<string, unknown>;

/** Bore of a branch [m], and what each takes of the fan [m3/h] at its best. */
const BRANCH_mm = 100;

/**
 * A whole shop with about so many runs as a file: gated branches of machines meet two by two in wyes until one main is left,
 * with cyclone, fan and filter behind it. Sizes grow with the number of branches, so that the air moves as it would in a shop.
 */
export function growthShop(runs: number): Json {
  const like = structuredClone(EXAMPLES['one-router']) as unknown as { things: Json[] } & Json;
  const of = (kind: string) => structuredClone(like.things.find((thing) => thing['kind'] === kind)!);
  const branches = Math.max(2, Math.round((runs - 3) / 2));
  const bore = (share: number) => `${Math.round(BRANCH_mm * Math.sqrt(share))} mm`;
  const elbow = { kind: 'elbow', style: 'smooth', angle: '90 deg', radiusRatio: 1.5 };
  const made: Json[] = [];
  const things: Json[] = [];
  const run = (from: string, to: string, share: number, pieces: Json[]) =>
    made.push({
      id: `R${made.length + 1}`,
      from,
      to,
      diameter: bore(share),
      material: 'galvanised-spiral',
      pieces,
    });
  const straight = (length_m: number) => ({ kind: 'straight', length: `${length_m} m` });

  let open = Array.from({ length: branches }, (_, i) => {
    things.push({ ...of('port'), id: `P${i}` });
    return { from: `P${i}`, share: 1, gate: i };
  }) as { from: string; share: number; gate: number | null }[];
  const reach = ({ gate }: (typeof open)[number], i: number): Json[] =>
    gate === null
      ? [straight(1.5)]
      : [straight(1 + (i % 5) / 4), { kind: 'gate', id: `G${gate}` }, elbow, straight(1)];
  while (open.length > 1) {
    const next: typeof open = [];
    for (let i = 0; i + 1 < open.length; i += 2) {
      const [main, branch] = [open[i]!, open[i + 1]!];
      const id = `W${things.length}`;
      things.push({ id, kind: 'wye', angle: '30 deg' });
      run(main.from, `${id}.main`, main.share, reach(main, i));
      run(branch.from, `${id}.branch`, branch.share, reach(branch, i + 1));
      next.push({ from: id, share: main.share + branch.share, gate: null });
    }
    if (open.length % 2 === 1) next.push(open.at(-1)!);
    open = next;
  }

  const cyclone: Json = {
    ...of('cyclone'),
    id: 'cyclone',
    bodyDiameter: `${3 * Math.round(BRANCH_mm * Math.sqrt(branches))} mm`,
  };
  const filter = of('filter') as { layers: Json[] } & Json;
  const fan = of('fan') as { curve: { points: { flow: unknown }[] } } & Json;
  const layers = filter.layers.map((layer) => ({ ...layer, area: `${2 * branches} m2` }));
  const points = fan.curve.points.map((point, i) => ({
    ...point,
    flow: `${i * 110 * branches} m3/h`,
    power: undefined,
  }));
  things.push(cyclone, { ...filter, id: 'filter', layers });
  things.push({
    ...fan,
    id: 'fan',
    design: undefined,
    outletDiameter: bore(branches),
    curve: { ...fan.curve, points },
  });
  things.push({ ...of('exhaust'), id: 'exhaust' });
  run(open[0]!.from, 'cyclone', branches, [straight(3)]);
  run('cyclone', 'fan', branches, [straight(1)]);
  run('fan', 'filter', branches, [straight(1)]);
  run('filter', 'exhaust', branches, []);
  for (const thing of things) delete thing['at'];
  return { ...like, name: `Growth, ${made.length} runs`, things, runs: made, settings: [], fans: undefined };
}
