import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDocument, readValue } from '../../../core/document/read.ts';
import { documentToJson, writeDocument } from '../../../core/document/write.ts';
import { EXAMPLES } from '../../../core/examples/index.ts';
import type { ExampleId } from '../../../core/examples/index.ts';
import { documentOf, fileOf } from './samples.ts';

const IDS = Object.keys(EXAMPLES) as ExampleId[];

function again(text: string) {
  const read = readDocument(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

describe('writing', () => {
  it.each(IDS)('gives %s back as it was read', (id) => {
    const document = documentOf(id);
    expect(again(writeDocument(document))).toEqual(document);
  });

  it('keeps what was typed beside its SI value', () => {
    const file = fileOf('one-router');
    file.runs[0].diameter = '3 in + 1/2 in';
    file.runs[1].diameter = 0.125;
    const read = readValue(file);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const written = documentToJson(read.document) as { runs: { diameter: unknown }[] };
    expect(written.runs[0]!.diameter).toEqual({ text: '3 in + 1/2 in', si: 0.0889 });
    expect(written.runs[1]!.diameter).toBe(0.125);
  });

  it('leaves out what was left out', () => {
    const file = fileOf('one-router');
    delete file.note;
    const read = readValue(file);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    // of the shop itself; a fan of its list has a note of its own
    expect(writeDocument(read.document)).not.toMatch(/^ {2}"note"/m);
  });
});

const length = fc.oneof(
  fc.double({ min: 0.02, max: 2, noNaN: true }),
  fc.integer({ min: 20, max: 2000 }).map((mm) => `${mm} mm`),
  fc
    .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 11 }))
    .map(([ft, inch]) => `${ft} ft + ${inch} in`),
  fc.integer({ min: 1, max: 9 }).map((n) => `reach * ${n}`),
);
const piece = fc.oneof(
  fc.record({
    kind: fc.constant('straight'),
    length,
    material: fc.constantFrom('pvc-pipe', 'hose-smooth-bore'),
  }),
  fc.record({
    kind: fc.constant('elbow'),
    style: fc.constantFrom('smooth', 'five-piece'),
    angle: fc.integer({ min: 20, max: 90 }).map((a) => `${a} deg`),
    radiusRatio: fc.double({ min: 0.75, max: 3, noNaN: true }),
  }),
  fc.record(
    { kind: fc.constant('given'), coefficient: fc.double({ min: 0, max: 5, noNaN: true }) },
    { requiredKeys: ['kind', 'coefficient'] },
  ),
  fc.record({ kind: fc.constant('reducer'), to: fc.integer({ min: 80, max: 200 }).map((mm) => `${mm} mm`) }),
);
const change = fc.record({
  id: fc.constantFrom(...IDS),
  name: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }),
  note: fc.string({ maxLength: 200 }),
  units: fc.constantFrom('si', 'us'),
  pieces: fc.array(piece, { maxLength: 6 }),
  run: fc.nat(20),
  opening: fc.oneof(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.integer({ min: 0, max: 100 }).map((p) => `${p} %`),
  ),
});

describe('any valid document', () => {
  it('comes back equal, and its text is then stable', () => {
    fc.assert(
      fc.property(change, ({ id, name, note, units, pieces, run, opening }) => {
        const file = fileOf(id);
        if (!file.values.some((row: { name: string }) => row.name === 'reach')) {
          file.values.push({ name: 'reach', text: '0.4 m' });
        }
        Object.assign(file, { name, note, units });
        file.runs[run % file.runs.length].pieces.push(...pieces);
        const gates = file.settings[0].gates;
        for (const gate of Object.keys(gates)) gates[gate] = opening;
        const read = readValue(file);
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        const text = writeDocument(read.document);
        const back = again(text);
        expect(back).toEqual(read.document);
        expect(writeDocument(back)).toBe(text);
      }),
      { seed: 20240611, numRuns: 100 },
    );
  }, 30_000);
});
