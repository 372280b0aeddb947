/** One size of a label, with the centres to try, best first, in pixels of the plan at the scale on screen. */
export interface LabelSize {
  readonly width_px: number;
  readonly height_px: number;
  readonly places: readonly { readonly x: number; readonly y: number }[];
}

/** A label that wants a place; the size that says most stands first. */
export interface LabelWish {
  readonly id: string;
  readonly sizes: readonly LabelSize[];
}

/** Where a label stands, and which of its sizes it has. */
export interface LabelPlace {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** A rectangle that labels keep clear of [px]. */
export interface Blocked {
  readonly x: number;
  readonly y: number;
  readonly width_px: number;
  readonly height_px: number;
}

const CELL_PX = 80;
/** Free paper between two labels [px]. */
const CLEAR_PX = 3;

/** A rectangle over more cells than this each way is looked at by all: a duct may be drawn far too wide. */
const WIDE_CELLS = 30;

const isWide = ({ width_px, height_px }: Blocked): boolean =>
  !(Math.max(width_px, height_px) < WIDE_CELLS * CELL_PX);

const meet = (a: Blocked, b: Blocked): boolean =>
  Math.abs(a.x - b.x) < (a.width_px + b.width_px) / 2 + CLEAR_PX &&
  Math.abs(a.y - b.y) < (a.height_px + b.height_px) / 2 + CLEAR_PX;

/** Rectangles sorted into cells, so that each looks at its neighbours alone. */
class Taken {
  private readonly cells = new Map<string, Blocked[]>();
  private readonly wide: Blocked[] = [];

  private *keys(box: Blocked): Generator<string> {
    const from = (centre: number, size: number) => Math.floor((centre - size / 2 - CLEAR_PX) / CELL_PX);
    const to = (centre: number, size: number) => Math.floor((centre + size / 2 + CLEAR_PX) / CELL_PX);
    for (let i = from(box.x, box.width_px); i <= to(box.x, box.width_px); i++) {
      for (let k = from(box.y, box.height_px); k <= to(box.y, box.height_px); k++) yield `${i} ${k}`;
    }
  }

  add(box: Blocked): void {
    if (isWide(box)) {
      this.wide.push(box);
      return;
    }
    for (const key of this.keys(box)) {
      const cell = this.cells.get(key);
      if (cell) cell.push(box);
      else this.cells.set(key, [box]);
    }
  }

  meets(box: Blocked): boolean {
    if (this.wide.some((other) => meet(other, box))) return true;
    if (isWide(box)) return [...this.cells.values()].some((cell) => cell.some((other) => meet(other, box)));
    for (const key of this.keys(box)) {
      if (this.cells.get(key)?.some((other) => meet(other, box))) return true;
    }
    return false;
  }
}

/** Edges of the paper that labels should stay on [px]. */
export interface Paper {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const isOff = (paper: Paper, { x, y, width_px, height_px }: Blocked): boolean =>
  x - width_px / 2 < paper.left ||
  x + width_px / 2 > paper.right ||
  y - height_px / 2 < paper.top ||
  y + height_px / 2 > paper.bottom;

/**
 * Finds a place for each label so that none lies on another or on what is blocked, first come first served; a label for
 * which there is no room is left out. Labels keep clear of what is `avoided` and stay on the `paper` too, where they can.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  blocked: Iterable<Blocked>,
  avoided: Iterable<Blocked> = [],
  paper: Paper | null = null,
): Map<string, LabelPlace> {
  const taken = new Taken();
  for (const box of blocked) taken.add(box);
  const unwanted = new Taken();
  for (const box of avoided) unwanted.add(box);
  const placed = new Map<string, LabelPlace>();
  for (const wish of wishes) {
    const off = (box: Blocked) => paper !== null && isOff(paper, box);
    const found =
      firstFree(wish, (box) => off(box) || taken.meets(box) || unwanted.meets(box)) ??
      (paper && firstFree(wish, (box) => off(box) || taken.meets(box))) ??
      firstFree(wish, (box) => taken.meets(box) || unwanted.meets(box)) ??
      firstFree(wish, (box) => taken.meets(box));
    if (!found) continue;
    const { width_px, height_px } = wish.sizes[found.size]!;
    taken.add({ x: found.x, y: found.y, width_px, height_px });
    placed.set(wish.id, found);
  }
  return placed;
}

function firstFree({ sizes }: LabelWish, meets: (box: Blocked) => boolean): LabelPlace | null {
  for (let size = 0; size < sizes.length; size++) {
    const { width_px, height_px, places } = sizes[size]!;
    const free = places.find(({ x, y }) => !meets({ x, y, width_px, height_px }));
    if (free) return { x: free.x, y: free.y, size };
  }
  return null;
}
