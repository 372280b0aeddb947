import { titleOf } from '../../core/document/commands/items.ts';
import type { Item } from '../../core/document/commands/items.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { Thing } from '../../core/document/schema-things.ts';
import type {
  DeviceResult,
  FanResult,
  PieceResult,
  RunResult,
  SettingResult,
} from '../../core/network/solution.ts';
import type { Dimension } from '../../core/quantities/dimensions.ts';
import type { Basis } from '../../core/quantities/sourced.ts';
import { CYCLONE_LOSS_MODELS } from '../../core/separator/pressure-drop.ts';
import { GRADE_MODELS } from '../../core/separator/efficiency.ts';
import { marginOf, marginText, statusesOf } from '../../core/summary/figures/charts/status.ts';
import type { RunStatus } from '../../core/summary/figures/charts/status.ts';

/** One line of results. */
export interface Fact {
  readonly label: string;
  readonly value: string;
  readonly status?: RunStatus;
  readonly source?: string | null;
  readonly basis?: Basis | null;
  /** One of several models; the one in use is marked. */
  readonly model?: 'in use' | 'beside';
}

export type Print = (si: number | null | undefined, dimension: Dimension) => string;

const need = (value: string, needed: number | null, dimension: Dimension, print: Print) =>
  needed === null || needed === 0 ? value : `${value}, ${print(needed, dimension)} needed`;

function runFacts(run: RunResult, result: SettingResult, print: Print): Fact[] {
  const status = statusesOf(result).get(run.id);
  const lowest = Math.min(0, ...run.pieces.map((piece) => piece.staticPressureAfter_Pa ?? 0));
  return [
    {
      label: 'Status',
      value: marginOf(run) === null ? '' : marginText(marginOf(run)),
      ...(status ? { status } : {}),
    },
    { label: 'Flow', value: need(print(run.flow_m3s, 'flow'), run.requiredFlow_m3s, 'flow', print) },
    {
      label: 'Velocity',
      value: need(print(run.velocity_ms, 'velocity'), run.requiredVelocity_ms, 'velocity', print),
    },
    { label: 'Loss', value: print(run.lossTotal_Pa, 'pressure') },
    { label: 'Deepest suction', value: print(-lowest, 'pressure') },
    ...(run.dust_kgs > 0 ? [{ label: 'Dust carried', value: print(run.dust_kgs, 'massFlow') }] : []),
  ];
}

/** Runs that meet a thing, with the flow in each. */
function joinedFacts(thing: Thing, result: SettingResult, print: Print): Fact[] {
  const meets = (end: string) => end === thing.id || end.startsWith(`${thing.id}.`);
  const statuses = statusesOf(result);
  return result.runs
    .filter((run) => meets(run.from) || meets(run.to))
    .map((run) => ({
      label: `${meets(run.to) ? 'In by' : 'Out by'} ${run.name ?? run.id}`,
      value: print(run.flow_m3s, 'flow'),
      status: statuses.get(run.id) ?? 'none',
    }));
}

function endFacts(thing: Thing, result: SettingResult, print: Print): Fact[] {
  const meets = (end: string) => end === thing.id || end.startsWith(`${thing.id}.`);
  const run = result.runs.find(({ from, to }) => meets(from) || meets(to));
  if (run === undefined) return [];
  const facts = runFacts(run, result, print).filter(
    ({ label }) => label !== 'Loss' && label !== 'Deepest suction',
  );
  const hood = run.pieces.find((piece) => piece.id === thing.id);
  if (hood === undefined) return facts;
  const after = hood.staticPressureAfter_Pa;
  return [
    ...facts,
    {
      label: thing.kind === 'exhaust' ? 'Loss of the outlet' : 'Loss of the entry',
      value: print(hood.loss_Pa, 'pressure'),
      source: hood.source,
      basis: hood.basis as Basis | null,
    },
    ...(thing.kind === 'port' && after !== null
      ? [{ label: 'Static pressure behind it', value: print(after, 'pressure') }]
      : []),
  ];
}

const share = (value: number, print: Print) => print(value, 'fraction');

function deviceFacts(device: DeviceResult, print: Print): Fact[] {
  const facts: Fact[] = [
    { label: 'Flow', value: print(device.flow_m3s, 'flow') },
    {
      label: 'Loss',
      value: print(device.loss_Pa, 'pressure'),
      source: device.source,
      basis: device.basis as Basis | null,
    },
    { label: 'Suction at its inlet', value: print(negative(device.inletTotalPressure_Pa), 'pressure') },
  ];
  if (device.inletVelocity_ms !== null)
    facts.push({ label: 'Inlet velocity', value: print(device.inletVelocity_ms, 'velocity') });
  device.faceVelocity_ms?.forEach((v, i, all) =>
    facts.push({
      label: all.length > 1 ? `Face velocity, layer ${i + 1}` : 'Face velocity',
      value: print(v, 'velocity'),
    }),
  );
  if (device.dustIn_kgs > 0)
    facts.push({ label: 'Dust that arrives', value: print(device.dustIn_kgs, 'massFlow') });
  if (device.catchShare !== null) facts.push({ label: 'Catch', value: share(device.catchShare, print) });
  if (device.cutSize_m !== null)
    facts.push({ label: 'Cut size (half caught)', value: print(device.cutSize_m, 'length') });
  return facts;
}

