import { describe, expect, it } from 'vitest';
import { BASES } from '../../../core/quantities/sourced.ts';
import { countByBasis, KIND_WORDS, weakestFirst } from '../../../core/sources/about.ts';
import type { SourceRow } from '../../../core/sources/source-row.ts';
import { book, changed, file, good } from '../book.ts';
import { rowsOf } from '../sources/shops.ts';
import { exampleDocument } from '../upkeep/examples.ts';

const SHOP = 'core/examples/five-machines.json';
const flat = (text: string) => text.replace(/\s+/g, ' ');

describe('sources', () => {
  it('prints every row under its kind, with the count by basis at the head', () => {
    const { rows } = rowsOf(exampleDocument('five-machines'));
    const { out } = book(['sources', SHOP]);
    const [head] = out.split('\n\n');
    expect(flat(head!)).toContain(weakestFirst(rows));
    const counts = countByBasis(rows);
    for (const basis of BASES) expect(out).toMatch(new RegExp(`^ *${counts[basis]}  ${basis} `, 'm'));
    for (const kind of new Set(rows.map((row) => row.kind))) {
      expect(out).toContain(`${KIND_WORDS[kind]} (${rows.filter((row) => row.kind === kind).length})`);
    }
    for (const { value } of rows) if (value !== null) expect(out).toContain(value);
  });

  it('gives the same as JSON', () => {
    const { rows } = rowsOf(exampleDocument('five-machines'));
    const json = JSON.parse(book(['sources', SHOP, '--json']).out);
    expect(json.rows).toEqual(JSON.parse(JSON.stringify(rows)));
    expect(json.id).toBeNull();
    expect(json.counts).toEqual(countByBasis(rows));
  });

  it('tells what one run, piece, thing or fan of the list rests on', () => {
    const whats = (id: string, path = SHOP) =>
      (JSON.parse(book(['sources', path, '--id', id, '--json']).out).rows as SourceRow[]).map(
        ({ what }) => what,
      );
    expect(whats('R3').join()).toContain('booth');
    expect(whats('R3').join()).not.toContain('cyclone');
    expect(whats('cyclone').join()).toContain('Casal');
    expect(whats('G-saw').join()).toContain('slide gate');
    expect(whats('printed-wheel', 'core/examples/one-router.json').join()).toContain('brushless');
    expect(book(['sources', SHOP, '--id', 'R3']).out).toMatch(/^R3: what the results rest on/);
  });

  it('prints in the units asked for', () => {
    expect(book(['sources', SHOP, '--units', 'si']).out).toContain('m/s');
    expect(book(['sources', SHOP, '--units', 'us']).out).toContain('fpm');
  });

  it('refuses a name that is not there, and a document that cannot be', () => {
    const outcome = book(['sources', SHOP, '--id', 'no-such']);
    expect(outcome.code).toBe(1);
    expect(outcome.err).toContain('"no-such"');
    expect(book(['sources', SHOP, '--id', '__proto__']).code).toBe(1);
    const wide = changed((raw) => (raw.things[1] = { ...raw.things[1]!, outletDiameter: '-1 m' }));
    expect(book(['sources', wide], wide).code).toBe(2);
  });

  it('tells of a shop that has no solution too: what it would rest on', () => {
    const raw = good();
    raw['settings'] = [{ name: 'shut', gates: { G1: 0 } }];
    const path = file(raw, 'shut.json');
    expect(book(['solve', path]).code).toBe(3);
    expect(book(['sources', path], path).out).toContain('Friction factor of turbulent flow');
  });
});
