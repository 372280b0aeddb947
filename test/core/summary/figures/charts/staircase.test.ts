import { describe, expect, it } from 'vitest';
import { airPaths } from '../../../../../core/summary/figures/charts/air-path.ts';
import { boldWidth } from '../../../../../core/summary/figures/charts/axes.ts';
import { dropOf, stairSteps, worstSteps } from '../../../../../core/summary/figures/charts/stair-steps.ts';
import { layStaircase } from '../../../../../core/summary/figures/charts/staircase.ts';
import type { StaircaseMarks } from '../../../../../core/summary/figures/charts/staircase.ts';
import { solvedExample } from '../solved-example.ts';

const nameOf = (id: string) => id;
const router = solvedExample('one-router', 'router');

describe('ways of the air', () => {
  it('go from the opening through everything to the outlet', () => {
    const [path, ...others] = airPaths(router);
    expect(others).toEqual([]);
    expect(
      path!.stops.map((s) => (s.kind === 'run' ? s.run.id : s.kind === 'fan' ? s.fan.id : s.device.id)),
    ).toEqual(['R1', 'cyclone', 'R2', 'fan', 'R3', 'filter', 'R4']);
  });

  it('put the one furthest from holding first, and leave out what is shut', () => {
    const open = airPaths(solvedExample('five-machines', 'all open'));
    expect(open[0]!.from).toBe('planer');
    const margins = open.map((p) => p.margin!);
    expect(margins).toEqual([...margins].sort((a, b) => a - b));
    expect(airPaths(solvedExample('five-machines', 'planer alone')).map((p) => p.from)).toEqual(['planer']);
  });

  it('lose the same from the room to the fan, whichever is taken', () => {
    const result = solvedExample('five-machines', 'all open');
    const before = airPaths(result).map((path) => {
      const { steps } = stairSteps(result, path);
      return steps.find((s) => s.kind === 'fan')!.totalBefore_Pa;
    });
    for (const total of before) expect(total).toBeCloseTo(before[0]!, 6);
  });
});

describe('steps of the staircase', () => {
  const stair = stairSteps(router, airPaths(router)[0]!);

  it('start and end at the pressure of the room, for the fan gives what the rest takes', () => {
    expect(stair.steps[0]!.totalBefore_Pa).toBe(0);
    expect(stair.steps.at(-1)!.totalAfter_Pa).toBeCloseTo(0, 6);
    expect(stair.steps.reduce((sum, s) => sum + dropOf(s), 0)).toBeCloseTo(0, 6);
  });

  it('hang together, and drop by what the ledger says is lost', () => {
    const pieces = new Map(router.runs.flatMap((run) => run.pieces.map((p) => [p.id, p] as const)));
    stair.steps.forEach((step, i) => {
      if (i > 0) expect(step.totalBefore_Pa).toBe(stair.steps[i - 1]!.totalAfter_Pa);
      const piece = pieces.get(step.id);
      if (piece) expect(dropOf(step)).toBeCloseTo(piece.loss_Pa, 4);
    });
    expect(stair.steps.filter((s) => dropOf(s) < 0).map((s) => s.kind)).toEqual(['fan']);
  });

  it('names the largest drops', () => {
    expect(worstSteps(stair, 4).map((s) => s.id)).toEqual(['router', 'cyclone', 'filter', 'R1.1']);
  });

  it('follow a run that air passes against its drawing', () => {
    const turned = {
      ...router,
      runs: router.runs.map((run) =>
        run.id === 'R2'
          ? {
              ...run,
              from: 'fan.in',
              to: 'cyclone.out',
              massFlow_kgs: -run.massFlow_kgs,
              flow_m3s: -run.flow_m3s,
              // drawn the other way round, "after" is what was before
              pieces: [...run.pieces].reverse().map((p, i, all) => {
                const next = all[i + 1];
                const node = router.nodes.find((n) => n.id === 'cyclone.out')!;
                return {
                  ...p,
                  totalPressureAfter_Pa: next ? next.totalPressureAfter_Pa : node.totalPressure_Pa,
                  staticPressureAfter_Pa: next ? next.staticPressureAfter_Pa : node.staticPressure_Pa,
                };
              }),
            }
          : run,
      ),
    };
    const steps = stairSteps(turned, airPaths(turned)[0]!).steps;
    expect(steps.map((s) => s.id)).toEqual(stair.steps.map((s) => s.id));
    steps.forEach((s, i) => expect(s.totalAfter_Pa).toBeCloseTo(stair.steps[i]!.totalAfter_Pa, 6));
  });
});

