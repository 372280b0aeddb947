import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { applyCommand, blankDocument, findItem } from '../../core/document/commands/index.ts';
import type { Command } from '../../core/document/commands/index.ts';
import { ENDS } from '../../core/document/ends.ts';
import { readDocument, readValue } from '../../core/document/read.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import { writeDocument } from '../../core/document/write.ts';
import { EXAMPLES } from '../../core/examples/index.ts';
import { anything, json, keys, numbers, strings } from './hostile.ts';
import { otherFigures } from './mutations.ts';
import { must, mustRead } from './target.ts';
import { quantityTexts, valueTables } from './texts.ts';

/** Ids as they stand in the examples and in what the commands make, and others. */
const ids = fc.oneof(
  { weight: 12, arbitrary: fc.nat({ max: 40 }).map((n) => `#${n}`) },
  { weight: 1, arbitrary: fc.constantFrom('', 'R1', 'G1', 'R1.0', 'R1/corner-0') },
  { weight: 1, arbitrary: strings },
);
const idLists = fc.array(ids, { maxLength: 5 });
const coordinates = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: -5, max: 5 }) },
  { weight: 1, arbitrary: numbers },
);
const counts = fc.oneof(
  { weight: 6, arbitrary: fc.nat({ max: 3 }) },
  { weight: 1, arbitrary: numbers },
  { weight: 1, arbitrary: fc.constantFrom(-1, 0.5, 1e9, 2 ** 31, 4294967295) },
);
const points = fc.record({ x: coordinates, y: coordinates, z: coordinates }, { requiredKeys: ['x', 'y'] });
const shares = fc.oneof(fc.constantFrom(0, 0.3, 0.5, 1), numbers);
const pathParts = fc.oneof(
  fc.constantFrom(
    'at',
    'x',
    'name',
    'id',
    'route',
    'legs',
    'corners',
    'length',
    'diameter',
    'pieces',
    'curve',
    'points',
  ),
  fc.constantFrom(
    'readings',
    'motor',
    'rotor',
    'kind',
    'hood',
    'needs',
    'flow',
    'dusts',
    'settings',
    'gates',
    'air',
    'options',
  ),
  fc.constantFrom(
    'underlay',
    'data',
    'values',
    'parts',
    'prices',
    'stock',
    'ranges',
    'upkeep',
    'version',
    'format',
    'design',
  ),
  counts,
  keys,
);
const paths = fc.array(pathParts, { maxLength: 5 });
const fieldTexts = fc.oneof(quantityTexts, strings);
const choices = fc.oneof(fieldTexts, fc.boolean(), numbers, fc.constant(null));
const thingKinds = fc.oneof(fc.constantFrom(...Object.keys(ENDS)), keys);
const targets = fc.oneof(
  fc.record({ thing: ids, end: strings }, { requiredKeys: ['thing'] }),
  fc.record({ run: ids, leg: counts, at: shares }),
  fc.record({ free: fc.constantFrom('port', 'exhaust', 'joint'), at: points }),
);
const pieces = fc.oneof(
  fc.constantFrom<unknown>(
    { kind: 'gate' },
    { kind: 'reducer', to: '80 mm' },
    { kind: 'straight', length: '1 m' },
  ),
  json,
);
const settings = fc.oneof(fc.constantFrom('open', 's1', 's2', '#0', '#1'), strings);
const gates = fc.dictionary(fc.oneof(ids, keys), fc.option(fieldTexts), { maxKeys: 3 });
const clips = fc.oneof(
  fc.constantFrom(...Object.keys(EXAMPLES)).map((id) => ({ example: id })),
  otherFigures.map((text) => ({ text })),
);

type Fields = Readonly<Record<string, fc.Arbitrary<unknown>>>;

