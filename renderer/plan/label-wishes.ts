import type { Blocked, LabelSize, LabelWish } from '../../core/summary/figures/plan/label-layout.ts';
import { apart, planPoint } from '../geometry/space.ts';
import type { RunView } from '../../core/summary/figures/plan/run-view.ts';
import type { ThingView } from '../../core/summary/figures/plan/thing-view.ts';

/** Size of letters in labels [px]. */
export const LETTER_PX = 11;
export const LINE_PX = 14;
/** Mean width of a letter over its size, on the wide side so that no text is cut [-]. */
const LETTER_WIDTH = 0.6;
const PAD_PX = 5;
const MARK_PX = 13;
/** Boxes strung along a duct stand this far apart at least, and no leg has more than so many. */
const BOX_PX = 16;
const MOST_BOXES = 60;
/** Names longer than this are cut with a dot-dot-dot. */
const LONGEST_NAME = 20;

export const shortName = (name: string): string =>
  name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1).trimEnd()}…`;

const widthOf = (text: string): number => text.length * LETTER_PX * LETTER_WIDTH + 2 * PAD_PX;
const size = (lines: readonly string[], extra_px = 0) => ({
  width_px: Math.max(...lines.map(widthOf)) + extra_px,
  height_px: lines.length * LINE_PX + 4,
});

/** Texts of a run's label, the fullest first. */
export const runTexts = (figures: string, word: string): readonly string[] => [
  `${figures}  ${word}`,
  figures.replace(/ \/.*$/, ''),
  '',
];

/** Rings about a point on which a label may stand that is led to it by a line, the nearest first [px]. */
const RINGS_PX = [56, 84, 112, 148];
const ON_A_RING = 16;

/** Places off a point, for a label with a line to it. */
function ringPlaces(x: number, y: number): { x: number; y: number }[] {
  return RINGS_PX.flatMap((ring) =>
    Array.from({ length: ON_A_RING }, (_, i) => {
      const angle = (i / ON_A_RING) * 2 * Math.PI;
      // letters are wide: a ring is wider than high
      return { x: x + 1.4 * ring * Math.cos(angle), y: y + ring * Math.sin(angle) };
    }),
  );
}

/** Texts of a label that has to be read, with those that are led to their run by a line before the bare mark. */
export function ledTexts(texts: readonly string[]): {
  texts: readonly string[];
  leaders: readonly boolean[];
} {
  const said = texts.filter((text) => text !== '');
  const bare = texts.filter((text) => text === '');
  return {
    texts: [...said, ...said, ...bare],
    leaders: [...said.map(() => false), ...said.map(() => true), ...bare.map(() => false)],
  };
}

/** Places beside the legs of a run, on either side; off its longest leg where a line leads to it. */
export function runWish(
  view: RunView,
  texts: readonly string[],
  pixelsPerMetre: number,
  leaders: readonly boolean[] = [],
): LabelWish {
  const half = (view.diameter_m / 2) * pixelsPerMetre;
  const sizes = texts.map((text, i) => {
    const { width_px, height_px } =
      text === '' ? { width_px: MARK_PX + 4, height_px: LINE_PX + 2 } : size([text], MARK_PX);
    const [middle] = view.labelPlaces;
    if (leaders[i] === true && middle) {
      return {
        width_px,
        height_px,
        places: ringPlaces(middle.x * pixelsPerMetre, middle.y * pixelsPerMetre),
      };
    }
    const places = view.labelPlaces.flatMap(({ x, y, direction_rad }) => {
      const across = planPoint(Math.sin(direction_rad), -Math.cos(direction_rad));
      // a label beside a leg that goes up the paper must stand off by half its width
      const off = half + 4 + (Math.abs(across.y) * height_px) / 2 + (Math.abs(across.x) * width_px) / 2;
      const side = across.y > 0.01 ? -1 : 1;
      return [side, -side].map((s) => ({
        x: x * pixelsPerMetre + s * across.x * off,
        y: y * pixelsPerMetre + s * across.y * off,
      }));
    });
    return { width_px, height_px, places };
  });
  return { id: view.id, sizes };
}

/** Places round a box, below it first. */
function around(
  x: number,
  y: number,
  reachX: number,
  reachY: number,
  { width_px, height_px }: { width_px: number; height_px: number },
): LabelSize {
  const [dx, dy] = [reachX + width_px / 2 + 4, reachY + height_px / 2 + 4];
  const slide = width_px / 2;
  const places = [
    [0, dy],
    [0, -dy],
    [-dx, 0],
    [dx, 0],
    [-slide, dy],
    [slide, dy],
    [-slide, -dy],
    [slide, -dy],
  ] as const;
  return { width_px, height_px, places: places.map(([i, k]) => ({ x: x + i, y: y + k })) };
}

/** Places round a thing. */
export function thingWish(view: ThingView, lines: readonly (readonly string[])[], k: number): LabelWish {
  const { x, y, halfX, halfY } = view.box;
  return {
    id: view.id,
    sizes: lines.map((texts) => around(x * k, y * k, halfX * k, halfY * k, size(texts))),
  };
}

/** A short text beside a point. */
export function tagWish(
  id: string,
  point: { x: number; y: number },
  off_m: number,
  text: string,
  pixelsPerMetre: number,
): LabelWish {
  const off = off_m * pixelsPerMetre;
  return {
    id,
    sizes: [around(point.x * pixelsPerMetre, point.y * pixelsPerMetre, off, off, size([text]))],
  };
}

/** Ducts, as boxes strung along them, which labels avoid where they can. */
export function ductBoxes(runs: readonly RunView[], pixelsPerMetre: number): Blocked[] {
  const boxes: Blocked[] = [];
  for (const { line, diameter_m } of runs) {
    const wide = diameter_m * pixelsPerMetre;
    const step = Math.max(wide, BOX_PX);
    for (let i = 0; i + 1 < line.length; i++) {
      const [a, b] = [line[i]!, line[i + 1]!];
      const count = Math.min(Math.ceil((apart(a, b) * pixelsPerMetre) / step), MOST_BOXES);
      for (let k = 0; k < count; k++) {
        const share = (k + 0.5) / count;
        boxes.push({
          x: (a.x + (b.x - a.x) * share) * pixelsPerMetre,
          y: (a.y + (b.y - a.y) * share) * pixelsPerMetre,
          width_px: wide,
          height_px: wide,
        });
      }
    }
  }
  return boxes;
}

/** Symbols that labels keep clear of. */
export function blockedBy(
  things: readonly ThingView[],
  marks: readonly { x: number; y: number; diameter_m: number }[],
  pixelsPerMetre: number,
): Blocked[] {
  return [
    ...things.map(({ box }) => ({
      x: box.x * pixelsPerMetre,
      y: box.y * pixelsPerMetre,
      width_px: 2 * box.halfX * pixelsPerMetre,
      height_px: 2 * box.halfY * pixelsPerMetre,
    })),
    ...marks.map(({ x, y, diameter_m }) => ({
      x: x * pixelsPerMetre,
      y: y * pixelsPerMetre,
      width_px: diameter_m * pixelsPerMetre,
      height_px: 2 * diameter_m * pixelsPerMetre,
    })),
  ];
}
