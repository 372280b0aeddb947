import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { shopJsonSchema } from '../../core/document/json-schema.ts';

/** Writes the published JSON Schema from the schema in code. Run after any change to a document field. */
const target = fileURLToPath(new URL('../../core/document/shop.schema.json', import.meta.url));
const options = await resolveConfig(target);
writeFileSync(target, await format(JSON.stringify(shopJsonSchema()), { ...options, parser: 'json' }));
console.log(`wrote ${target}`);
