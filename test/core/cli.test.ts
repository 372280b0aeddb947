import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { book, changed, file, folder, good } from './book.ts';
import type { Raw } from './book.ts';
import * as s from './network/shop.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

describe('what is in order ends with 0', () => {
  it('solves every setting, or the one that is named', () => {
    const path = file(good());
    const all = book(['solve', path], path);
    expect(all.code).toBe(0);
    expect(all.out).toContain('SETTING "open"');
    expect(all.out).toContain('SETTING "half"');
    expect(all.out).toContain('ALL SETTINGS');
    const one = book(['solve', path, '--setting', 'half'], path);
    expect(one.code).toBe(0);
    expect(one.out).not.toContain('SETTING "open"');
  });
  it('prints in the units asked for, else those of the document', () => {
    const path = file(good());
    expect(book(['solve', path], path).out).toContain('m3/h');
    expect(book(['solve', path, '--units', 'us'], path).out).toContain('cfm');
    const slow = changed((r) => (r.runs[0]!.requiredVelocity = 90));
    const us = book(['solve', slow, '--units', 'us'], slow).out;
    expect(us).toContain('too slow');
    expect(us).not.toMatch(/m3\/h|m\/s|Pa\b/);
    expect(book(['curve', path, '--setting', 'open', '--units', 'us'], path).out).toContain('in wg');
  });
  it('prints JSON for a machine', () => {
    const path = file(good());
    const solved = JSON.parse(book(['solve', path, '--json'], path).out) as { settings: { name: string }[] };
    expect(solved.settings.map((x) => x.name)).toEqual(['open', 'half']);
    const curve = JSON.parse(book(['curve', path, '--setting', 'half', '--json'], path).out) as {
      setting: string;
      points: unknown[];
    };
    expect(curve.setting).toBe('half');
    expect(curve.points.length).toBeGreaterThan(30);
  });
  it('checks a document', () => {
    const path = file(good());
    const outcome = book(['check', path], path);
    expect(outcome.code).toBe(0);
    expect(outcome.out).toContain('in order');
  });
  it('sweeps the fan that is named', () => {
    const path = file(good());
    expect(book(['curve', path, '--setting', 'open', '--fan', 'fan'], path).out).toContain('fan fan');
  });
  it('helps', () => {
    expect(book(['--help']).out).toMatch(/^usage:/);
  });
  it('reads a file with a byte order mark', () => {
    const path = file(`\ufeff${JSON.stringify(good())}`);
    expect(book(['check', path], path).code).toBe(0);
  });
});

describe('wrong usage ends with 1', () => {
  const cases: readonly (readonly [string, (path: string) => string[], RegExp])[] = [
    ['no command', () => [], /name a command[\s\S]*usage:/],
    ['an unknown command', (p) => ['resolve', p], /no command is named "resolve"/],
    ['a command of the language itself', (p) => ['constructor', p], /no command is named "constructor"/],
    ['no file', () => ['solve'], /name a shop document/],
    ['two files', (p) => ['solve', p, p], /one file at a time/],
    ['an unknown option', (p) => ['solve', p, '--fast'], /--fast/],
    ['an option without its value', (p) => ['solve', p, '--setting'], /--setting/],
    ['unknown units', (p) => ['solve', p, '--units', 'xx'], /si or us, not "xx"/],
    ['an unknown setting', (p) => ['solve', p, '--setting', 'none'], /"none"[\s\S]*"open", "half"/],
    [
      'an unknown setting of a curve',
      (p) => ['curve', p, '--setting', 'none'],
      /"none"[\s\S]*"open", "half"/,
    ],
    ['an unknown fan', (p) => ['curve', p, '--setting', 'open', '--fan', 'no'], /"no"; there are fan/],
    ['a curve without a setting', (p) => ['curve', p], /--setting NAME/],
  ];
  it.each(cases)('%s', (_name, args, message) => {
    const path = file(good());
    const outcome = book(args(path), path);
    expect(outcome.code).toBe(1);
    expect(outcome.out).toBe('');
    expect(outcome.err).toMatch(message);
  });
});

describe('a shop without a solution ends with 3', () => {
  const cases: readonly (readonly [string, (raw: Raw) => void, RegExp])[] = [
    ['every gate shut', (r) => (r.settings = [{ name: 'open', gates: { G1: 0 } }]), /no open path/],
    [
      'a loop without any opening',
      (r) => {
        r.things = [s.STEADY_FAN, { id: 'J', kind: 'joint' }];
        r.runs = [
          s.run('R1', 'J', 'fan', [s.straight(2), s.gate('G1')]),
          s.run('R2', 'fan', 'J', [s.straight(2)]),
        ];
      },
      /loop without any opening/,
    ],
    [
      'a pressure that the fan cannot overcome',
      (r) => (r.things[2] = s.exhaust('out', { pressure: 5000 })),
      /fan cannot overcome/,
    ],
    [
      'a fan beyond its curve',
      (r) =>
        (r.things[1] = s.fan([
          [0, 3000],
          [0.03, 2900],
        ])),
      /beyond its curve/,
    ],
  ];
  it.each(cases)('%s', (_name, change, message) => {
    const path = changed(change);
    const outcome = book(['solve', path], path);
    expect(outcome.code).toBe(3);
    expect(outcome.err).toContain(path);
    expect(outcome.err).toMatch(message);
    expect(outcome.err).toContain('"open"');
    expect(outcome.err).toContain('remedy:');
    // what there is to read is still printed
    expect(outcome.out).toContain('no solution');
    const json = JSON.parse(book(['solve', path, '--json'], path).out) as {
      settings: { converged: boolean; reason: string | null }[];
    };
    expect(json.settings[0]!.converged).toBe(false);
    expect(json.settings[0]!.reason).not.toBeNull();
  });

  it('a curve in a setting where nothing can flow, or of a shop without a fan', () => {
    const shut = changed((r) => (r.settings = [{ name: 'open', gates: { G1: 0 } }]));
    const outcome = book(['curve', shut, '--setting', 'open'], shut);
    expect(outcome.code).toBe(3);
    expect(outcome.err).toMatch(/no system curve[\s\S]*remedy:/);
    const still = changed((r) => {
      r.things = [s.port('saw'), s.exhaust()];
      r.runs = [s.run('R1', 'saw', 'out', [s.gate('G1')])];
    });
    expect(book(['curve', still, '--setting', 'open'], still).code).toBe(3);
  });
});

describe('the program itself', () => {
  it('answers with exit code and streams, and writes nothing beside its bundle', () => {
    const path = file(good(), 'real.json');
    const script = join(ROOT, 'build/scripts/book.mjs');
    const cwd = join(folder, 'elsewhere');
    mkdirSync(cwd);
    const start = (...args: string[]) =>
      spawnSync(process.execPath, [script, ...args], { cwd, encoding: 'utf8' });
    const solved = start('solve', path, '--json');
    expect([solved.status, solved.stderr]).toEqual([0, '']);
    expect((JSON.parse(solved.stdout) as { document: string }).document).toBe('Bench shop');
    expect(start('solve', path, '--nonsense').status).toBe(1);
    const bad = start('check', file('{', 'broken.json'));
    expect([bad.status, bad.stdout]).toEqual([2, '']);
    expect(bad.stderr).toContain('broken.json');
    expect(bad.stderr).not.toMatch(/\n\s+at /);
    const raw = good();
    raw.settings = [{ name: 'open', gates: { G1: 0 } }];
    expect(start('solve', file(raw, 'shut.json')).status).toBe(3);
    expect(readdirSync(cwd)).toEqual([]);
  }, 60_000);
});
