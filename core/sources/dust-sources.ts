import { DUST_CLASSES } from '../catalogue/dusts.ts';
import type { DustClass, DustNumbers } from '../catalogue/dusts.ts';
import type { UserDust } from '../document/schema.ts';
import type { ThingOf } from '../document/schema-things.ts';
import { WASTEFUL_RATIO } from '../network/port-dust.ts';
import type { Dimension } from '../quantities/dimensions.ts';
import type { Quantity } from '../document/quantity-field.ts';
import type { Sourced } from '../quantities/sourced.ts';
import type { SourceContext } from './context.ts';
import { dustPaths, UNNAMED_DUST } from './dust-paths.ts';
import type { DustPath } from './dust-paths.ts';
import { sourced } from './piece-sources.ts';
import { GIVEN } from './source-list.ts';

interface DustFigure {
  readonly what: string;
  readonly dimension: Dimension;
  /** Where the number counts. */
  readonly at: (path: DustPath) => readonly string[];
}

const separators = ({ separators: ids }: DustPath) => [...ids];

const FIGURES: Readonly<Record<keyof DustNumbers, DustFigure>> = {
  requiredVelocity_ms: {
    what: 'velocity that carries',
    dimension: 'velocity',
    at: ({ ports, raw }) => [...ports, ...raw],
  },
  fineVelocity_ms: {
    what: 'velocity that carries, behind a separator,',
    dimension: 'velocity',
    at: ({ fine }) => [...fine],
  },
  highVelocity_ms: {
    what: 'velocity that is wastefully high for',
    dimension: 'velocity',
    at: ({ raw, fine }) => [...raw, ...fine],
  },
  particleDensity_kgm3: { what: 'density of a particle of', dimension: 'density', at: separators },
  bulkDensity_kgm3: { what: 'density of a loose heap of', dimension: 'density', at: separators },
  medianSize_m: { what: 'median size by mass of', dimension: 'length', at: separators },
  geometricDeviation: { what: 'spread of sizes of', dimension: 'coefficient', at: separators },
};

const KEYS = Object.keys(FIGURES) as (keyof DustNumbers)[];

/** Dusts: velocities that carry them, densities and sizes, and what ports ask for. */
export function dustSources(context: SourceContext): void {
  const { shop, list } = context;
  for (const path of dustPaths(context)) {
    const own = shop.document.dusts.find(({ id }) => id === path.dust.id);
    if (!path.named) unnamed(context, path);
    if (own) ownDust(context, path, own);
    else if (Object.hasOwn(DUST_CLASSES, path.dust.id))
      classDust(context, path, DUST_CLASSES[path.dust.id as keyof typeof DUST_CLASSES]);
  }
  for (const thing of shop.things.values()) if (thing.kind === 'port') port(context, thing);
  for (const run of shop.document.runs) {
    list.given(run.requiredVelocity, 'velocity asked of a run', 'requiredVelocity', [run.id]);
  }
}

function unnamed({ list }: SourceContext, path: DustPath): void {
  list.add(
    {
      kind: 'default',
      what: `dust of a port that names none: ${DUST_CLASSES[UNNAMED_DUST].label.toLowerCase()}`,
      source: 'no source; light dust, so that no separator is flattered',
      basis: 'assumed',
      field: 'dust',
    },
    [...path.ports],
  );
}

function classDust({ list }: SourceContext, path: DustPath, row: DustClass): void {
  for (const key of KEYS) {
    // without a dust of its own, a port gives the velocity itself
    if (key === 'requiredVelocity_ms' && !path.named) continue;
    const { what, dimension, at } = FIGURES[key];
    const from: Sourced = key === 'requiredVelocity_ms' ? row : row.fields[key];
    const value = { si: row[key], dimension };
    list.add({ kind: 'catalogue', what: `${what} ${lower(row.label)}`, value, ...sourced(from) }, at(path));
  }
}

function ownDust({ list }: SourceContext, path: DustPath, dust: UserDust): void {
  const name = dust.name ?? dust.id;
  const given: Readonly<Record<keyof DustNumbers, Quantity | undefined>> = {
    requiredVelocity_ms: dust.requiredVelocity,
    fineVelocity_ms: dust.fineVelocity,
    highVelocity_ms: dust.highVelocity,
    particleDensity_kgm3: dust.particleDensity,
    bulkDensity_kgm3: dust.bulkDensity,
    medianSize_m: dust.medianSize,
    geometricDeviation: dust.geometricDeviation,
  };
  for (const key of KEYS) {
    const { what, dimension, at } = FIGURES[key];
    const quantity = given[key];
    const value = { si: path.dust[key], dimension };
    const words = `${what} ${name}`;
    if (quantity) list.add({ kind: 'reading', what: words, value, ...GIVEN }, at(path));
    else {
      const from =
        key === 'fineVelocity_ms'
          ? sourced(DUST_CLASSES[UNNAMED_DUST].fields.fineVelocity_ms)
          : {
              source: `no source; ${WASTEFUL_RATIO} times the velocity that carries it`,
              basis: 'common-practice' as const,
            };
      list.add({ kind: 'default', what: words, value, ...from }, at(path));
    }
  }
}

/** What a port asks for and how much dust it sends off. */
function port({ list, shop }: SourceContext, thing: ThingOf<'port'>): void {
  const { needs, cut, dustRate } = thing;
  const runs = shop.runs.filter(({ from }) => from.thing.id === thing.id).map(({ run }) => run.id);
  const where = [thing.id, ...runs];
  list.given(needs?.flow, 'flow asked of a port', 'needs.flow', where);
  list.given(needs?.velocity, 'velocity asked of a port', 'needs.velocity', where);
  if (needs?.capture) {
    list.use(where, 'capture');
    list.given(needs.capture.velocity, 'velocity wanted at the source', 'needs.capture.velocity', [thing.id]);
  }
  if (dustRate) list.given(dustRate, 'dust that a port sends off', 'dustRate', [thing.id]);
  else if (cut) {
    list.use([thing.id], 'dustRate');
    list.given(cut.density, 'density of what is cut', 'cut.density', [thing.id]);
    list.given(cut.collected, 'share of the cut that the hood takes', 'cut.collected', [thing.id]);
  }
}

const lower = (label: string) => (label.startsWith('MDF') ? label : label[0]!.toLowerCase() + label.slice(1));
