import type { CycloneGeometry } from '../../separator/proportions.ts';
import type { UnitSystem } from '../../quantities/dimensions.ts';
import { printQuantity } from '../../quantities/print.ts';
import { el } from '../markup.ts';
import type { Markup } from '../markup.ts';
import { FAINT, INK, letters, PAPER, picture, straight, stroked } from './paper.ts';

/** Letters of the drawing: what they stand for, and the field. */
export const CYCLONE_LETTERS = [
  { letter: 'D', words: 'body, inside diameter', field: 'bodyDiameter_m' },
  { letter: 'a', words: 'inlet, height', field: 'inletHeight_m' },
  { letter: 'b', words: 'inlet, width', field: 'inletWidth_m' },
  { letter: 'De', words: 'outlet pipe, inside diameter', field: 'outletDiameter_m' },
  { letter: 'S', words: 'outlet pipe, depth below the roof', field: 'outletDepth_m' },
  { letter: 'h', words: 'straight part, height', field: 'cylinderHeight_m' },
  { letter: 'H', words: 'roof to dust outlet', field: 'totalHeight_m' },
  { letter: 'B', words: 'dust outlet, diameter', field: 'dustOutletDiameter_m' },
] as const satisfies readonly {
  readonly letter: string;
  readonly words: string;
  readonly field: keyof CycloneGeometry;
}[];

/** Room about the two views for the measures [px]. */
const ROOM = { left: 92, right: 204, top: 34, bottom: 40, between: 86 } as const;
/** How far pipes are drawn beyond the body, of its diameter [-]. */
const PIPE = { inlet: 0.35, outlet: 0.22, dust: 0.1 } as const;

/** The separator from the front and from above with its dimensions, both in one proportion. */
export function cycloneFigure(
  geometry: CycloneGeometry,
  { width, height, units, name }: { width: number; height: number; units: UnitSystem; name: string },
): Markup {
  const D = geometry.bodyDiameter_m;
  const wide = D * (2 + 2 * PIPE.inlet);
  const high = geometry.totalHeight_m + D * (PIPE.outlet + PIPE.dust);
  const scale = Math.min(
    (width - ROOM.left - ROOM.right - ROOM.between - 12) / wide,
    (height - ROOM.top - ROOM.bottom) / high,
  );
  const all = {
    px: (metres: number) => metres * scale,
    print: (m: number) => printQuantity(m, 'length', units),
  };
  const front = {
    x: ROOM.left + all.px(D * PIPE.inlet),
    y: ROOM.top + all.px(D * PIPE.outlet),
  };
  const above = {
    x: front.x + all.px(D) + ROOM.right + ROOM.between + all.px(D * PIPE.inlet),
    y: ROOM.top + 26,
  };
  const says = `${name} from the front and from above, with its dimensions.`;
  return picture(
    { width, height },
    says,
    frontView(geometry, front, all),
    topView(geometry, above, all),
    letters(front.x + all.px(D) / 2, 14, 'front', { anchor: 'middle', bold: true }),
    letters(above.x + all.px(D) / 2, 14, 'from above', { anchor: 'middle', bold: true }),
  );
}

interface Place {
  readonly x: number;
  readonly y: number;
}
interface Tools {
  readonly px: (metres: number) => number;
  readonly print: (metres: number) => string;
}

function frontView(g: CycloneGeometry, { x, y }: Place, { px, print }: Tools): Markup {
  const D = px(g.bodyDiameter_m);
  const axis = x + D / 2;
  const B = px(g.dustOutletDiameter_m);
  const De = px(g.outletDiameter_m);
  const [a, S, h, H] = [g.inletHeight_m, g.outletDepth_m, g.cylinderHeight_m, g.totalHeight_m].map(px);
  const inlet = D * PIPE.inlet;
  const pipe = D * PIPE.outlet;
  const dust = D * PIPE.dust;
  const right = x + D;
  const body = `M${x} ${y}H${right}V${y + h!}L${axis + B / 2} ${y + H!}V${y + H! + dust}M${x} ${y}V${y + h!}L${axis - B / 2} ${y + H!}V${y + H! + dust}M${x} ${y + h!}H${right}M${axis - B / 2} ${y + H!}H${axis + B / 2}`;
  const outlet = `M${axis - De / 2} ${y}V${y - pipe}M${axis + De / 2} ${y}V${y - pipe}`;
  const hidden = `M${axis - De / 2} ${y}V${y + S!}M${axis + De / 2} ${y}V${y + S!}M${axis - De / 2} ${y + S!}H${axis + De / 2}`;
  const slot = `M${axis} ${y}H${x - inlet}V${y + a!}H${axis}Z`;
  return el(
    'g',
    {},
    stroked(body, { width: 1.6 }),
    el('path', { d: slot, fill: PAPER, stroke: INK, 'stroke-width': 1.6 }),
    stroked(outlet, { width: 1.6 }),
    stroked(hidden, { width: 1, dash: '5 3' }),
    straight(axis, y - pipe - 6, axis, y + H! + dust + 6, { width: 0.5, ink: FAINT, dash: '10 3 2 3' }),
    upright(x - inlet - 14, y, y + a!, `a ${print(g.inletHeight_m)}`, 'left', x - inlet),
    upright(right + 16, y, y + S!, `S ${print(g.outletDepth_m)}`, 'right', axis + De / 2),
    upright(right + 80, y, y + h!, `h ${print(g.cylinderHeight_m)}`, 'right', right),
    upright(right + 144, y, y + H!, `H ${print(g.totalHeight_m)}`, 'right', axis + B / 2),
    level(axis - De / 2, axis + De / 2, y - pipe - 4, `De ${print(g.outletDiameter_m)}`, 'above'),
    level(x, right, y + (a! + h!) / 2 + 6, `D ${print(g.bodyDiameter_m)}`, 'on'),
    level(axis - B / 2, axis + B / 2, y + H! + dust + 8, `B ${print(g.dustOutletDiameter_m)}`, 'below'),
  );
}

