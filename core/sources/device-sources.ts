import { CYCLONE_PROPORTIONS } from '../catalogue/cyclones.ts';
import { FILTER_MEDIA, PASSED_SHARE, WOOD_DUST_CAKE_RESISTANCE } from '../catalogue/filter-media.ts';
import {
  BARTH_CORE_K,
  BARTH_FRICTION,
  BARTH_GRADE_EXPONENT,
  BIN_BAFFLE_K,
  INLET_VELOCITY_RANGE,
  INLET_VELOCITY_SOURCE,
  RE_ENTRAINMENT_RATIO,
  SHARP_OUTLET_K,
  SHEPHERD_LAPPLE_K,
  STAIRMAND_FRICTION,
} from '../catalogue/separator-models.ts';
import type { SourcedNumber } from '../catalogue/separator-models.ts';
import { RE_ENTRAINMENT_LEAST_BODY_m } from '../checks/device-checks.ts';
import type { ThingOf } from '../document/schema-things.ts';
import type { BuiltDevice } from '../network/compile-devices.ts';
import type { CompiledDevice } from '../network/compile.ts';
import { GRADE_MODELS } from '../separator/efficiency.ts';
import type { GradeModel } from '../separator/efficiency.ts';
import { CYCLONE_LOSS_MODELS, PLAIN_CYCLONE } from '../separator/pressure-drop.ts';
import type { CycloneLossModel } from '../separator/pressure-drop.ts';
import type { SourceContext } from './context.ts';
import { sourced } from './piece-sources.ts';
import type { RelationId } from './relations.ts';
import { READ } from './source-list.ts';
import type { SourceList } from './source-list.ts';

type Where = readonly [string];
type Numbers = Readonly<Record<string, SourcedNumber>>;

/** Relation of each loss model, with the constants in it. */
const LOSS_PARTS: Readonly<
  Record<CycloneLossModel, { readonly relation: RelationId; readonly numbers: Numbers }>
> = {
  'shepherd-lapple': {
    relation: 'shepherdLapple',
    numbers: { 'constant of the model, plain inlet': SHEPHERD_LAPPLE_K[PLAIN_CYCLONE.inlet] },
  },
  'casal-martinez-benet': { relation: 'casalMartinezBenet', numbers: {} },
  coker: { relation: 'coker', numbers: {} },
  dirgo: { relation: 'dirgo', numbers: {} },
  stairmand: { relation: 'stairmand', numbers: { 'wall friction in the model': STAIRMAND_FRICTION } },
  barth: {
    relation: 'barthLoss',
    numbers: {
      'wall friction in the model': BARTH_FRICTION,
      'loss in the core of the model': BARTH_CORE_K[PLAIN_CYCLONE.outletRim],
    },
  },
};

/** Relations of each catch model, with the constants in it. */
const GRADE_PARTS: Readonly<
  Record<GradeModel, { readonly relations: readonly RelationId[]; readonly numbers: Numbers }>
> = {
  lapple: { relations: ['lappleCut', 'lappleGrade'], numbers: {} },
  'leith-licht': { relations: ['leithLicht'], numbers: {} },
  'iozia-leith': { relations: ['ioziaLeithCut', 'ioziaLeith'], numbers: {} },
  barth: {
    relations: ['barthCut', 'barthGrade'],
    numbers: { 'exponent of the grade curve': BARTH_GRADE_EXPONENT },
  },
};

const number = (si: number) => ({ si, dimension: 'coefficient' }) as const;

function numbers(list: SourceList, where: Where, rows: Numbers): void {
  for (const [what, row] of Object.entries(rows)) {
    const span = row.span ? `; reported from ${row.span.join(' to ')}` : '';
    const source = `${row.source}${span}`;
    list.add({ kind: 'coefficient', what, value: number(row.value), source, basis: row.basis }, where);
  }
}

/** Separators and filters. */
export function deviceSources(context: SourceContext): void {
  for (const device of context.shop.devices) {
    const { thing, built } = device;
    if (thing.kind === 'cyclone' && built.kind === 'cyclone') cyclone(context, thing, built);
    if (thing.kind === 'bin') bin(context, thing, device);
    if (thing.kind === 'filter') filter(context, thing);
  }
}

function cyclone(
  { list }: SourceContext,
  thing: ThingOf<'cyclone'>,
  built: Extract<BuiltDevice, { kind: 'cyclone' }>,
): void {
  const where: Where = [thing.id];
  list.use(where, 'inletVelocity', 'poorShape', 'catch', 'seriesCatch');
  if (Object.hasOwn(CYCLONE_PROPORTIONS, thing.proportions)) {
    const row = CYCLONE_PROPORTIONS[thing.proportions as keyof typeof CYCLONE_PROPORTIONS];
    list.use(where, 'cycloneShape');
    const what = `proportions of a cyclone: ${row.label}`;
    list.add({ kind: 'catalogue', what, field: 'proportions', ...sourced(row) }, where);
  }
  for (const [key, quantity] of Object.entries(thing.dimensions ?? {})) {
    list.given(quantity, `${words(key)} of a cyclone`, `dimensions.${key}`, where);
  }
  const measured = thing.measured !== undefined;
  if (thing.measured) readLoss(list, where, 'loss of a cyclone', thing.measured);
  for (const [id, row] of Object.entries(CYCLONE_LOSS_MODELS)) {
    const inUse = !measured && id === thing.lossModel;
    const how = inUse ? 'in use' : 'beside it';
    const what = `loss of a cyclone by ${row.label}, ${how}`;
    list.add({ kind: 'model', what, range: row.range, field: 'lossModel', ...sourced(row) }, where);
    if (!inUse) continue;
    const { relation, numbers: constants } = LOSS_PARTS[id as CycloneLossModel];
    list.use(where, relation);
    numbers(list, where, constants);
    const value = number(built.segments[0]!.forward);
    list.add({ kind: 'coefficient', what: 'loss of a cyclone, on its inlet', value, ...sourced(row) }, where);
  }
  list.add(
    {
      kind: 'default',
      what: 'build of a cyclone: a plain inlet without a vane, a sharp rim on the outlet pipe',
      source: 'no source; the plainest that can be built, on the safe side',
      basis: 'assumed',
    },
    where,
  );
  for (const [id, row] of Object.entries(GRADE_MODELS)) {
    const inUse = id === thing.gradeModel;
    const what = `catch of a cyclone by ${row.label}, ${inUse ? 'in use' : 'beside it'}`;
    list.add({ kind: 'model', what, range: row.range, field: 'gradeModel', ...sourced(row) }, where);
    if (!inUse) continue;
    const { relations, numbers: constants } = GRADE_PARTS[id as GradeModel];
    list.use(where, ...relations);
    numbers(list, where, constants);
  }
  limits(list, where, built);
}

