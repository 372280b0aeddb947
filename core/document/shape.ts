import { DEVICE_KINDS, ENDS, findEnd, MIXING_KINDS } from './ends.ts';
import type { DocumentProblem } from './problem.ts';
import { pathText } from './problem.ts';
import type { ShopDocument } from './schema.ts';
import type { Run } from './schema-pieces.ts';
import type { Thing } from './schema-things.ts';

type Report = (path: (string | number)[], message: string, remedy: string) => void;

function reporter(document: ShopDocument, problems: DocumentProblem[]): Report {
  return (path, message, remedy) => {
    const text = pathText(document, path);
    problems.push({ path: text, message: text === '' ? message : `${text}: ${message}`, remedy });
  };
}

/**
 * What a shop still lacks before air can be followed through it: ends that no run is joined to, ends of a drawn run
 * without a place on the plan, nothing drawn at all. Such a shop can be opened and edited.
 */
export function findGaps(document: ShopDocument): DocumentProblem[] {
  const gaps: DocumentProblem[] = [];
  const gap = reporter(document, gaps);
  if (document.things.length === 0) {
    gap([], 'nothing is drawn yet', 'place a machine port, a fan and an exhaust, and draw runs between them');
  }
  const things = new Map(document.things.map((thing) => [thing.id, thing]));
  const used = new Set<string>();
  document.runs.forEach((run, r) => {
    for (const side of ['from', 'to'] as const) {
      const end = findEnd(things, run[side], side);
      if (typeof end === 'string') continue;
      used.add(`${end.thing.id}.${end.end}`);
      if (run.route !== undefined && end.thing.at === undefined) {
        gap(
          ['runs', r, side],
          `${end.thing.id} has no place on the plan`,
          'place it, so that the run can be measured',
        );
      }
    }
  });
  document.things.forEach((thing, i) => {
    for (const end of ENDS[thing.kind].all) {
      if (used.has(`${thing.id}.${end}`)) continue;
      const name = end === '' ? thing.id : `${thing.id}.${end}`;
      gap(['things', i], `no run is joined to ${name}`, 'draw a run to it, or remove it');
    }
  });
  return gaps;
}

