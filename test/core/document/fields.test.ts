import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/document/commands/apply.ts';
import { blankDocument } from '../../../core/document/commands/defaults.ts';
import type { Command } from '../../../core/document/commands/command.ts';
import { ENDS } from '../../../core/document/ends.ts';
import type { Field } from '../../../core/document/fields.ts';
import { fieldsOf } from '../../../core/document/fields.ts';
import { isQuantity } from '../../../core/document/quantity-field.ts';
import { shopJsonSchema } from '../../../core/document/json-schema.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import type { ThingKind } from '../../../core/document/schema-things.ts';
import { MOTOR_WORDS } from '../../../core/document/fan-fields.ts';
import { READING_WORDS } from '../../../core/document/reading-fields.ts';
import type { ReadingKind } from '../../../core/document/schema-fans.ts';
import { after, simpleShop } from './commands/helpers.ts';

interface Node {
  $ref?: string;
  type?: string;
  const?: unknown;
  enum?: unknown[];
  properties?: Record<string, Node>;
  required?: string[];
  items?: Node;
  oneOf?: Node[];
}

const SCHEMA = shopJsonSchema() as Node;

/** Places of the schema below a node by path without list places, with the kind that leads there. */
function leaves(node: Node, path: string, found: Map<string, Node>): void {
  const leaf = ['string', 'boolean', 'integer', 'number'].includes(node.type ?? '');
  if (node.$ref !== undefined || leaf) found.set(path, node);
  for (const [key, child] of Object.entries(node.properties ?? {})) leaves(child, `${path}.${key}`, found);
  if (node.items) leaves(node.items, `${path}[]`, found);
  for (const option of node.oneOf ?? []) {
    const kind = option.properties?.kind?.const;
    leaves(option, typeof kind === 'string' ? `${path}<${kind}>` : path, found);
  }
}

const LEAVES = new Map<string, Node>();
leaves(SCHEMA, '', LEAVES);

/** The schema's name for the place of a field in a document. */
function schemaPath(document: unknown, path: readonly (string | number)[]): string {
  let text = '';
  let value: unknown = document;
  const kind = () => {
    const k = typeof value === 'object' && value !== null && 'kind' in value ? value.kind : undefined;
    if (typeof k === 'string') text += `<${k}>`;
  };
  for (const key of path) {
    text += typeof key === 'number' ? '[]' : `.${key}`;
    value = (value as Record<string | number, unknown> | undefined)?.[key];
    if (!isQuantity(value)) kind();
  }
  return text;
}

function rootPath(shop: ShopDocument, field: Field): (string | number)[] {
  if (field.id === '') return [...field.path];
  const t = shop.things.findIndex(({ id }) => id === field.id);
  if (t >= 0) return ['things', t, ...field.path];
  const f = shop.fans.findIndex(({ id }) => id === field.id);
  if (f >= 0) return ['fans', f, ...field.path];
  const r = shop.runs.findIndex(({ id }) => id === field.id);
  if (r >= 0) return ['runs', r, ...field.path];
  for (const [i, run] of shop.runs.entries()) {
    const byId = run.pieces.findIndex(({ id }) => id === field.id);
    if (byId >= 0) return ['runs', i, 'pieces', byId, ...field.path];
  }
  throw new Error(`no ${field.id}`);
}

const READINGS = Object.keys(READING_WORDS) as ReadingKind[];

const PIECE_INPUTS = [
  { kind: 'straight', id: 'P1', length: 1 },
  { kind: 'elbow', id: 'P2', style: 'smooth', angle: 1, radiusRatio: 1.5 },
  { kind: 'hose-bend', id: 'P3', angle: 1, radius: 0.3 },
  { kind: 'reducer', id: 'P4', to: 0.1 },
  { kind: 'gate' },
  { kind: 'given', id: 'P5', coefficient: 1 },
  { kind: 'measured', id: 'P6', loss: 100, flow: 0.1 },
  { kind: 'bare', id: 'P7', length: 1, diameter: 0.1, roughness: 0.0001, coefficient: 1 },
] as const;

/** Shops that between them show every field: each kind of thing, piece, hood, outlet and air, each group on. */
function everything(): ShopDocument[] {
  const things = (Object.keys(ENDS) as ThingKind[]).map((kind): Command => ({
    kind: 'place',
    thing: kind,
    at: { x: 1, y: 1 },
  }));
  const dust = {
    id: 'own',
    requiredVelocity: 20,
    particleDensity: 600,
    bulkDensity: 150,
    medianSize: 1e-4,
    geometricDeviation: 2,
    combustible: true,
  };
  const full = after(
    simpleShop(),
    ...things,
    ...PIECE_INPUTS.map((piece): Command => ({ kind: 'addPiece', run: 'R1', leg: 0, at: 0.5, piece })),
    { kind: 'setChoice', id: 'port-1', path: ['cut'], value: true },
    { kind: 'setChoice', id: 'port-1', path: ['needs', 'capture'], value: true },
    { kind: 'setChoice', id: 'cyclone-1', path: ['measured'], value: true },
    { kind: 'setChoice', id: 'cyclone-1', path: ['dimensions'], value: true },
    { kind: 'setChoice', id: 'bin-1', path: ['measured'], value: true },
    { kind: 'setRows', id: '', path: ['dusts'], rows: [dust] },
    { kind: 'setField', id: 'R2', path: ['material'], text: 'hose-smooth-bore' },
    { kind: 'addFan' },
    ...READINGS.map((kind): Command => ({
      kind: 'addRow',
      id: 'design-1',
      path: ['readings'],
      row: { kind },
    })),
    { kind: 'setChoice', id: 'design-1', path: ['motor'], value: true },
    { kind: 'setChoice', id: 'design-1', path: ['rotor'], value: true },
    {
      kind: 'setUnderlay',
      underlay: { name: 'a', width_px: 1, height_px: 1, at: { x: 0, y: 0 }, metresPerPixel: 0.01 },
    },
  );
  const hoods = ['tapered', 'slot', 'brush-shoe', 'given', 'measured'].map((value) =>
    after(full, { kind: 'setChoice', id: 'port-1', path: ['hood', 'kind'], value }),
  );
  const outlets = ['cap', 'given'].map((value) =>
    after(full, { kind: 'setChoice', id: 'exhaust-1', path: ['outlet', 'kind'], value }),
  );
  const motors = Object.keys(MOTOR_WORDS).map((value) =>
    after(full, { kind: 'setChoice', id: 'design-1', path: ['motor', 'kind'], value }),
  );
  return [
    full,
    ...motors,
    ...hoods,
    ...outlets,
    after(full, { kind: 'setChoice', id: '', path: ['air', 'kind'], value: 'given' }),
  ];
}

