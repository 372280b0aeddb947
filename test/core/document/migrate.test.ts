import { describe, expect, it } from 'vitest';
import { migrate } from '../../../core/document/migrate.ts';
import { FORMAT_VERSION } from '../../../core/document/schema.ts';

const file = (version: unknown) => ({ format: 'chipdraft-shop', version, name: 'A shop' });

describe('migrate', () => {
  it('leaves a document of this version as it is', () => {
    const raw = file(FORMAT_VERSION);
    expect(migrate(raw)).toEqual({ ok: true, value: raw });
  });

  it('brings every version that was ever written up to this one', () => {
    for (let version = 1; version <= FORMAT_VERSION; version++) {
      const migrated = migrate(file(version));
      expect(migrated.ok && migrated.value.version, `version ${version}`).toBe(FORMAT_VERSION);
    }
  });

  it.each([FORMAT_VERSION + 1, 1000, Number.MAX_SAFE_INTEGER])('refuses version %s as newer', (version) => {
    const migrated = migrate(file(version));
    if (migrated.ok) throw new Error('it was taken');
    expect(migrated.problem.path).toBe('version');
    expect(migrated.problem.message).toContain(String(version));
    expect(migrated.problem.remedy).toMatch(/newer/);
  });

  it.each([0, -1, 1.5, '1', null, undefined, Infinity, NaN, true, [], {}])(
    'refuses version %s',
    (version) => {
      const migrated = migrate(file(version));
      if (migrated.ok) throw new Error('it was taken');
      expect(migrated.problem.path).toBe('version');
      expect(migrated.problem.message).not.toContain('[object');
    },
  );
});
