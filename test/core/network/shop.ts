import { readValue } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { openShop, solve } from '../../../core/network/solve.ts';
import type { Workbench } from '../../../core/network/solve.ts';
import type { PieceResult, RunResult, SettingResult } from '../../../core/network/solution.ts';

/** Part of a document as a file has it. */
export type Part = Record<string, unknown>;

/** Air in which hand calculations are made: 1.2 kg/m3 and 1.8e-5 Pa s, held constant. */
export const HAND_AIR: Part = { kind: 'given', density: 1.2, viscosity: 1.8e-5 };

export const port = (id: string, more: Part = {}): Part => ({
  id,
  kind: 'port',
  hood: { kind: 'given', coefficient: 0.5 },
  ...more,
});
export const leak = (id: string, area_m2: number): Part => ({ id, kind: 'leak', area: area_m2 });
export const exhaust = (id = 'out', more: Part = {}): Part => ({
  id,
  kind: 'exhaust',
  outlet: { kind: 'open' },
  to: 'room',
  ...more,
});

/** A fan whose points are [m3/s, Pa total], outlet 100 mm unless said otherwise. */
export const fan = (points: readonly (readonly [number, number])[], more: Part = {}): Part => ({
  id: 'fan',
  kind: 'fan',
  outletDiameter: 0.1,
  curve: {
    pressureKind: 'total',
    density: 1.2,
    points: points.map(([flow, pressure]) => ({ flow, pressure })),
  },
  ...more,
});

/** Falls from 3 kPa at no flow to 0 at 0.3 m3/s. */
export const STEADY_FAN = fan([
  [0, 3000],
  [0.1, 2600],
  [0.2, 1600],
  [0.3, 0],
]);

export const cyclone = (id: string, more: Part = {}): Part => ({
  id,
  kind: 'cyclone',
  proportions: 'stairmand-high-efficiency',
  bodyDiameter: 0.25,
  lossModel: 'shepherd-lapple',
  gradeModel: 'iozia-leith',
  ...more,
});
export const filter = (id: string, more: Part = {}): Part => ({
  id,
  kind: 'filter',
  layers: [{ medium: 'felt-bag', area: 4 }],
  ...more,
});

export const straight = (length: number, more: Part = {}): Part => ({ kind: 'straight', length, ...more });
export const gate = (id: string, more: Part = {}): Part => ({ kind: 'gate', id, ...more });
export const run = (
  id: string,
  from: string,
  to: string,
  pieces: readonly Part[] = [],
  more: Part = {},
): Part => ({
  id,
  from,
  to,
  diameter: 0.1,
  material: 'galvanised-spiral',
  pieces,
  ...more,
});

/** Reads a shop with constant air; throws with the problems where it cannot be read. */
export function shopOf(things: readonly Part[], runs: readonly Part[], more: Part = {}): ShopDocument {
  const read = readValue({
    format: 'chipdraft-shop',
    version: 2,
    name: 'Test shop',
    options: { compressible: false },
    air: HAND_AIR,
    things,
    runs,
    ...more,
  });
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('\n'));
  return read.document;
}

export function benchOf(document: ShopDocument): Workbench {
  const opened = openShop(document);
  if (!opened.ok) throw new Error(opened.problems.map((p) => p.message).join('\n'));
  return opened.bench;
}

/** Every setting of a shop, solved. */
export function settingsOf(document: ShopDocument): readonly SettingResult[] {
  const solved = solve(document);
  if (!solved.ok) throw new Error(solved.problems.map((p) => p.message).join('\n'));
  return solved.solution.settings;
}

/** The first setting of a shop, which must have converged. */
export function resultOf(document: ShopDocument): SettingResult {
  const result = settingsOf(document)[0]!;
  if (!result.converged) throw new Error(result.reasonText ?? 'not converged');
  return result;
}

function byId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const found = list.find((item) => item.id === id);
  if (found === undefined) throw new Error(`nothing is named ${id}`);
  return found;
}

export const runOf = (result: SettingResult, id: string): RunResult => byId(result.runs, id);
export const nodeOf = (result: SettingResult, id: string) => byId(result.nodes, id);
export const deviceOf = (result: SettingResult, id: string) => byId(result.devices, id);
export const pieceOf = (result: SettingResult, id: string): PieceResult =>
  byId(
    result.runs.flatMap((r) => r.pieces),
    id,
  );
export const codesOf = (result: SettingResult): string[] => result.findings.map((f) => f.code);
