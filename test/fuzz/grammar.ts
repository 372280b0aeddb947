import fc from 'fast-check';
import schema from '../../core/document/shop.schema.json' with { type: 'json' };
import { DIMENSIONS } from '../../core/quantities/dimensions.ts';
import type { Dimension } from '../../core/quantities/dimensions.ts';
import { groupOf, json, numbers, strings } from './hostile.ts';
import { quantityTexts } from './texts.ts';

/** The part of the JSON Schema language that the published schema of documents is written in. */
interface Node {
  readonly $ref?: string;
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly minItems?: number;
  readonly maxLength?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly pattern?: string;
  readonly propertyNames?: Node;
  readonly additionalProperties?: Node | boolean;
}

/** Few names, so that parts of a made-up document meet each other now and then. */
const NAMES = fc.constantFrom('saw', 'fan', 'out', 'S1', 'F1', 'W1', 'J1', 'R1', 'R2', 'R3', 'G1', 'G2');
const ENDS = fc.constantFrom('', '.in', '.out', '.branch', '.main', '.odd', '..', '.');

/** A quantity of a dimension that its field takes: by its examples, as a plain number, or as both. */
function plainQuantity(ref: string): fc.Arbitrary<unknown> {
  const [dimension, ...rule] = ref.split('/').at(-1)!.split('-') as [Dimension, ...string[]];
  const { examples } = DIMENSIONS[dimension];
  const text = fc.constantFrom(...examples);
  const shares = [0.01, 0.1, 0.5, 1];
  const above = rule.join('-') === 'share' ? shares : [...shares, 1e-9, 2, 20, 300, 1000, 1e6, 1e12];
  const number = fc.constantFrom(...above, ...(rule.length === 0 ? [] : [0]));
  return fc.oneof(text, number, fc.record({ text: fc.option(text), si: number }));
}

/** An arbitrary of the values that a node of the schema describes; now and then of anything else. */
function valuesOf(node: Node, hostility: number): fc.Arbitrary<unknown> {
  const plain = plainOf(node, hostility);
  if (hostility === 0) return plain;
  return fc.oneof({ weight: 100, arbitrary: plain }, { weight: hostility, arbitrary: json });
}

function plainOf(node: Node, hostility: number): fc.Arbitrary<unknown> {
  if (node.$ref !== undefined) {
    const plain = plainQuantity(node.$ref);
    return hostility === 0
      ? plain
      : fc.oneof(
          { weight: 30, arbitrary: plain },
          { weight: hostility, arbitrary: fc.oneof(numbers, quantityTexts) },
        );
  }
  if ('const' in node) return fc.constant(node.const);
  if (node.enum) return fc.constantFrom(...node.enum);
  const choices = node.oneOf ?? node.anyOf;
  if (choices) return fc.oneof(...choices.map((choice) => valuesOf(choice, hostility)));
  switch (node.type) {
    case 'object':
      return objects(node, hostility);
    case 'array':
      return fc.array(valuesOf(node.items!, hostility), { minLength: node.minItems ?? 0, maxLength: 4 });
    case 'string':
      if (node.pattern?.startsWith('^[A-Za-z]')) return NAMES;
      if (node.pattern !== undefined) return fc.constant('data:image/png;base64,AAAA');
      if (hostility > 0)
        return fc.oneof(
          NAMES,
          fc.tuple(NAMES, ENDS).map((parts) => parts.join('')),
          strings,
        );
      return fc.oneof(
        NAMES,
        fc.constantFrom('木工房 🪵', '<b>&amp;', 'a\nb', '=1+1').map((text) => text.slice(0, node.maxLength)),
      );
    case 'boolean':
      return fc.boolean();
    case 'integer':
      return fc.integer({
        min: node.minimum ?? 0,
        max: Math.min(node.maximum ?? 20, (node.minimum ?? 0) + 20),
      });
    case 'number':
      return fc.constantFrom(0, 0.25, 0.5, 1);
    case 'null':
      return fc.constant(null);
    default:
      return json;
  }
}

function objects(node: Node, hostility: number): fc.Arbitrary<unknown> {
  const { properties, propertyNames, additionalProperties } = node;
  if (!properties) {
    const item = typeof additionalProperties === 'object' ? additionalProperties : {};
    const name = propertyNames ? valuesOf(propertyNames, 0) : strings;
    return fc
      .array(fc.tuple(name as fc.Arbitrary<string>, valuesOf(item, hostility)), { maxLength: 3 })
      .map(groupOf);
  }
  const fields = Object.fromEntries(
    Object.entries(properties).map(([key, of]) => [key, valuesOf(of, hostility)]),
  );
  return fc.record(fields, { requiredKeys: [...(node.required ?? [])] });
}

/** Documents by the published schema; names of ends and things rarely fit. */
export const schemaDocuments: fc.Arbitrary<unknown> = valuesOf(schema as Node, 0);
/** The same with a stranger's value here and there. */
export const crookedDocuments: fc.Arbitrary<unknown> = valuesOf(schema as Node, 2);
