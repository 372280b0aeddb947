import { Ajv } from 'ajv';
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import settings from '../../build/config/packager.mjs';
import { PACKAGER } from '../../build/scripts/package.mjs';
import { DOCUMENT_ENDING } from '../../electron/files/files.ts';

const TOP = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string) => readFileSync(join(TOP, path), 'utf8');
const SCHEMA = JSON.parse(read('test/electron/data/packager-schema.json')) as {
  $comment: string;
  definitions: Record<string, { properties: Record<string, unknown> }>;
};

/** The settings as this test reads them. */
const made = settings as unknown as {
  appId: string;
  productName: string;
  asar: boolean;
  files: string[];
  extraResources: { from: string; to: string }[];
  directories: { buildResources: string; output: string };
  electronFuses: Record<string, boolean>;
  linux: { target: string[]; icon: string; mimeTypes: string[] };
  win: { target: string[]; icon: string };
  nsis: { include: string };
  mac: { target: string[]; icon: string; fileAssociations: { ext: string; rank: string }[] };
};

describe("the packager's settings", () => {
  const valid = new Ajv({ strict: false, allErrors: true }).compile(SCHEMA);

  it("hold to the packager's own schema, of the version that is asked for", () => {
    valid(settings);
    expect(valid.errors).toBeNull();
    expect(SCHEMA.$comment).toContain(` ${PACKAGER.version} `);
  });

  it.each([
    ['a word that is not one', { asarr: true }],
    ['a fuse that is not one', { electronFuses: { ...made.electronFuses, runAsNodes: false } }],
    ['a fuse that is not a switch', { electronFuses: { ...made.electronFuses, runAsNode: 'no' } }],
    ['a kind of installer where it does not belong', { nsis: { target: ['dmg'] } }],
    ['files that are a number', { files: 3 }],
  ])('would not hold with %s', (_, change) => {
    expect(valid({ ...settings, ...change })).toBe(false);
  });

  it('make installers for Linux, Windows and macOS', () => {
    expect([made.linux.target, made.win.target, made.mac.target]).toEqual([
      ['AppImage', 'deb'],
      ['nsis'],
      ['dmg'],
    ]);
    expect([made.appId, made.productName]).toEqual(['chipdraft.workbook', 'Chipdraft']);
  });

  it('set each fuse that there is, and all to the safe side', () => {
    const { resetAdHocDarwinSignature, ...fuses } = made.electronFuses;
    expect(fuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
    expect(resetAdHocDarwinSignature).toBe(true);
    const known = Object.keys(SCHEMA.definitions['FuseOptionsV1']!.properties);
    expect(Object.keys(made.electronFuses).sort()).toEqual(known.sort());
    expect(made.asar).toBe(true);
  });

  it('put the two bundles in, and no package, source or installer', () => {
    expect(made.files).toEqual(['dist/electron/**', 'dist/renderer/**', '!node_modules/**']);
    const { main } = JSON.parse(read('package.json')) as { main: string };
    expect(main).toMatch(/^dist\/electron\//);
    expect(made.directories.output).toBe('dist/installers');
    expect(made.extraResources.map(({ from }) => from)).toEqual([
      'LICENSE',
      'dist/renderer/THIRD-PARTY.txt',
      'dist/electron/THIRD-PARTY.txt',
    ]);
  });
});

describe('the files of shops', () => {
  it('are offered to Chipdraft on each system under the ending that it saves with', () => {
    expect(made.mac.fileAssociations.map(({ ext }) => `.${ext}`)).toEqual([DOCUMENT_ENDING]);
    expect(made.linux.mimeTypes).toEqual(['application/json']);
    expect(read(made.nsis.include)).toContain(`Classes\\${DOCUMENT_ENDING}\\OpenWithProgids`);
  });

  it('stay with the program that has them, as their ending is not ours alone', () => {
    expect(made.mac.fileAssociations[0]!.rank).toBe('Alternate');
    expect(settings).not.toHaveProperty('fileAssociations');
    expect(settings).not.toHaveProperty('win.fileAssociations');
    expect(read(made.nsis.include)).not.toMatch(/Classes\\\.json" ""/);
  });

  it('leave nothing behind on Windows: each key that is written is deleted', () => {
    const [install, uninstall] = read(made.nsis.include).split('!macro customUnInstall');
    const keys = [...install!.matchAll(/Write\w+ SHELL_CONTEXT "([^"]+)" "([^"]*)"/g)];
    expect(keys.length).toBeGreaterThan(3);
    const whole = [...uninstall!.matchAll(/DeleteRegKey SHELL_CONTEXT "([^"]+)"/g)].map(([, key]) => key!);
    for (const [, key, value] of keys) {
      const gone = whole.some((root) => key === root || key!.startsWith(`${root}\\`));
      expect(gone || uninstall!.includes(`DeleteRegValue SHELL_CONTEXT "${key}" "${value}"`), key).toBe(true);
    }
  });
});

describe('the icon', () => {
  const sizeOf = (path: string) => {
    const png = readFileSync(join(TOP, path));
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    return [png.readUInt32BE(16), png.readUInt32BE(20)];
  };

  it.each([16, 32, 48, 64, 128, 256, 512, 1024])('is there at %i pixels', (size) => {
    expect(sizeOf(`${made.linux.icon}/${size}x${size}.png`)).toEqual([size, size]);
  });

  it('is large enough for what the packager makes of it: 256 pixels for Windows, 512 for macOS', () => {
    expect(sizeOf(made.win.icon)[0]).toBeGreaterThanOrEqual(256);
    expect(sizeOf(made.mac.icon)[0]).toBeGreaterThanOrEqual(512);
    expect(existsSync(join(TOP, made.directories.buildResources, 'icon.svg'))).toBe(true);
  });
});

// The compiler of Windows installers is a Debian package of its own; without it this is not run, and not counted.
const compiler = spawnSync('makensis', ['-VERSION']).status === 0;
describe.skipIf(!compiler)(
  `installer.nsh${compiler ? '' : ' - NOT RUN: no makensis here (package nsis)'}`,
  () => {
    it('is read by the compiler of installers without a warning', () => {
      const script = [
        'Unicode true',
        'Name x',
        'OutFile /dev/null',
        'Var appExe',
        `!include "${join(TOP, made.nsis.include)}"`,
        'Section\nStrCpy $appExe "$INSTDIR"\n!insertmacro customInstall\nWriteUninstaller "$INSTDIR\\u.exe"\nSectionEnd',
        'Section Uninstall\n!insertmacro customUnInstall\nSectionEnd',
      ].join('\n');
      const { stdout, stderr, status } = spawnSync('makensis', ['-V2', '-WX', '-'], {
        input: script,
        encoding: 'utf8',
      });
      expect([status, stderr, stdout]).toEqual([0, '', '']);
    });
  },
);
