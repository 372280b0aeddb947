// Looks at the packages: from the lock file that each has a checksum, comes from a registry and that none but those below
// runs a script when it is installed; then asks the registry for known weaknesses. A registry that does not answer is said
// plainly and is no success.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const TOP = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Packages that may run a script when they are installed, and why. */
export const MAY_RUN = {
  esbuild: 'checks the program for this machine, which came as a package of its own; only builds use it',
};
/** Weaknesses that are known and stay, by the advisory's name, and why. */
export const ARGUED = {};

export const CLEAN = 0;
export const WEAK = 1;
export const NOT_RUN = 3;

/** What is wrong with the packages of a lock file; empty when nothing is. */
export function lockFaults({ packages }) {
  return Object.entries(packages).flatMap(([path, entry]) => {
    if (path === '') return [];
    const name = path.replace(/^.*node_modules\//, '');
    return [
      ...(entry.integrity ? [] : [`${name}: no checksum`]),
      ...(/^https:/.test(entry.resolved ?? 'https:') ? [] : [`${name}: does not come from a registry`]),
      ...(entry.hasInstallScript && !Object.hasOwn(MAY_RUN, name)
        ? [`${name}: runs a script when it is installed`]
        : []),
    ];
  });
}

/** What the registry's answer to `npm audit --json` means: a code and lines to print. */
export function verdict(text) {
  let answer;
  try {
    answer = JSON.parse(text);
  } catch {
    return { code: NOT_RUN, lines: ['weaknesses: NOT RUN, npm gave no answer that can be read'] };
  }
  if (!answer.vulnerabilities) {
    const why = answer.message ?? answer.error?.summary ?? 'no reason given';
    return { code: NOT_RUN, lines: [`weaknesses: NOT RUN, the registry does not answer: ${why}`] };
  }
  const found = Object.values(answer.vulnerabilities).flatMap(({ name, severity, via }) =>
    via
      .filter((v) => typeof v === 'object')
      .map((v) => ({
        id: v.url?.split('/').pop() ?? `${v.source}`,
        text: `${name}: ${severity}, ${v.title}`,
      })),
  );
  const open = found.filter(({ id }) => !Object.hasOwn(ARGUED, id));
  const argued = found.filter(({ id }) => Object.hasOwn(ARGUED, id));
  return {
    code: open.length > 0 ? WEAK : CLEAN,
    lines: [
      ...open.map(({ id, text: what }) => `weakness ${id}: ${what}`),
      ...argued.map(({ id, text: what }) => `argued ${id}: ${what}: ${ARGUED[id]}`),
      `weaknesses: ${open.length} open, ${argued.length} argued`,
    ],
  };
}

function main() {
  const faults = lockFaults(JSON.parse(readFileSync(join(TOP, 'package-lock.json'), 'utf8')));
  for (const fault of faults) console.log(fault);
  console.log(`lock file: ${faults.length} faults`);
  const asked = spawnSync('npm', ['audit', '--json'], {
    cwd: TOP,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  const { code, lines } = verdict(asked.stdout ?? '');
  for (const line of lines) console.log(line);
  process.exitCode = faults.length > 0 ? WEAK : code;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) main();