function topView(g: CycloneGeometry, { x, y }: Place, { px, print }: Tools): Markup {
  const D = px(g.bodyDiameter_m);
  const De = px(g.outletDiameter_m);
  const b = px(g.inletWidth_m);
  const centre = { x: x + D / 2, y: y + D / 2 };
  const inlet = D * PIPE.inlet;
  // the inner wall of the slot ends where it meets the body
  const inner = D / 2 - b;
  const meets = Math.sqrt(Math.max((D / 2) ** 2 - inner ** 2, 0));
  return el(
    'g',
    {},
    el('circle', { cx: centre.x, cy: centre.y, r: D / 2, stroke: INK, 'stroke-width': 1.6 }),
    el('circle', { cx: centre.x, cy: centre.y, r: De / 2, stroke: INK, 'stroke-width': 1.6 }),
    stroked(`M${centre.x} ${y + D}H${x - inlet}V${y + D - b}H${centre.x - meets}`, { width: 1.6 }),
    straight(x - 6, centre.y, x + D + 6, centre.y, { width: 0.5, ink: FAINT, dash: '10 3 2 3' }),
    straight(centre.x, y - 6, centre.x, y + D + 6, { width: 0.5, ink: FAINT, dash: '10 3 2 3' }),
    upright(x - inlet - 14, y + D - b, y + D, `b ${print(g.inletWidth_m)}`, 'left', x - inlet),
    level(x, x + D, y + D + 22, `D ${print(g.bodyDiameter_m)}`, 'below'),
    letters(x - inlet, y + D + 14, 'air in', { anchor: 'start' }),
  );
}

const ARROW = 6;
const n = (px: number): number => Math.round(px * 100) / 100;
const head = (x: number, y: number, dx: number, dy: number): string =>
  `M${n(x + dx * ARROW + dy * 2)} ${n(y + dy * ARROW + dx * 2)}L${n(x)} ${n(y)}L${n(x + dx * ARROW - dy * 2)} ${n(y + dy * ARROW - dx * 2)}`;

/** A measure that stands upright at `x`, with lines from what it measures. */
function upright(
  x: number,
  top: number,
  bottom: number,
  text: string,
  side: 'left' | 'right',
  from: number,
): Markup {
  const out = side === 'left' ? -4 : 4;
  const inside = bottom - top > 3 * ARROW;
  const heads = inside
    ? head(x, top, 0, 1) + head(x, bottom, 0, -1)
    : head(x, top, 0, -1) + head(x, bottom, 0, 1);
  const [y1, y2] = inside ? [top, bottom] : [top - 10, bottom + 10];
  return el(
    'g',
    {},
    straight(from, top, x + out, top, { width: 0.5, ink: FAINT }),
    straight(from, bottom, x + out, bottom, { width: 0.5, ink: FAINT }),
    straight(x, y1, x, y2, { width: 0.8 }),
    stroked(heads, { width: 0.8 }),
    letters(x + (side === 'left' ? -5 : 5), (top + bottom) / 2 + 4, text, {
      anchor: side === 'left' ? 'end' : 'start',
      clear: true,
    }),
  );
}

/** A measure that lies at `y`; its letters stand above, on or below the line. */
function level(left: number, right: number, y: number, text: string, side: 'above' | 'on' | 'below'): Markup {
  const inside = right - left > 3 * ARROW;
  const heads = inside
    ? head(left, y, 1, 0) + head(right, y, -1, 0)
    : head(left, y, -1, 0) + head(right, y, 1, 0);
  const [x1, x2] = inside ? [left, right] : [left - 10, right + 10];
  const base = side === 'above' ? y - 5 : side === 'on' ? y - 4 : y + 14;
  return el(
    'g',
    {},
    straight(x1, y, x2, y, { width: 0.8 }),
    stroked(heads, { width: 0.8 }),
    letters((left + right) / 2, base, text, { anchor: 'middle', clear: true }),
  );
}
