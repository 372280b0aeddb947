import { stationAt } from './duct-line.ts';
import type { Station } from './duct-line.ts';

/** A duct as paths in plan metres. */
export interface DuctOutline {
  /** Closed: the whole body. */
  readonly fill: string;
  /** Both walls of rigid duct. */
  readonly walls: string;
  /** Both walls of hose, wavy. */
  readonly hoseWalls: string;
  /** Lines across, at the ends and where hose meets duct. */
  readonly joints: string;
  readonly centre: string;
}

const EMPTY: DuctOutline = { fill: '', walls: '', hoseWalls: '', joints: '', centre: '' };
/** Ribs of a hose stand this share of its diameter apart, and bulge by this share of it [-]. */
const RIB_PITCH = 0.45;
const RIB_BULGE = 0.16;
/** No more ribs than this on one run. */
const MOST_RIBS = 400;
/** Most arrowheads on one run; a longer one has them farther apart. */
const MOST_ARROWS = 200;

/** A coordinate to a tenth of a millimetre, as short as it goes. */
export const coordinateText = (metres: number): string => String(Math.round(metres * 1e4) / 1e4 + 0);
const pair = (x: number, y: number): string => `${coordinateText(x)} ${coordinateText(y)}`;

/** The wall on one side: 1 is left of the flow, -1 right. */
function wallPoint(station: Station, side: 1 | -1): string {
  const { x, y, across, half_m } = station;
  return pair(x + side * across.x * half_m, y + side * across.y * half_m);
}

const polyline = (points: readonly string[]): string => (points.length > 1 ? `M${points.join('L')}` : '');

/** Stretches of the same kind; neighbours share the station between them. */
export function stretches(stations: readonly Station[]): Station[][] {
  const found: Station[][] = [];
  for (const station of stations) {
    const open = found.at(-1);
    if (open === undefined) found.push([station]);
    else if (open[0]!.hose === station.hose) open.push(station);
    else {
      // a change is marked by a station of the new kind at the place where the old one ends
      if (open.length === 1) open.push({ ...station, hose: open[0]!.hose });
      found.push([{ ...station }]);
    }
  }
  return found;
}

/** The double line of a duct at its true diameter: straight walls for duct, wavy ones for hose. */
export function ductOutline(stations: readonly Station[]): DuctOutline {
  if (stations.length < 2) return EMPTY;
  const leftWall = stations.map((station) => wallPoint(station, 1));
  const rightWall = stations.map((station) => wallPoint(station, -1));
  const parts = stretches(stations);
  let walls = '';
  let hoseWalls = '';
  let joints = across(stations[0]!) + across(stations.at(-1)!);
  parts.forEach((part, i) => {
    if (i > 0) joints += across(part[0]!);
    for (const side of [1, -1] as const) {
      if (part[0]!.hose) hoseWalls += wavyWall(part, side);
      else walls += polyline(part.map((station) => wallPoint(station, side)));
    }
  });
  return {
    fill: `M${leftWall.join('L')}L${rightWall.reverse().join('L')}Z`,
    walls,
    hoseWalls,
    joints,
    centre: polyline(stations.map(({ x, y }) => pair(x, y))),
  };
}

const across = (station: Station): string => `M${wallPoint(station, 1)}L${wallPoint(station, -1)}`;

function wavyWall(part: readonly Station[], side: 1 | -1): string {
  const start = part[0]!.along_m;
  const length = part.at(-1)!.along_m - start;
  if (part.length < 2 || length <= 0) return '';
  const pitch = RIB_PITCH * 2 * part[0]!.half_m;
  const count = Math.min(Math.max(1, Math.round(length / Math.max(pitch, 1e-3))), MOST_RIBS);
  const at = (share: number, bulge: number): string => {
    const place = stationAt(part, start + length * share)!;
    const reach = side * (place.half_m + bulge * 2 * place.half_m);
    return pair(
      place.x + Math.sin(place.direction_rad) * reach,
      place.y - Math.cos(place.direction_rad) * reach,
    );
  };
  let path = `M${at(0, 0)}`;
  for (let i = 0; i < count; i++) path += `Q${at((i + 0.5) / count, RIB_BULGE)} ${at((i + 1) / count, 0)}`;
  return path;
}

/** Arrowheads of flow along the centre line, one for about every `spacing_m`, as one path; turned round with the flow. */
export function flowArrows(stations: readonly Station[], spacing_m: number, backwards: boolean): string {
  const length = stations.at(-1)?.along_m ?? 0;
  const first = stations[0]?.half_m ?? 0;
  if (length < 3 * first || first <= 0) return '';
  const count = Math.min(Math.max(1, Math.round(length / spacing_m)), MOST_ARROWS);
  let path = '';
  for (let i = 0; i < count; i++) {
    const place = stationAt(stations, (length * (i + 0.5)) / count)!;
    const direction = place.direction_rad + (backwards ? Math.PI : 0);
    const c = Math.cos(direction);
    const s = Math.sin(direction);
    const size = Math.min(place.half_m * 0.6, 0.08);
    const corner = (x: number, y: number) =>
      pair(place.x + c * x * size - s * y * size, place.y + s * x * size + c * y * size);
    path += `M${corner(-1, -1)}L${corner(0.6, 0)}L${corner(-1, 1)}`;
  }
  return path;
}
