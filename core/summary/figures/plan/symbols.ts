import { coordinateText as n } from './duct-outline.ts';

/** One stroke or area of a symbol, in metres about the thing's place, before it is turned. */
export interface SymbolPath {
  readonly d: string;
  /** `body` is filled with paper, `line` is a stroke, `mark` is filled with ink, `faint` is a thin stroke. */
  readonly as: 'body' | 'line' | 'mark' | 'faint';
}

/** A thing as the plan shows it. */
export interface PlanSymbol {
  readonly paths: readonly SymbolPath[];
  /** Middle of its extent, and half of that along and across [m]. */
  readonly middle_m: { readonly x: number; readonly y: number };
  readonly halfLength_m: number;
  readonly halfWidth_m: number;
}

const circle = (x: number, y: number, r: number): string =>
  `M${n(x - r)} ${n(y)}a${n(r)} ${n(r)} 0 1 0 ${n(2 * r)} 0a${n(r)} ${n(r)} 0 1 0 ${n(-2 * r)} 0Z`;
const rectangle = (x: number, y: number, w: number, h: number): string =>
  `M${n(x)} ${n(y)}h${n(w)}v${n(h)}h${n(-w)}Z`;
const line = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${n(x1)} ${n(y1)}L${n(x2)} ${n(y2)}`;

const symbol = (halfLength_m: number, halfWidth_m: number, ...paths: SymbolPath[]): PlanSymbol => ({
  paths,
  middle_m: { x: 0, y: 0 },
  halfLength_m,
  halfWidth_m,
});
/** A symbol whose extent is not about its place. */
const offCentre = (x: number, y: number, plain: PlanSymbol): PlanSymbol => ({ ...plain, middle_m: { x, y } });

/** Cyclone from above: body, the inlet that meets it at a tangent, and the outlet tube that leads away over it. */
export function cycloneSymbol(body_m: number): PlanSymbol {
  const r = body_m / 2;
  const tube = r * 0.45;
  return symbol(
    r,
    r,
    { d: circle(0, 0, r), as: 'body' },
    { d: `M${n(-r)} ${n(-r * 0.25)}V${n(-r * 0.55)}L${n(-r * 0.6)} ${n(-r)}H0`, as: 'line' },
    {
      d: `M${n(-r * 0.72)} 0A${n(r * 0.72)} ${n(r * 0.72)} 0 1 0 ${n(r * 0.62)} ${n(-r * 0.36)}`,
      as: 'faint',
    },
    { d: rectangle(0, -tube * 0.8, r, tube * 1.6), as: 'body' },
    { d: circle(0, 0, tube), as: 'body' },
  );
}

/** Drop-out bin from above: lid, rim and baffle. */
export function binSymbol(size_m: number): PlanSymbol {
  const r = size_m / 2;
  return symbol(
    r,
    r,
    { d: circle(0, 0, r), as: 'body' },
    { d: circle(0, 0, r * 0.86), as: 'faint' },
    { d: line(0, -r * 0.86, 0, r * 0.3), as: 'line' },
  );
}

/** Filter from above: housing with the folds of its medium. */
export function filterSymbol(size_m: number): PlanSymbol {
  const h = size_m / 2;
  const folds = 6;
  let zigzag = `M${n(-h * 0.7)} ${n(h * 0.55)}`;
  for (let i = 1; i <= 2 * folds; i++) {
    zigzag += `L${n(-h * 0.7 + (1.4 * h * i) / (2 * folds))} ${n(i % 2 ? -h * 0.55 : h * 0.55)}`;
  }
  return symbol(h, h, { d: rectangle(-h, -h, 2 * h, 2 * h), as: 'body' }, { d: zigzag, as: 'line' });
}

/** Radial fan: the scroll of its casing about the eye of the rotor, blowing out along its upper side. */
export function fanSymbol(length_m: number, outlet_m: number): PlanSymbol {
  const r = length_m / 2;
  const o = Math.min(outlet_m, r) / 2;
  const casing = r * 0.85;
  const y = casing - o;
  const meets = Math.sqrt(casing * casing - (o - y) * (o - y));
  const blades = Array.from({ length: 6 }, (_, i) => {
    const a = (i * Math.PI) / 3;
    const point = (at: number, reach: number): [number, number] => [
      casing * reach * Math.cos(at),
      casing * reach * Math.sin(at) + y,
    ];
    return line(...point(a, 0.2), ...point(a + 0.5, 0.48));
  }).join('');
  return offCentre(
    0,
    y,
    symbol(
      r,
      casing,
      { d: rectangle(-r, -o, r, 2 * o), as: 'body' },
      { d: `M${n(r)} ${n(-o)}H0A${n(casing)} ${n(casing)} 0 1 0 ${n(meets)} ${n(o)}H${n(r)}Z`, as: 'body' },
      { d: circle(0, y, casing * 0.52), as: 'line' },
      { d: blades, as: 'faint' },
    ),
  );
}

/** Machine with its port: a box, and a spigot where the duct starts. */
export function portSymbol(bore_m: number): PlanSymbol {
  const b = Math.max(bore_m, 0.05);
  const w = 0.42;
  const h = 0.34;
  return offCentre(
    -w / 2,
    0,
    symbol(
      w / 2,
      h / 2,
      { d: rectangle(-w, -h / 2, w - b * 0.6, h), as: 'body' },
      { d: line(-w, -h / 2, -b * 0.6, h / 2) + line(-w, h / 2, -b * 0.6, -h / 2), as: 'faint' },
      { d: rectangle(-b * 0.6, -b / 2, b * 0.6, b), as: 'body' },
    ),
  );
}

/** Floor sweep or another open end: a mouth that widens. */
export function sweepSymbol(bore_m: number): PlanSymbol {
  const b = Math.max(bore_m, 0.05);
  return offCentre(
    -0.11,
    0,
    symbol(
      0.11,
      0.18,
      {
        d: `M0 ${n(-b / 2)}L${n(-0.16)} ${n(-0.18)}H${n(-0.22)}V${n(0.18)}H${n(-0.16)}L0 ${n(b / 2)}Z`,
        as: 'body',
      },
      { d: [-0.09, 0, 0.09].map((y) => line(-0.2, y, -0.12, y)).join(''), as: 'faint' },
    ),
  );
}

/** Exhaust: the mouth of a duct, with the air that leaves it. */
export function exhaustSymbol(bore_m: number): PlanSymbol {
  const b = Math.max(bore_m, 0.08);
  const fan = [-0.7, 0, 0.7].map((a) => {
    const x = 0.08 + 0.16 * Math.cos(a);
    const y = (b / 2) * Math.sign(a) * 0.6 + 0.16 * Math.sin(a);
    return line(0.08, (b / 2) * Math.sign(a) * 0.6, x, y);
  });
  return offCentre(
    0.12,
    0,
    symbol(
      0.12,
      Math.max(b / 2, 0.12),
      { d: rectangle(0, -b / 2, 0.06, b), as: 'body' },
      { d: fan.join(''), as: 'line' },
    ),
  );
}

/** Leak: a gap with ragged edges. */
export function leakSymbol(): PlanSymbol {
  return symbol(
    0.12,
    0.12,
    { d: circle(0, 0, 0.1), as: 'body' },
    { d: 'M-0.06 -0.05L-0.01 -0.01L-0.04 0.02L0.05 0.06', as: 'line' },
  );
}

/** Given pressure: a gauge. */
export function pressureSymbol(): PlanSymbol {
  return symbol(
    0.14,
    0.14,
    { d: circle(0, 0, 0.13), as: 'body' },
    { d: 'M0 0L0.06 -0.07', as: 'line' },
    { d: 'M-0.08 0.05A0.095 0.095 0 1 1 0.08 0.05', as: 'faint' },
  );
}

/** A leg of a wye: where its duct goes, from the middle outwards, and how wide it is. */
export interface WyeLeg {
  readonly direction_rad: number;
  readonly bore_m: number;
}

/** Wye, tee or breeches: a sleeve about each duct where they meet. */
export function wyeSymbol(legs: readonly WyeLeg[]): PlanSymbol {
  const widest = Math.max(0.05, ...legs.map(({ bore_m }) => bore_m));
  const reach = widest * 1.4;
  const sleeves = legs.map(({ direction_rad, bore_m }): SymbolPath => {
    const c = Math.cos(direction_rad);
    const s = Math.sin(direction_rad);
    const w = Math.max(bore_m, 0.04) * 0.58;
    const at = (along: number, across: number) => `${n(c * along - s * across)} ${n(s * along + c * across)}`;
    return { d: `M${at(0, w)}L${at(reach, w)}L${at(reach, -w)}L${at(0, -w)}`, as: 'body' };
  });
  return symbol(reach, reach, ...sleeves, { d: circle(0, 0, widest * 0.16), as: 'mark' });
}

/** Joint: a coupling ring. */
export function jointSymbol(bore_m: number): PlanSymbol {
  const r = Math.max(bore_m / 2, 0.03) + 0.015;
  return symbol(r, r, { d: circle(0, 0, r), as: 'body' }, { d: circle(0, 0, r * 0.3), as: 'mark' });
}

/** Gate on a duct that runs along x: its blade stands across when shut, and is drawn out of the duct when open. */
export function gateSymbol(bore_m: number, opening: number): PlanSymbol {
  const b = Math.max(bore_m, 0.04);
  const drawn = Math.min(Math.max(opening, 0), 1);
  const frame = b * 0.72;
  const top = -b / 2 - b * drawn;
  return symbol(
    b * 0.3,
    frame + b * drawn,
    { d: rectangle(-b * 0.17, -frame, b * 0.34, 2 * frame), as: 'body' },
    { d: rectangle(-b * 0.06, top, b * 0.12, b), as: 'mark' },
  );
}

/** A duct that comes towards the reader (a riser: a dot) or goes away (a drop: a cross). */
export function verticalSymbol(bore_m: number, way: 'up' | 'down'): PlanSymbol {
  const r = Math.max(bore_m, 0.04) / 2;
  const k = r * Math.SQRT1_2;
  const inner: SymbolPath =
    way === 'up'
      ? { d: circle(0, 0, r * 0.28), as: 'mark' }
      : { d: line(-k, -k, k, k) + line(-k, k, k, -k), as: 'line' };
  return symbol(r, r, { d: circle(0, 0, r), as: 'body' }, inner);
}
