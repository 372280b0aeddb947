import type * as z from 'zod';
import { issueProblem } from '../issue-text.ts';
import type { DocumentProblem } from '../problem.ts';
import { parseWhole } from '../parse-whole.ts';
import { isQuantity } from '../quantity-field.ts';
import { namesOf, resolveWithin } from '../resolve.ts';
import { AIR, DUST, SETTING, SHOP } from '../schema.ts';
import type { ShopDocument } from '../schema.ts';
import { FAN_DESIGN } from '../schema-fans.ts';
import { RUN } from '../schema-pieces.ts';
import { THING } from '../schema-things.ts';
import { toJson } from '../write.ts';
import type { FieldPath } from './command.ts';
import { Refused } from './command.ts';

const ITEMS: Readonly<Record<string, z.ZodType>> = {
  things: THING,
  runs: RUN,
  dusts: DUST,
  settings: SETTING,
  fans: FAN_DESIGN,
};

/** The smallest part of the document that is checked as a whole around a field: its item, or its top-level field. */
function sectionOf(path: FieldPath): { at: FieldPath; rest: FieldPath; schema: z.ZodType } {
  const [key, index] = path;
  if (typeof key === 'string' && typeof index === 'number' && ITEMS[key]) {
    return { at: path.slice(0, 2), rest: path.slice(2), schema: ITEMS[key] };
  }
  const schema = key === 'air' ? AIR : SHOP.shape[key as keyof typeof SHOP.shape];
  if (typeof key !== 'string' || !Object.hasOwn(SHOP.shape, key) || key === 'version' || key === 'format') {
    throw new Refused(`there is no field ${path.join('.')}`, 'choose a field of the document');
  }
  return { at: [key], rest: path.slice(1), schema };
}

/** Value at a path; undefined where there is none. */
export function valueAt(root: unknown, path: FieldPath): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<string | number, unknown>)[key];
  }
  return value;
}

/** A copy with one value put in, everything beside the path shared; undefined removes. Groups on the way are made. */
export function withValue(root: unknown, path: FieldPath, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (key === '__proto__') throw new Refused('no field may have this name', 'choose another name');
  if (Array.isArray(root) || typeof key === 'number') {
    const list: unknown[] = Array.isArray(root) ? [...(root as unknown[])] : [];
    if (typeof key !== 'number' || key > list.length)
      throw new Refused(`there is no row ${key}`, 'choose a row');
    const next = withValue(list[key], rest, value);
    if (next === undefined) list.splice(key, 1);
    else list[key] = next;
    return list;
  }
  const group = typeof root === 'object' && root !== null && !isQuantity(root) ? root : {};
  const old = Object.hasOwn(group, key) ? (group as Record<string, unknown>)[key] : undefined;
  const next = withValue(old, rest, value);
  if (next !== undefined) return { ...group, [key]: next };
  return Object.fromEntries(Object.entries(group).filter(([name]) => name !== key));
}

/**
 * Puts a value as a file would hold it (a text for a quantity) at a path from the document's root, checks the item that
 * it belongs to, and works its texts out. Refuses with the field's name and what was typed.
 */
export function editValue(document: ShopDocument, path: FieldPath, value: unknown): ShopDocument {
  const { at, rest, schema } = sectionOf(path);
  const old = valueAt(document, at);
  // a list of legs is filled up to the one that is typed
  const raw = withValue(padLegs(toJson(old), rest), rest, value);
  // messages name the field within its item, or the field of the document
  const within = at.length === 1 ? at : [];
  const root = withValue({}, within, raw);
  const parsed = parseWhole(schema, raw);
  if (!parsed.ok) {
    const issue = parsed.issues?.[0];
    const { message, remedy } =
      parsed.issues === null
        ? parsed.problems[0]!
        : issueProblem({ ...issue!, path: [...within, ...issue!.path] }, root);
    throw new Refused(message, remedy);
  }
  const problems: DocumentProblem[] = [];
  const section = resolveWithin(parsed.data, within, root, namesOf(document, []), problems);
  if (problems[0]) throw new Refused(problems[0].message, problems[0].remedy);
  return withValue(document, at, section) as ShopDocument;
}

function padLegs(raw: unknown, rest: FieldPath): unknown {
  const [route, legs, leg] = rest;
  if (route !== 'route' || legs !== 'legs' || typeof leg !== 'number') return raw;
  const corners = valueAt(raw, ['route', 'corners']);
  const count = Array.isArray(corners) ? corners.length + 1 : 0;
  if (leg >= count) throw new Refused(`there is no leg ${leg}`, 'choose a leg of the run');
  const given = valueAt(raw, ['route', 'legs']);
  const list = Array.isArray(given) ? (given as unknown[]) : [];
  const filled = Array.from({ length: count }, (_, i) => list[i] ?? {});
  return withValue(raw, ['route', 'legs'], filled);
}