const SHOPS = everything();
const ids = (shop: ShopDocument) => [
  '',
  ...shop.things.map(({ id }) => id),
  ...shop.runs.map(({ id }) => id),
  ...shop.fans.map(({ id }) => id),
  ...shop.runs.flatMap((run) => Array.from({ length: 14 }, (_, i) => `${run.id}.${i + 1}`)),
  ...shop.runs.flatMap((run) => run.pieces.flatMap((piece) => piece.id ?? [])),
];
const ALL = SHOPS.flatMap((shop) =>
  ids(shop).flatMap((id) => fieldsOf(shop, id).map((field) => ({ shop, field }))),
);

/** Places that have no field of their own, and why. */
const NOT_SHOWN: readonly [RegExp, string][] = [
  [/^\.(\$schema|format|version)$/, 'not for people'],
  [/^\.values\[\]/, 'the table of named values'],
  [/^\.settings\[\]/, 'the table of settings'],
  [/^\.parts\.(stock|prices)\[\]/, 'the parts list'],
  [/^\.runs\[\]\.(from|to)$/, 'drawn'],
  [/\.kind$/, 'what a thing is; kinds of hood, outlet and air have fields'],
  [/^\.dusts\[\]\.id$/, 'given when the dust is made'],
  [/^\.fans\[\]\.readings\[\]<[a-z-]+>\.id$/, 'given when the reading is made'],
  [/^\.underlay\.(name|data|width_px|height_px|opacity)$/, 'the picture itself'],
  [/\.pieces\[\]<[a-z-]+>\.along\.(leg|at)$/, 'moved on the plan'],
];

describe('fields', () => {
  it('stand for places of the schema, with its kind of quantity', () => {
    expect(ALL.length).toBeGreaterThan(500);
    for (const { shop, field } of ALL) {
      const place = schemaPath(shop, rootPath(shop, field));
      if (field.kind === 'flag' && !LEAVES.has(place)) {
        // a group that is switched on and off
        expect([...LEAVES.keys()].some((path) => path.startsWith(`${place}.`))).toBe(true);
        continue;
      }
      if (field.path.at(-1) === 'kind') continue;
      const leaf = LEAVES.get(place);
      expect(leaf, place).toBeDefined();
      if (field.kind === 'quantity') {
        const name = field.rule === 'positive' ? field.dimension : `${field.dimension}-${field.rule}`;
        expect(leaf!.$ref, place).toBe(`#/$defs/${name}`);
      }
      if (leaf!.enum)
        expect(field.options?.map(({ value }) => value).toSorted(), place).toEqual(
          [...leaf!.enum].toSorted(),
        );
      if (leaf!.type === 'boolean') expect(field.kind, place).toBe('flag');
      if (leaf!.type === 'integer') expect(field.kind, place).toBe('count');
    }
  });

  it('cover every quantity, choice, text and flag of the schema but those listed', () => {
    const covered = new Set(ALL.map(({ shop, field }) => schemaPath(shop, rootPath(shop, field))));
    const missing = [...LEAVES.keys()].filter(
      (path) => !covered.has(path) && !NOT_SHOWN.some(([pattern]) => pattern.test(path)),
    );
    expect(missing).toEqual([]);
  });

  it('say rightly what may be left empty', () => {
    for (const { shop, field } of ALL) {
      if (field.kind === 'flag' || field.path.at(-1) === 'kind' || field.path.at(-1) === 'id') continue;
      const set = applyCommand(shop, { kind: 'setField', id: field.id, path: field.path, text: null });
      if (field.optional) expect(set.ok, `${field.id} ${field.path.join('.')}`).toBe(true);
      // what has a value of its own where the file says nothing comes back with it
      else
        expect(set.ok && field.path[0] !== 'units' && field.path[0] !== 'options', field.path.join('.')).toBe(
          false,
        );
    }
  });

  it('take the catalogue with its sources', () => {
    const shop = blankDocument('si');
    const placed = after(shop, { kind: 'place', thing: 'port', at: { x: 0, y: 0 } });
    const dust = fieldsOf(placed, 'port-1').find(({ label }) => label === 'Dust class')!;
    expect(dust.options!.length).toBeGreaterThan(5);
    expect(dust.options!.every(({ source, basis }) => source !== undefined && basis !== undefined)).toBe(
      true,
    );
    expect(fieldsOf(placed, 'nothing')).toEqual([]);
  });
});