/** Bounds that findings about a cyclone compare with. */
function limits(list: SourceList, where: Where, built: Extract<BuiltDevice, { kind: 'cyclone' }>): void {
  const { low, high } = INLET_VELOCITY_RANGE['inlet velocity']!;
  const text = (si: number | undefined) => list.print({ si: si ?? NaN, dimension: 'velocity' });
  list.add(
    {
      kind: 'default',
      what: 'inlet velocity at which cyclones work as designed',
      value: `${text(low)} to ${text(high)}`,
      ...sourced(INLET_VELOCITY_SOURCE),
    },
    where,
  );
  if (built.geometry.bodyDiameter_m < RE_ENTRAINMENT_LEAST_BODY_m) return;
  list.use(where, 'saltation');
  const value = number(RE_ENTRAINMENT_RATIO.value);
  const what = 'inlet velocity over the one that picks caught dust up, at most';
  list.add({ kind: 'default', what, value, ...sourced(RE_ENTRAINMENT_RATIO) }, where);
}

function bin({ list }: SourceContext, thing: ThingOf<'bin'>, { built }: CompiledDevice): void {
  const where: Where = [thing.id];
  list.given(thing.catchShare, 'share that a drop-out bin keeps', 'catchShare', where);
  if (thing.measured) {
    readLoss(list, where, 'loss of a drop-out bin', thing.measured);
    return;
  }
  list.use(where, 'bin');
  const { source, basis } = sourced({ source: built.source, basis: 'from-memory' });
  const value = number(built.segments[0]!.forward);
  list.add(
    { kind: 'coefficient', what: 'loss of a drop-out bin, on its inlet', value, source, basis },
    where,
  );
  numbers(list, where, { 'contraction into the outlet of a bin': SHARP_OUTLET_K });
  if (!thing.baffle) return;
  const baffle = { kind: 'default', value: number(BIN_BAFFLE_K.value), field: 'measured' } as const;
  list.add({ ...baffle, what: 'loss that the baffle of a bin adds', ...sourced(BIN_BAFFLE_K) }, where);
}

function filter({ list }: SourceContext, thing: ThingOf<'filter'>): void {
  const where: Where = [thing.id];
  list.use(where, 'filter', 'faceVelocity');
  thing.layers.forEach((layer, i) => {
    const medium = FILTER_MEDIA[layer.medium as keyof typeof FILTER_MEDIA];
    const name = medium.label.toLowerCase();
    const row = { kind: 'catalogue', ...sourced(medium) } as const;
    const field = (key: string) => `layers.${i}.${key}`;
    const figure = (si: number, dimension: 'filterDrag' | 'cakeResistance' | 'fraction') => ({
      si,
      dimension,
    });
    list.either(
      layer.drag,
      `clean drag of ${name}`,
      field('drag'),
      { ...row, ...figure(medium.drag_Pasm, 'filterDrag') },
      where,
    );
    list.either(
      layer.cakeResistance,
      `resistance of the cake on ${name}`,
      field('cakeResistance'),
      {
        ...row,
        ...figure(medium.cakeResistance_pers, 'cakeResistance'),
        ...sourced(WOOD_DUST_CAKE_RESISTANCE),
      },
      where,
    );
    list.either(
      layer.passedShare,
      `dust that goes through ${name}`,
      field('passedShare'),
      { ...row, ...figure(medium.passedShare, 'fraction'), ...sourced(PASSED_SHARE) },
      where,
    );
    list.either(
      layer.load,
      `cake on ${name}`,
      field('load'),
      {
        kind: 'default',
        si: 0,
        dimension: 'arealDensity',
        source: 'no source; a filter that was just cleaned',
        basis: 'assumed',
      },
      where,
    );
    const limit = { field: field('medium'), ...row };
    const fast = { si: medium.faceVelocityHigh_ms, dimension: 'velocity' } as const;
    list.add({ ...limit, what: `face velocity of ${name}, at most`, value: fast }, where);
    const full = { si: medium.changeAtPressure_Pa, dimension: 'pressure' } as const;
    list.add({ ...limit, what: `drop at which to clean or change ${name}`, value: full }, where);
  });
}

function readLoss(
  list: SourceList,
  where: Where,
  what: string,
  measured: { readonly loss: { readonly si: number }; readonly flow: { readonly si: number } },
): void {
  const loss = list.print({ si: measured.loss.si, dimension: 'pressure' });
  const flow = list.print({ si: measured.flow.si, dimension: 'flow' });
  list.use(where, 'readLoss');
  const value = `${loss} at ${flow}`;
  list.add({ kind: 'reading', what, value, field: 'measured.loss', ...READ }, where);
}

/** `outletDepth` as `outlet depth`. */
const words = (key: string) => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