describe('picture of the staircase', () => {
  const stair = stairSteps(router, airPaths(router)[0]!);
  const lay = (width: number, height: number, foot: 'steps' | 'length' = 'steps') =>
    layStaircase(stair, { width, height, units: 'si', foot, nameOf });

  it('stays inside itself and lets no lettering meet, at every size', () => {
    for (const setting of ['planer alone', 'saw and sander', 'all open']) {
      const result = solvedExample('five-machines', setting);
      for (const path of airPaths(result)) {
        for (const [width, height] of [
          [420, 190],
          [836, 200],
          [1140, 320],
          [286, 160],
        ] as const) {
          for (const foot of ['steps', 'length'] as const) {
            const marks = layStaircase(stairSteps(result, path), {
              width,
              height,
              units: 'us',
              foot,
              nameOf,
            });
            insideAndApart(marks);
          }
        }
      }
    }
  });

  it('labels the largest drops and the rise of the fan', () => {
    expect(
      lay(1140, 320)
        .labels.map((l) => l.text)
        .sort(),
    ).toEqual(['Cyclone -882 Pa', 'Fan +2.80 kPa', 'Filter -204 Pa', 'Hood -1.05 kPa', 'Hose -174 Pa']);
  });

  it('takes the length of the way along its foot', () => {
    const marks = lay(900, 300, 'length');
    expect(marks.x!.unit).toBe('m');
    // R1: hose 2.4 and its right angle of radius 0.3 m; 2.7 m, a drop of 0.5 m and 0.4 m, less the hose's bend and both
    // sides of two elbows of radius 0.15 m. R2: 0.7 and 0.55 m about an elbow of radius 0.1875 m. R3 0.45 m, R4 0.15 m
    const r1 = 2.4 + 0.3 * (Math.PI / 2) + (2.7 + 0.5 + 0.4 - 0.3 - 4 * 0.15);
    const long = r1 + (0.7 + 0.55 - 2 * 0.1875) + 0.45 + 0.15;
    expect(marks.x!.scale(long)).toBeCloseTo(marks.plot.right, 6);
  });

  it('of the router at 600 by 260 is as reviewed', () => {
    const { total, static: still, bands, zero, sentence } = lay(600, 260);
    expect({
      total,
      still,
      zero: Math.round(zero),
      sentence,
      bands: bands.map((b) => b.text),
    }).toMatchSnapshot();
  });

  it('of no air is empty and says so', () => {
    const marks = layStaircase(
      { steps: [], stops: [] },
      { width: 600, height: 260, units: 'si', foot: 'length', nameOf },
    );
    expect(marks.total).toBe('');
    expect(marks.sentence).toBe('No air moves.');
  });
});

function insideAndApart(marks: StaircaseMarks) {
  expect(`${marks.total}${marks.static}`).not.toMatch(/NaN|Infinity/);
  const boxes = marks.labels.map((l) => ({
    left: l.x,
    right: l.x + boldWidth(l.text),
    top: l.y - 11,
    bottom: l.y,
  }));
  boxes.forEach((a, i) => {
    expect(a.left).toBeGreaterThanOrEqual(marks.plot.left);
    expect(a.right).toBeLessThanOrEqual(marks.plot.right + 1e-9);
    expect(a.top).toBeGreaterThanOrEqual(marks.plot.top);
    for (const b of boxes.slice(i + 1)) {
      expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
    }
  });
}
