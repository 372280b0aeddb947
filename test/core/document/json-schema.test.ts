import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { shopJsonSchema } from '../../../core/document/json-schema.ts';
import { writeDocument } from '../../../core/document/write.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import type { ExampleId } from '../../../core/examples/index.ts';
import { documentOf, fileOf } from './samples.ts';

const IDS = Object.keys(EXAMPLES) as ExampleId[];
const published = readFileSync(new URL('../../../core/document/shop.schema.json', import.meta.url), 'utf8');
const validate = new Ajv2020({ strict: false }).compile(JSON.parse(published));

describe('the published JSON Schema', () => {
  it('is what the code gives', () => {
    const wanted: unknown = JSON.parse(JSON.stringify(shopJsonSchema()));
    expect(JSON.parse(published), 'run: npm run schema').toEqual(wanted);
  });

  it('has a title, a description and no address', () => {
    const schema = shopJsonSchema();
    expect(schema.title).toBe('Chipdraft shop document');
    expect(schema.description).toMatch(/quantity/);
    expect(schema).not.toHaveProperty('$id');
  });

  it.each(IDS)('takes %s, as typed and as written', (id) => {
    expect(validate(EXAMPLES[id]), JSON.stringify(validate.errors)).toBe(true);
    expect(validate(JSON.parse(writeDocument(documentOf(id)))), JSON.stringify(validate.errors)).toBe(true);
  });

  it('refuses what the reader refuses by shape', () => {
    const changes: ((file: ReturnType<typeof fileOf>) => unknown)[] = [
      (d) => (d.colour = 1),
      (d) => (d.version = 3),
      (d) => (d.things[0].kind = 'hoover'),
      (d) => (d.runs[0].diameter = true),
      (d) => delete d.air,
      (d) => (d.settings[0].gates = { '1 G': 1 }),
    ];
    for (const change of changes) {
      const file = fileOf('one-router');
      change(file);
      expect(validate(file), String(change)).toBe(false);
    }
  });
});
