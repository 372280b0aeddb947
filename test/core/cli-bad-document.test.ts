import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { book, changed, file, folder, good } from './book.ts';
import type { Raw } from './book.ts';
import * as s from './network/shop.ts';

describe('a bad document ends with 2', () => {
  const texts: readonly (readonly [string, string, RegExp])[] = [
    ['empty', '', /empty/],
    ['white space only', ' \n', /empty/],
    ['truncated', JSON.stringify(good()).slice(0, 300), /not whole JSON/],
    ['not JSON', 'hello', /not whole JSON/],
    ['a list', '[]', /no shop document/],
    ['of another kind', '{"format":"recipe"}', /format/],
    ['of a newer version', JSON.stringify({ ...good(), version: 99 }), /version[\s\S]*newer/],
    ['with a version that is no number', JSON.stringify({ ...good(), version: 'one' }), /version/],
    ['with an unknown field', JSON.stringify({ ...good(), colour: 'red' }), /unknown field "colour"/],
  ];
  it.each(texts)('%s', (_name, text, message) => {
    const path = file(text);
    for (const command of [['solve'], ['check'], ['curve', '--setting', 'open']]) {
      const outcome = book([command[0]!, path, ...command.slice(1)], path);
      expect(outcome.code).toBe(2);
      expect(outcome.out).toBe('');
      expect(outcome.err).toContain(path);
      expect(outcome.err).toMatch(message);
      expect(outcome.err).toContain('remedy:');
    }
  });

  const changes: readonly (readonly [string, (raw: Raw) => void, RegExp])[] = [
    [
      'a negative size',
      (r) => (r.runs[0]!.diameter = '-100 mm'),
      /runs\[0\].*\.diameter: `-100 mm` must be above/,
    ],
    ['a wrong unit', (r) => (r.runs[0]!.diameter = '3 kg'), /runs\[0\].*\.diameter: `3 kg` is a mass/],
    ['a run to nowhere', (r) => (r.runs[0]!.to = 'attic'), /nothing is named "attic"/],
    ['two things of one name', (r) => r.things.push(s.port('saw')), /the name "saw" is taken/],
    ['a run named as a thing', (r) => (r.runs[1]!.id = 'saw'), /the name "saw" is taken/],
    ['a fan with one point', (r) => (r.things[1] = s.fan([[0.1, 900]])), /two points or more/],
    [
      'a hood that is not in the catalogue',
      (r) => (r.things[0]!.hood = { kind: 'entry', entry: 'x' }),
      /entry/,
    ],
    [
      'a material that is not in the catalogue',
      (r) => (r.runs[0]!.material = 'glass'),
      /material[\s\S]*galvanised/,
    ],
    ['a dust that is not in the catalogue', (r) => (r.things[0]!.dust = 'glitter'), /dust[\s\S]*sawdust-dry/],
    [
      'a dust of less than no spread',
      (r) => {
        r.things[0]!.dust = 'own';
        r.dusts = [
          {
            id: 'own',
            requiredVelocity: 18,
            particleDensity: 600,
            bulkDensity: 200,
            medianSize: 1e-4,
            geometricDeviation: 0.5,
            combustible: true,
          },
        ];
      },
      /geometricDeviation/,
    ],
    ['a shop without runs', (r) => (r.runs = []), /no run is joined/],
  ];
  it.each(changes)('%s', (_name, change, message) => {
    const path = changed(change);
    for (const command of ['solve', 'check']) {
      const outcome = book([command, path], path);
      expect(outcome.code).toBe(2);
      expect(outcome.out).toBe('');
      expect(outcome.err).toContain(path);
      expect(outcome.err).toMatch(message);
      expect(outcome.err).toContain('remedy:');
    }
  });

  it('a file that is not there, or a folder', () => {
    for (const path of [join(folder, 'none.json'), folder]) {
      const outcome = book(['solve', path]);
      expect(outcome.code).toBe(2);
      expect(outcome.err).toContain(path);
      expect(outcome.err).toContain('remedy:');
    }
  });
});