/** What no edit mends by going on: names used twice, runs that end at nothing, two runs where one fits. */
export function checkShape(document: ShopDocument): DocumentProblem[] {
  const problems: DocumentProblem[] = [];
  const problem = reporter(document, problems);
  const things = new Map<string, Thing>();
  const seen = new Map<string, string>();
  const claim = (id: string, path: (string | number)[]) => {
    const first = seen.get(id);
    if (first !== undefined)
      problem(path, `the name "${id}" is taken by ${first}`, 'give it a name of its own');
    else seen.set(id, pathText(document, path));
  };
  document.things.forEach((thing, i) => {
    claim(thing.id, ['things', i]);
    things.set(thing.id, thing);
    if (thing.kind === 'fan') checkFanPoints(thing, ['things', i, 'curve', 'points'], problem);
  });
  document.fans.forEach((design, i) => {
    claim(design.id, ['fans', i]);
    const rows = new Set<string>();
    design.readings.forEach(({ id }, r) => {
      if (rows.has(id))
        problem(
          ['fans', i, 'readings', r],
          `the name "${id}" is taken by a reading above`,
          'give it its own',
        );
      rows.add(id);
    });
  });
  document.things.forEach((thing, i) => {
    if (thing.kind !== 'fan' || thing.design === undefined) return;
    if (document.fans.some(({ id }) => id === thing.design)) return;
    const path = ['things', i, 'design'];
    problem(path, `no fan is kept under the name "${thing.design}"`, 'name a fan of the list, or none');
  });
  const gates = new Set<string>();
  document.runs.forEach((run, r) => {
    claim(run.id, ['runs', r]);
    checkRoute(run, ['runs', r], problem);
    run.pieces.forEach((piece, p) => {
      if (piece.id !== undefined) claim(piece.id, ['runs', r, 'pieces', p]);
      if (piece.kind === 'gate') gates.add(piece.id);
      if (piece.kind === 'elbow' && piece.style !== 'mitre' && piece.radiusRatio === undefined) {
        const path = ['runs', r, 'pieces', p, 'radiusRatio'];
        problem(path, 'is missing', 'give the centre-line radius over the diameter, such as 1.5');
      }
    });
  });

  const used = new Map<string, { from: number; to: number }>();
  document.runs.forEach((run, r) => {
    for (const side of ['from', 'to'] as const) {
      const end = findEnd(things, run[side], side);
      if (typeof end === 'string') {
        problem(['runs', r, side], end, 'name a thing of this shop, or draw what is missing');
        continue;
      }
      const kind = end.thing.kind;
      if (side === 'to' && (kind === 'port' || kind === 'leak')) {
        problem(
          ['runs', r, 'to'],
          `air comes in at a ${kind}`,
          'turn the run round, so that it starts there',
        );
      }
      if (side === 'from' && kind === 'exhaust') {
        problem(['runs', r, 'from'], 'air leaves at an exhaust', 'turn the run round, so that it ends there');
      }
      const key = `${end.thing.id}.${end.end}`;
      const count = used.get(key) ?? { from: 0, to: 0 };
      count[side]++;
      used.set(key, count);
    }
  });
  document.things.forEach((thing, i) => {
    for (const end of ENDS[thing.kind].all) {
      const count = used.get(`${thing.id}.${end}`) ?? { from: 0, to: 0 };
      const total = count.from + count.to;
      const name = end === '' ? thing.id : `${thing.id}.${end}`;
      const single =
        MIXING_KINDS.has(thing.kind) || (!DEVICE_KINDS.has(thing.kind) && thing.kind !== 'joint');
      if (single && thing.kind !== 'pressure' && total > 1) {
        problem(
          ['things', i],
          `${total} runs are joined to ${name}`,
          'join one run; put a wye or joint between',
        );
      }
    }
  });

  const names = new Set<string>();
  document.settings.forEach((setting, s) => {
    if (names.has(setting.name)) {
      problem(['settings', s, 'name'], `two settings are named "${setting.name}"`, 'rename one of them');
    }
    names.add(setting.name);
    for (const gate of Object.keys(setting.gates)) {
      if (!gates.has(gate))
        problem(['settings', s, 'gates', gate], 'no gate has this name', 'name a gate of a run');
    }
  });
  const dusts = new Set<string>();
  document.dusts.forEach((dust, d) => {
    if (dusts.has(dust.id)) problem(['dusts', d], `two dusts are named "${dust.id}"`, 'rename one of them');
    dusts.add(dust.id);
  });
  if (document.air.kind === 'given' && document.options.compressible) {
    problem(
      ['options', 'compressible'],
      'air given by its density cannot change it along the way',
      'set compressible to false, or give temperature, humidity and altitude',
    );
  }
  return problems;
}

function checkFanPoints(
  fan: Extract<Thing, { kind: 'fan' }>,
  path: (string | number)[],
  problem: Report,
): void {
  const points = fan.curve.points;
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before !== undefined && point.flow.si <= before.flow.si) {
      problem(
        [...path, i, 'flow'],
        'must be above the flow of the point before it',
        'order the points by flow',
      );
    }
  });
  for (const field of ['power', 'current'] as const) {
    const given = points.filter((point) => point[field] !== undefined).length;
    if (given === 1) {
      problem(
        [...path],
        `only one point has a ${field}`,
        `give the ${field} of two points or more, or of none`,
      );
    }
  }
}

function checkRoute(run: Run, path: (string | number)[], problem: Report): void {
  if (run.route === undefined) return;
  const count = run.route.corners.length + 1;
  const legs = run.route.legs?.length ?? 0;
  if (legs > count) {
    problem(
      [...path, 'route', 'legs'],
      `${legs} legs, but the drawing has ${count}`,
      'remove what is too many',
    );
  }
  run.pieces.forEach((piece, p) => {
    const leg = piece.along?.leg ?? 0;
    if (leg < count) return;
    problem([...path, 'pieces', p, 'along', 'leg'], `there is no leg ${leg}`, `give 0 to ${count - 1}`);
  });
}
