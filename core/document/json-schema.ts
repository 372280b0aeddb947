import * as z from 'zod';
import { SHOP } from './schema.ts';

/** The published JSON Schema of a shop document, as plain data; `shop.schema.json` beside this file is its text. */
export function shopJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(SHOP, { io: 'input' });
  return {
    $schema,
    title: 'Chipdraft shop document',
    description:
      'A shop and its dust collection: things (ports, junctions, separators, filters, fans, exhausts), runs of pieces ' +
      'between them, and settings of the gates. A quantity is a number in SI units, a text with a unit such as ' +
      '"2 ft + 3 in", or both.',
    ...rest,
  };
}