/** The arguments of each command; the types are left to the table of commands, as strangers do not keep to them. */
const ARGUMENTS: { readonly [K in Command['kind']]: Fields } = {
  place: { thing: thingKinds, at: points, preset: fc.option(strings, { nil: undefined }) },
  move: { ids: idLists, dx: coordinates, dy: coordinates, dz: coordinates },
  turn: { id: ids, angle_rad: numbers },
  align: {
    ids: idLists,
    edge: fc.oneof(fc.constantFrom('left', 'right', 'top', 'bottom', 'centre-x', 'centre-y'), keys),
  },
  moveCorner: { run: ids, corner: counts, at: points },
  insertCorner: { run: ids, leg: counts, at: points },
  removeCorner: { run: ids, corner: counts },
  moveLeg: { run: ids, leg: counts, dx: coordinates, dy: coordinates, dz: coordinates },
  mirror: { id: ids },
  layRun: { run: ids },
  drawRun: {
    from: targets,
    to: targets,
    corners: fc.array(points, { maxLength: 4 }),
    like: fc.option(ids, { nil: undefined }),
    angle_rad: fc.option(numbers, { nil: undefined }),
  },
  reverse: { run: ids },
  setField: { id: ids, path: paths, text: fc.option(fieldTexts) },
  setChoice: { id: ids, path: paths, value: choices },
  addRow: { id: ids, path: paths, row: fc.option(json, { nil: undefined }) },
  removeRow: { id: ids, path: paths, index: counts },
  setRows: { id: ids, path: paths, rows: fc.array(json, { maxLength: 4 }) },
  addFan: { type: fc.option(fc.oneof(fc.constantFrom('radial', 'axial'), keys), { nil: undefined }) },
  removeFan: { id: ids },
  duplicateFan: { id: ids },
  setValues: { rows: valueTables },
  setDocument: { path: paths, value: choices },
  setUnderlay: {
    underlay: fc.oneof(
      anything,
      fc.constant({ name: 'hall', width_px: 9, height_px: 9, at: { x: 0, y: 0 }, metresPerPixel: 1 }),
    ),
  },
  addSetting: { setting: settings, like: fc.option(settings, { nil: undefined }) },
  renameSetting: { setting: settings, name: settings },
  removeSetting: { setting: settings },
  setSetting: { setting: settings, gates },
  setGate: { setting: settings, gate: ids, text: fc.option(fieldTexts) },
  addPiece: { run: ids, leg: counts, at: shares, piece: pieces },
  movePiece: { id: ids, leg: counts, at: shares },
  removePiece: { id: ids },
  remove: { ids: idLists },
  paste: { clip: clips, at: fc.option(points, { nil: undefined }) },
  duplicate: { ids: idLists },
};

const commands: fc.Arbitrary<Command> = fc.oneof(
  ...Object.entries(ARGUMENTS).map(([kind, fields]) =>
    fc.record(fields).map((given) => ({ kind, ...given }) as unknown as Command),
  ),
);

export interface Edits {
  readonly start: string;
  readonly commands: readonly Command[];
}

/** A shop and up to thirty commands. */
export const edits: fc.Arbitrary<Edits> = fc.record({
  start: fc.constantFrom('blank', ...Object.keys(EXAMPLES)),
  commands: fc.array(commands, { minLength: 1, maxLength: 30 }),
});

function startOf(name: string): ShopDocument {
  if (name === 'blank') return blankDocument('si');
  const read = readValue(EXAMPLES[name as keyof typeof EXAMPLES]);
  if (!read.ok) throw new Error(`the example ${name} is not read`);
  return read.document;
}

/** Puts the names that the document has in place of `#3`, and a shop in place of a clip. */
function aimed(command: Command, shop: ShopDocument): Command {
  const parts = [...shop.things, ...shop.runs, ...shop.fans].map(({ id }) => id);
  const gatesOf = shop.runs.flatMap((run) => run.pieces.flatMap((piece) => piece.id ?? []));
  const names = [...parts, ...gatesOf, ...parts];
  const aim = (value: unknown, key: string): unknown => {
    if (typeof value === 'string' && /^#\d+$/.test(value)) {
      const list = key === 'setting' || key === 'like' ? shop.settings.map(({ name }) => name) : names;
      return list[Number(value.slice(1)) % Math.max(list.length, 1)] ?? value;
    }
    if (key === 'clip') {
      const { example, text } = value as { example?: string; text?: string };
      const read = text === undefined ? null : readDocument(text, { allowIncomplete: true });
      return read?.ok ? read.document : startOf(example ?? 'one-router');
    }
    if (Array.isArray(value) && ['ids'].includes(key)) return value.map((item) => aim(item, key));
    if ((key === 'from' || key === 'to') && typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, aim(item, name)]));
    return value;
  };
  return Object.fromEntries(
    Object.entries(command).map(([key, value]) => [key, aim(value, key)]),
  ) as unknown as Command;
}

/** Carries commands out: each is done or refused in words, and what comes out can be written and read again. */
export function carryOut({ start, commands: list }: Edits): string {
  let shop = startOf(start);
  let carried = 0;
  for (const given of list) {
    const command = aimed(given, shop);
    const result = applyCommand(shop, command);
    if (!result.ok) {
      mustRead(result.message, result.remedy);
      continue;
    }
    must(result.label !== '', 'a step without a name');
    if (result.document === shop) continue;
    carried++;
    shop = result.document;
    const text = writeDocument(shop);
    const read = readDocument(text, { allowIncomplete: true });
    if (!read.ok) {
      throw new Error(`after ${command.kind} the shop cannot be read: ${read.problems[0]?.message ?? ''}`);
    }
    must(isDeepStrictEqual(read.document, shop), `after ${command.kind} the shop reads as another`);
    // what the page looks up after each step
    for (const id of result.created ?? []) findItem(shop, id);
  }
  return carried === 0 ? 'all refused' : 'some carried out';
}