const negative = (value: number | null) => (value === null ? null : -value);

const labelOf = (
  rows: Readonly<Record<string, { readonly label: string } & { source?: string; basis?: Basis }>>,
  id: string,
) => rows[id]?.label ?? id;

/** What every model says of one cyclone, side by side, so that their spread is seen. */
export function modelFacts(
  device: DeviceResult,
  gradeModel: string,
  print: Print,
): { loss: Fact[]; catch: Fact[] } {
  const rows = (
    values: Readonly<Record<string, number>> | null,
    used: string | null,
    models: Readonly<
      Record<string, { readonly label: string; readonly source: string; readonly basis: Basis }>
    >,
    dimension: Dimension,
  ): Fact[] =>
    Object.entries(values ?? {}).map(([id, value]) => ({
      label: labelOf(models, id),
      value: print(value, dimension),
      source: models[id]?.source ?? null,
      basis: models[id]?.basis ?? null,
      model: id === used ? 'in use' : 'beside',
    }));
  return {
    loss: rows(device.lossByModel_Pa, device.model, CYCLONE_LOSS_MODELS, 'pressure'),
    catch: rows(device.catchByModel, gradeModel, GRADE_MODELS, 'fraction'),
  };
}

/** From the least to the most that the models say. */
export function spread(
  values: Readonly<Record<string, number>> | null,
  print: (si: number) => string,
): string {
  const all = Object.values(values ?? {});
  return all.length < 2 ? '' : `${print(Math.min(...all))} to ${print(Math.max(...all))}`;
}

function fanFacts(fan: FanResult, print: Print): Fact[] {
  const given = (label: string, value: number | null, dimension: Dimension): Fact[] =>
    value === null ? [] : [{ label, value: print(value, dimension) }];
  const points = fan.allOperatingPoints.length;
  return [
    { label: 'Flow', value: print(fan.flow_m3s, 'flow') },
    { label: 'Static pressure', value: print(fan.staticPressure_Pa, 'pressure') },
    { label: 'Total pressure', value: print(fan.totalPressure_Pa, 'pressure') },
    ...given('Speed', fan.speed_rpm, 'speed'),
    ...given('Power', fan.power_W, 'power'),
    ...given('Current', fan.current_A, 'current'),
    ...given('Efficiency', fan.efficiency, 'fraction'),
    {
      label: 'Operating point',
      value: `${fan.stable ? 'stable' : 'unstable'}${points > 1 ? `, one of ${points}` : ''}`,
    },
  ];
}

function pieceFacts(piece: PieceResult, print: Print): Fact[] {
  return [
    { label: 'Velocity', value: print(piece.velocity_ms, 'velocity') },
    { label: 'Velocity pressure', value: print(piece.velocityPressure_Pa, 'pressure') },
    { label: 'Loss coefficient', value: print(piece.coefficient, 'coefficient') },
    {
      label: 'Loss',
      value: print(piece.loss_Pa, 'pressure'),
      source: piece.source,
      basis: piece.basis as Basis | null,
    },
    ...(piece.solidsLoss_Pa > 0
      ? [{ label: 'of it by dust', value: print(piece.solidsLoss_Pa, 'pressure') }]
      : []),
    { label: 'Static pressure after', value: print(piece.staticPressureAfter_Pa, 'pressure') },
  ];
}

/** Results of one item in the setting on screen. */
export function factsOf(item: Item, result: SettingResult, print: Print): Fact[] {
  if (item.kind === 'run') {
    const run = result.runs.find(({ id }) => id === item.run.id);
    return run ? runFacts(run, result, print) : [];
  }
  if (item.kind === 'piece') {
    const piece = result.runs
      .find(({ id }) => id === item.run.id)
      ?.pieces.find(({ id }) => id === item.piece.key);
    return piece ? pieceFacts(piece, print) : [];
  }
  const { thing } = item;
  const fan = result.fans.find(({ id }) => id === thing.id);
  if (fan) return fanFacts(fan, print);
  const device = result.devices.find(({ id }) => id === thing.id);
  if (device) return deviceFacts(device, print);
  const ends: readonly string[] = ['port', 'leak', 'exhaust', 'pressure'];
  return ends.includes(thing.kind) ? endFacts(thing, result, print) : joinedFacts(thing, result, print);
}

/** What an end of a run is called: `Router`, `Cyclone (in)`. */
export function endTitle(document: ShopDocument, end: string): string {
  const [id, name] = end.split('.') as [string, string?];
  const thing = document.things.find((t) => t.id === id);
  return thing ? `${titleOf(thing)}${name ? ` (${name})` : ''}` : end;
}
