// Whether the desktop window can be opened on this machine. Looks at files only: it never loads the electron package,
// which would fetch what is missing.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const GET_IT = 'run `npx install-electron` once while online';

/**
 * @param {string} top - the project's folder
 * @param {{ platform: string, env: Record<string, string | undefined>, userId: number | null }} machine
 * @returns {{ program: string, why: null } | { program: null, why: string }}
 */
export function findElectron(top, machine = thisMachine()) {
  const none = (why) => ({ program: null, why });
  const program = electronProgram(top, machine.env);
  if (program === null) return none(`Electron's program is not downloaded; to have it, ${GET_IT}`);
  if (machine.platform === 'linux') {
    if (!machine.env.DISPLAY && !machine.env.WAYLAND_DISPLAY) return none('there is no screen to open it on');
    if (machine.userId === 0) return none('it is not opened as root, where its sandbox would be off');
  }
  return { program, why: null };
}

/** Where Electron's program lies, or null where it was not downloaded. */
export function electronProgram(top, env = process.env) {
  const home = join(top, 'node_modules', 'electron');
  const named = join(home, 'path.txt');
  if (!existsSync(named)) return null;
  const program = join(
    env.ELECTRON_OVERRIDE_DIST_PATH ?? join(home, 'dist'),
    readFileSync(named, 'utf8').trim(),
  );
  return existsSync(program) ? program : null;
}

function thisMachine() {
  return { platform: process.platform, env: process.env, userId: process.getuid?.() ?? null };
}
