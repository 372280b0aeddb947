import type { SettingResult } from '../../network/solution.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { el } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { airPaths } from './charts/air-path.ts';
import { stairSteps } from './charts/stair-steps.ts';
import { layStaircase } from './charts/staircase.ts';
import {
  axesOf,
  FAINT,
  INK,
  labelled,
  legend,
  letters,
  lineSample,
  picture,
  straight,
  stroked,
} from './paper.ts';

export interface StaircaseInput {
  readonly width: number;
  readonly height: number;
  readonly units: UnitSystem;
  readonly nameOf: (id: string) => string;
}

const TOTAL = { width: 2 } as const;
const STATIC = { width: 1.4, dash: '5 3' } as const;
const ROOM = { width: 1.2, dash: '1 3' } as const;
const LEGEND_HEIGHT = 20;

/**
 * Total and static pressure along the way of the air that is furthest from holding: total a thick line, static a dashed
 * one, the room dotted. Null where no air moves.
 */
export function staircaseFigure(
  result: SettingResult,
  input: StaircaseInput,
): { readonly figure: Markup; readonly sentence: string; readonly from: string } | null {
  const path = airPaths(result)[0];
  if (path === undefined) return null;
  const { width, height, units, nameOf } = input;
  const marks = layStaircase(stairSteps(result, path), {
    width,
    height: height - LEGEND_HEIGHT,
    units,
    foot: 'steps',
    nameOf,
  });
  const { plot } = marks;
  const key = legend(
    [
      { sample: lineSample(TOTAL), text: 'total pressure' },
      { sample: lineSample(STATIC), text: 'static pressure' },
      { sample: lineSample(ROOM), text: 'the room' },
    ],
    plot.left,
    4,
    plot.right,
  );
  const figure = picture(
    { width, height },
    marks.sentence,
    key.markup,
    el(
      'g',
      { transform: `translate(0 ${LEGEND_HEIGHT})` },
      marks.bands.map(({ x }, i) =>
        i === 0 ? null : straight(x, plot.top, x, plot.bottom + 16, { width: 0.6, ink: FAINT }),
      ),
      axesOf(plot, { x: null, y: marks.y, xTitle: marks.xTitle, yTitle: marks.yTitle }),
      marks.bands.map(({ x, width: wide, text }) =>
        letters(x + wide / 2, plot.bottom + 13, text, { anchor: 'middle' }),
      ),
      straight(plot.left, marks.zero, plot.right, marks.zero, ROOM),
      stroked(marks.static, { ...STATIC, ink: INK }),
      stroked(marks.total, { ...TOTAL, ink: INK }),
      labelled(marks.labels),
    ),
  );
  return { figure, sentence: marks.sentence, from: path.from };
}
