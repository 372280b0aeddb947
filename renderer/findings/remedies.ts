import type { Command } from '../../core/document/commands/index.ts';
import { isQuantity } from '../../core/document/quantity-field.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { Run } from '../../core/document/schema-pieces.ts';
import type { ThingKind } from '../../core/document/schema-things.ts';
import { TAPERED_HOOD_RANGE } from '../../core/fittings/entry.ts';
import { SLIDE_GATE_RANGE } from '../../core/fittings/gate.ts';
import type { Finding, SettingResult } from '../../core/network/solution.ts';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import type { Bounds } from '../../core/quantities/range.ts';
import { CYCLONE_LOSS_RANGE } from '../../core/separator/pressure-drop.ts';
import { valueAt } from '../controls/values.ts';
import { shortText } from '../controls/understood.ts';
import { largerSize, smallerSize } from './first-guess.ts';

/** A remedy that is a plain change of a value: what the button says, and the edit, which is one step of undo. */
export interface Remedy {
  readonly label: string;
  /** How sure it is; absent where there is nothing to guess. */
  readonly note?: string;
  readonly commands: readonly Command[];
}

/** What remedies are worked out from. */
export interface RemedyInput {
  readonly document: ShopDocument;
  readonly result: SettingResult;
  readonly units: UnitSystem;
}

const GUESS = 'first guess, for the same air: see what it does';

/** The size of a run that has one size all along; null where a leg or piece has its own, as no one number would do. */
function oneSize(run: Run): number | null {
  const own =
    run.route?.legs?.some((leg) => leg.diameter !== undefined) === true ||
    run.pieces.some((piece) => piece.kind === 'reducer' || piece.diameter !== undefined);
  return own ? null : (run.diameter?.si ?? null);
}

type Maker = (finding: Finding, input: RemedyInput) => Remedy | null;

const resize =
  (pick: typeof smallerSize): Maker =>
  ({ where }, { document, result, units }) => {
    const run = document.runs.find(({ id }) => id === where);
    const now = result.runs.find(({ id }) => id === where);
    const diameter_m = run ? oneSize(run) : null;
    if (!now?.velocity_ms || !now.requiredVelocity_ms || diameter_m === null) return null;
    const asked = { diameter_m, velocity_ms: now.velocity_ms, required_ms: now.requiredVelocity_ms };
    const size = pick(asked, units);
    if (size === null) return null;
    return {
      label: `Set diameter to ${size.text}`,
      note: GUESS,
      commands: [{ kind: 'setField', id: where, path: ['diameter'], text: size.text }],
    };
  };

const cleanFilter: Maker = ({ where }, { document }) => {
  const filter = document.things.find(({ id }) => id === where);
  if (filter?.kind !== 'filter') return null;
  const commands = filter.layers.flatMap(({ load }, i): Command[] =>
    load === undefined || load.si === 0
      ? []
      : [{ kind: 'setField', id: where, path: ['layers', i, 'load'], text: '0 g/m2' }],
  );
  return commands.length > 0 ? { label: 'Set the dust on it to 0', commands } : null;
};

/** Fields whose range is data of the core: how each is read and set. */
interface RangeField {
  readonly name: string;
  readonly path: readonly (string | number)[];
  readonly dimension: Dimension;
  readonly bounds: Bounds | undefined;
}

/** Values of things that a relation may find outside its range, by kind of thing. */
const RANGE_FIELDS: Readonly<Partial<Record<ThingKind, readonly RangeField[]>>> = {
  cyclone: [
    {
      name: 'body diameter',
      path: ['bodyDiameter'],
      dimension: 'length',
      bounds: CYCLONE_LOSS_RANGE['body diameter'],
    },
  ],
  port: [
    {
      name: 'angle of the hood',
      path: ['hood', 'angle'],
      dimension: 'angle',
      bounds: TAPERED_HOOD_RANGE['included angle'],
    },
  ],
};

const NEAREST = 'nearest value for which the relation was found';

const openGate: Maker = ({ where }, { document, result, units }) => {
  const gate = document.runs.flatMap(({ pieces }) => pieces).find(({ id }) => id === where);
  if (gate?.kind !== 'gate') return null;
  const least = SLIDE_GATE_RANGE.opening?.low;
  const setting = document.settings.find(({ name }) => name === result.name);
  const now = setting?.gates[where]?.si ?? gate.opening?.si ?? 1;
  if (least === undefined || now >= least) return null;
  const text = shortText(least, 'fraction', units);
  return {
    label: `Open it to ${text}`,
    note: NEAREST,
    commands: setting
      ? [{ kind: 'setGate', setting: setting.name, gate: where, text }]
      : [{ kind: 'setField', id: where, path: ['opening'], text }],
  };
};

const intoRange: Maker = (finding, input) => {
  const thing = input.document.things.find(({ id }) => id === finding.where);
  if (thing === undefined) return openGate(finding, input);
  for (const { name, path, dimension, bounds } of RANGE_FIELDS[thing.kind] ?? []) {
    const value = valueAt(thing, path);
    if (!isQuantity(value) || bounds === undefined) continue;
    const nearest = Math.min(Math.max(value.si, bounds.low ?? -Infinity), bounds.high ?? Infinity);
    if (nearest === value.si) continue;
    const text = shortText(nearest, dimension, input.units);
    return {
      label: `Set ${name} to ${text}`,
      note: NEAREST,
      commands: [{ kind: 'setField', id: thing.id, path, text }],
    };
  }
  return null;
};

const MAKERS: Readonly<Record<string, Maker>> = {
  'velocity-low': resize(smallerSize),
  'velocity-close': resize(smallerSize),
  'velocity-high': resize(largerSize),
  'filter-full': cleanFilter,
  'outside-range': intoRange,
};

/** The remedy of a finding that can be applied with one press; null where a person has to decide. */
export const remedyOf: Maker = (finding, input) => MAKERS[finding.code]?.(finding, input) ?? null;
