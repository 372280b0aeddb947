import { describe, expect, it } from 'vitest';
import { menuRows, toTemplate } from '../../../electron/main/menu.ts';
import type { MenuRow } from '../../../electron/main/menu.ts';

const PLATFORMS = ['linux', 'win32', 'darwin'] as const;
const flat = (rows: readonly MenuRow[]): MenuRow[] =>
  rows.flatMap((row) => (row.kind === 'menu' ? [row, ...flat(row.rows)] : [row]));
const idle = { command: () => undefined, openRecent: () => undefined };

describe('the menu', () => {
  it.each(PLATFORMS)('on %s holds every command once, with no key used twice', (platform) => {
    const rows = flat(menuRows(platform, []));
    const ids = rows.flatMap((row) => (row.kind === 'command' ? [row.id] : []));
    expect(ids).toEqual([
      ...['new-blank', 'open', 'save', 'save-as', 'undo', 'redo', 'select-all'],
      ...['zoom-in', 'zoom-out', 'zoom-fit', 'guide', 'keys'],
    ]);
    const roles = rows.flatMap((row) => (row.kind === 'role' ? [row.role] : []));
    expect(roles).toEqual(
      expect.arrayContaining(['cut', 'copy', 'paste', platform === 'darwin' ? 'close' : 'quit']),
    );
    const keys = rows.flatMap((row) => ('accelerator' in row && row.accelerator ? [row.accelerator] : []));
    const bare = keys.map((key) => key.replace('CmdOrCtrl', platform === 'darwin' ? 'Cmd' : 'Ctrl'));
    expect(new Set(bare).size).toBe(bare.length);
  });

  it('has no row that reloads the page or opens the developer tools', () => {
    const roles = PLATFORMS.flatMap((platform) => flat(menuRows(platform, []))).map((row) =>
      row.kind === 'role' ? row.role : '',
    );
    expect(roles.filter((role) => /reload|devtools/i.test(role))).toEqual([]);
  });

  it('sends a command under its id', () => {
    const sent: string[] = [];
    const template = toTemplate(menuRows('linux', []), { ...idle, command: (id) => sent.push(id) });
    const file = template[0]!.submenu as { label?: string; click?: () => void }[];
    file.find(({ label }) => label === 'Save as…')!.click!();
    expect(sent).toEqual(['save-as']);
  });

  it('opens a recent file by its token, and shows an ampersand as one', () => {
    const opened: string[] = [];
    const recent = [{ token: 'abc', name: 'boats & ukuleles.json', at: 1 }];
    const template = toTemplate(menuRows('linux', recent), {
      ...idle,
      openRecent: (token) => opened.push(token),
    });
    const file = template[0]!.submenu as {
      label?: string;
      submenu?: { label: string; click: () => void }[];
    }[];
    const [row] = file.find(({ label }) => label === 'Open recent')!.submenu!;
    expect(row!.label).toBe('boats && ukuleles.json');
    row!.click();
    expect(opened).toEqual(['abc']);
  });

  it('says so where there is no recent file', () => {
    const file = toTemplate(menuRows('linux', []), idle)[0]!.submenu as {
      label?: string;
      submenu?: unknown;
    }[];
    expect(file.find(({ label }) => label === 'Open recent')!.submenu).toEqual([
      { label: 'No file yet', enabled: false },
    ]);
  });
});
