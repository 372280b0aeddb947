import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CLEAN, lockFaults, NOT_RUN, verdict, WEAK } from '../../../build/scripts/audit.mjs';

const sound = { integrity: 'sha512-x', resolved: 'https://somewhere.example/a.tgz' };
const ofOne = (entry: object, name = 'made-up') => ({
  packages: { '': {}, [`node_modules/${name}`]: entry },
});

describe('the lock file', () => {
  it('of this project has no faults', () => {
    const path = fileURLToPath(new URL('../../../package-lock.json', import.meta.url));
    const lock = JSON.parse(readFileSync(path, 'utf8')) as Parameters<typeof lockFaults>[0];
    expect(Object.keys(lock.packages).length).toBeGreaterThan(100);
    expect(lockFaults(lock)).toEqual([]);
  });

  it('is refused for a package without a checksum, from elsewhere, or with a script of its own', () => {
    expect(lockFaults(ofOne(sound))).toEqual([]);
    expect(lockFaults(ofOne({ ...sound, integrity: undefined }))).toEqual(['made-up: no checksum']);
    expect(lockFaults(ofOne({ ...sound, resolved: 'git+ssh://somewhere.example/a' }))).toEqual([
      'made-up: does not come from a registry',
    ]);
    expect(lockFaults(ofOne({ ...sound, hasInstallScript: true }))).toEqual([
      'made-up: runs a script when it is installed',
    ]);
    expect(lockFaults(ofOne({ ...sound, hasInstallScript: true }, 'esbuild'))).toEqual([]);
  });
});

describe('the answer about weaknesses', () => {
  const weak = {
    vulnerabilities: {
      a: {
        name: 'a',
        severity: 'high',
        via: [{ source: 1, title: 'reads too far', url: 'https://x.example/GHSA-1' }],
      },
      b: { name: 'b', severity: 'high', via: ['a'] },
    },
  };

  it('is clean only where the registry said so', () => {
    expect(verdict('{"vulnerabilities":{}}')).toEqual({
      code: CLEAN,
      lines: ['weaknesses: 0 open, 0 argued'],
    });
    expect(verdict('{"message":"405 Method Not Allowed"}').code).toBe(NOT_RUN);
    expect(verdict('{"message":"405 Method Not Allowed"}').lines[0]).toContain('NOT RUN');
    expect(verdict('npm fell over').code).toBe(NOT_RUN);
  });

  it('tells each weakness once, at the package that has it', () => {
    const { code, lines } = verdict(JSON.stringify(weak));
    expect(code).toBe(WEAK);
    expect(lines).toEqual(['weakness GHSA-1: a: high, reads too far', 'weaknesses: 1 open, 0 argued']);
  });
});
