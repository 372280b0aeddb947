import { ImpossibleInput } from '../quantities/impossible-input.ts';
import type { Basis } from '../quantities/sourced.ts';
import { UPKEEP_DEFAULTS, usageOf } from '../upkeep/usage.ts';
import type { SourceContext } from './context.ts';
import { WHOLE_SHOP } from './source-row.ts';

type UpkeepKey = keyof typeof UPKEEP_DEFAULTS;

/** What the reckoning over running hours rests on. */
export function upkeepSources({ shop, list }: SourceContext): void {
  const { document } = shop;
  const kinds = (...wanted: readonly string[]) =>
    document.things.flatMap(({ id, kind }) => (wanted.includes(kind) ? [id] : []));
  const where: Readonly<Record<UpkeepKey, readonly string[]>> = {
    cuttingShare: [WHOLE_SHOP],
    cleaningRestores: kinds('filter'),
    binFull: kinds('cyclone', 'bin'),
    motorEfficiency: shop.fans.flatMap(({ thing, design }) => (design?.motor ? [] : [thing.id])),
  };
  for (const key of Object.keys(UPKEEP_DEFAULTS) as UpkeepKey[]) {
    const { what, value, source, basis } = UPKEEP_DEFAULTS[key];
    const row = { kind: 'default', si: value, dimension: 'fraction', source, basis } as const;
    const field = where[key][0] === WHOLE_SHOP ? `upkeep.${key}` : '';
    list.either(document.upkeep?.[key], what, field, row, where[key]);
  }
  if (document.settings.length < 2) return;
  const typed = document.settings.some(({ hours }) => hours !== undefined);
  const given = { source: 'given in the document', basis: 'measured-by-user' as Basis };
  const alike = {
    source: 'no source; every setting alike, where none says',
    basis: 'assumed' as Basis,
  };
  const value = shares(document);
  const what = 'shares of the running hours of the settings';
  list.add({ kind: typed ? 'reading' : 'default', what, ...value, ...(typed ? given : alike) }, [WHOLE_SHOP]);
}

/** Each setting's share in words; nothing where the shares cannot be. */
function shares(document: SourceContext['shop']['document']): { value?: string } {
  try {
    const { duty } = usageOf(document);
    return { value: duty.map(({ share }) => `${Math.round(100 * share)} %`).join(', ') };
  } catch (error) {
    if (error instanceof ImpossibleInput) return {};
    throw error;
  }
}
