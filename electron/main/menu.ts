import type { Menu as ElectronMenu, MenuItemConstructorOptions } from 'electron';
import type { MenuCommand, RecentFile } from '../../core/document/shell.ts';

type Role = NonNullable<MenuItemConstructorOptions['role']>;

/** A row of the menu as data. A command goes to the page under its id; a role is done by Electron itself. */
export type MenuRow =
  | {
      readonly kind: 'command';
      readonly id: MenuCommand;
      readonly label: string;
      readonly accelerator?: string;
    }
  | { readonly kind: 'role'; readonly role: Role; readonly label?: string; readonly accelerator?: string }
  | { readonly kind: 'recent'; readonly token: string; readonly label: string }
  | { readonly kind: 'nothing'; readonly label: string }
  | { readonly kind: 'line' }
  | { readonly kind: 'menu'; readonly label: string; readonly rows: readonly MenuRow[] };

const LINE: MenuRow = { kind: 'line' };
const command = (id: MenuCommand, label: string, accelerator?: string): MenuRow =>
  accelerator === undefined ? { kind: 'command', id, label } : { kind: 'command', id, label, accelerator };
const role = (of: Role, label: string, accelerator: string): MenuRow => ({
  kind: 'role',
  role: of,
  label,
  accelerator,
});

/**
 * The menu. Cut, copy and paste are Electron's own, which reach the page as clipboard events, in a field and on the
 * drawing alike; undo, redo and select all are the page's commands, as only it knows what was edited last.
 */
export function menuRows(platform: NodeJS.Platform, recent: readonly RecentFile[]): readonly MenuRow[] {
  const mac = platform === 'darwin';
  const recentRows: MenuRow[] = recent.map(({ token, name }) => ({ kind: 'recent', token, label: name }));
  const file: MenuRow[] = [
    command('new-blank', 'New', 'CmdOrCtrl+N'),
    command('open', 'Open…', 'CmdOrCtrl+O'),
    {
      kind: 'menu',
      label: 'Open recent',
      rows: recentRows.length > 0 ? recentRows : [{ kind: 'nothing', label: 'No file yet' }],
    },
    LINE,
    command('save', 'Save', 'CmdOrCtrl+S'),
    command('save-as', 'Save as…', 'CmdOrCtrl+Shift+S'),
    LINE,
    role(mac ? 'close' : 'quit', mac ? 'Close' : 'Quit', mac ? 'Cmd+W' : 'Ctrl+Q'),
  ];
  const edit: MenuRow[] = [
    command('undo', 'Undo', 'CmdOrCtrl+Z'),
    command('redo', 'Redo', mac ? 'Cmd+Shift+Z' : 'Ctrl+Y'),
    LINE,
    role('cut', 'Cut', 'CmdOrCtrl+X'),
    role('copy', 'Copy', 'CmdOrCtrl+C'),
    role('paste', 'Paste', 'CmdOrCtrl+V'),
    LINE,
    command('select-all', 'Select all', 'CmdOrCtrl+A'),
  ];
  const view: MenuRow[] = [
    command('zoom-in', 'Zoom in', 'CmdOrCtrl+Plus'),
    command('zoom-out', 'Zoom out', 'CmdOrCtrl+-'),
    command('zoom-fit', 'Show the whole shop', 'CmdOrCtrl+0'),
    LINE,
    role('zoomIn', 'Larger text', 'CmdOrCtrl+Alt+Plus'),
    role('zoomOut', 'Smaller text', 'CmdOrCtrl+Alt+-'),
    role('resetZoom', 'Usual text', 'CmdOrCtrl+Alt+0'),
    LINE,
    role('togglefullscreen', 'Full screen', mac ? 'Ctrl+Cmd+F' : 'F11'),
  ];
  return [
    ...(mac ? [{ kind: 'role', role: 'appMenu' } as const] : []),
    { kind: 'menu', label: 'File', rows: file },
    { kind: 'menu', label: 'Edit', rows: edit },
    { kind: 'menu', label: 'View', rows: view },
    ...(mac ? [{ kind: 'role', role: 'windowMenu' } as const] : []),
    { kind: 'menu', label: 'Help', rows: [command('guide', 'Guide'), command('keys', 'Keys', 'F1')] },
  ];
}

export interface MenuActions {
  readonly command: (id: MenuCommand) => void;
  readonly openRecent: (token: string) => void;
}

/** The menu as Electron takes it. */
export function toTemplate(rows: readonly MenuRow[], actions: MenuActions): MenuItemConstructorOptions[] {
  return rows.map((row): MenuItemConstructorOptions => {
    switch (row.kind) {
      case 'line':
        return { type: 'separator' };
      case 'menu':
        return { label: row.label, submenu: toTemplate(row.rows, actions) };
      case 'nothing':
        return { label: row.label, enabled: false };
      case 'recent':
        // In a menu `&` marks a letter; a name's own is doubled.
        return { label: row.label.replaceAll('&', '&&'), click: () => actions.openRecent(row.token) };
      case 'command': {
        const { id, label, accelerator } = row;
        return { id, label, ...(accelerator && { accelerator }), click: () => actions.command(id) };
      }
      case 'role': {
        const { role: of, label, accelerator } = row;
        return { role: of, ...(label && { label }), ...(accelerator && { accelerator }) };
      }
    }
  });
}

/** Shows the menu; the returned function shows it anew when the recent files have changed. */
export function setupMenu(
  menu: Pick<typeof ElectronMenu, 'buildFromTemplate' | 'setApplicationMenu'>,
  platform: NodeJS.Platform,
  recent: () => readonly RecentFile[],
  actions: MenuActions,
): () => void {
  const show = () => {
    menu.setApplicationMenu(menu.buildFromTemplate(toTemplate(menuRows(platform, recent()), actions)));
  };
  show();
  return show;
}
