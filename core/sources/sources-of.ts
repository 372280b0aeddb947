import type { CompiledShop } from '../network/compile.ts';
import type { SettingResult } from '../network/solution.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { chanceSources } from './chance-sources.ts';
import { flowsOf } from './context.ts';
import type { SourceContext } from './context.ts';
import { deviceSources } from './device-sources.ts';
import { dustSources } from './dust-sources.ts';
import { endSources, nodeSources } from './end-sources.ts';
import { fanSources } from './fan-sources.ts';
import { pieceSources } from './piece-sources.ts';
import { checkSources, drawingSources, shopSources, solidsSources } from './shop-sources.ts';
import { SourceList } from './source-list.ts';
import type { SourceRow } from './source-row.ts';
import { upkeepSources } from './upkeep-sources.ts';

export interface SourcesInput {
  readonly shop: CompiledShop;
  /** Results of the settings; those without one are passed over. */
  readonly settings: readonly SettingResult[];
  /** In which figures are printed. */
  readonly units: UnitSystem;
  /** Whether running hours are asked about: then what they rest on is in it too. */
  readonly hours: boolean;
}

/**
 * Every relation, coefficient, model, property and default that the results of a shop rest on, with its source, its basis and all
 * places that use it. The screen, the paper and the command line read this. Sizes of ducts and things are the design
 * itself, and are not listed.
 */
export function sourcesOf({ shop, settings: all, units, hours }: SourcesInput): SourceRow[] {
  const list = new SourceList(units);
  const settings = all.filter(({ converged }) => converged);
  const context: SourceContext = { shop, settings, flows: flowsOf(settings), list };
  shopSources(context);
  for (const run of shop.runs) {
    endSources(context, run);
    pieceSources(context, run);
  }
  nodeSources(context);
  solidsSources(context);
  deviceSources(context);
  fanSources(context);
  dustSources(context);
  drawingSources(context);
  chanceSources(context);
  if (hours) upkeepSources(context);
  checkSources(context);
  return list.all(orderOf(shop));
}

/** Place of each id in the document: things, then runs with their pieces. */
function orderOf(shop: CompiledShop): Map<string, number> {
  const order = new Map<string, number>();
  const add = (id: string) => {
    if (!order.has(id)) order.set(id, order.size);
  };
  for (const thing of shop.document.things) add(thing.id);
  for (const { run, pieces } of shop.runs) {
    add(run.id);
    for (const { id } of pieces) add(id);
  }
  for (const { id } of shop.document.fans) add(id);
  return order;
}
