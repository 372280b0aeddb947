import { copyParts } from '../../core/document/commands/clip.ts';
import type { Clip, Edge } from '../../core/document/commands/command.ts';
import type { ExampleId } from '../../core/examples/index.ts';
import type { AppCommand } from './app-commands.ts';
import type { Files } from './files.svelte.ts';
import { shapeCommands } from './shape-commands.ts';
import type { Preferences } from './preferences.svelte.ts';
import type { Workbook } from './workbook.svelte.ts';

interface Reach {
  readonly workbook: Workbook;
  readonly files: Files;
  readonly preferences: Preferences;
  readonly openList: () => void;
  readonly openKeys: () => void;
}

const EXAMPLES: readonly { readonly id: ExampleId; readonly label: string }[] = [
  { id: 'one-router', label: 'New from example: one router' },
  { id: 'five-machines', label: 'New from example: five machines' },
  { id: 'bench-line', label: 'New from example: bench line' },
];

const EDGES: readonly (readonly [Edge, string])[] = [
  ['left', 'Align left edges'],
  ['centre-x', 'Align in a column'],
  ['right', 'Align right edges'],
  ['top', 'Align top edges'],
  ['centre-y', 'Align in a row'],
  ['bottom', 'Align bottom edges'],
];

/** What was copied last; the program keeps it, so that it can be pasted into another shop. */
let clip: Clip | null = null;

/** Every command of the program, in the order of the menus. */
export function commandTable({ workbook, files, preferences, openList, openKeys }: Reach): AppCommand[] {
  const some = () => workbook.selection.size > 0;
  const ids = () => [...workbook.selection];
  const edit = (command: Parameters<Workbook['run']>[0]) => {
    const done = workbook.run(command);
    if (!done.ok) files.tell('That cannot be done', [done.message, done.remedy]);
    else if (done.created.length > 0) workbook.select(done.created);
  };
  const copy = () => {
    clip = copyParts(workbook.document, ids());
  };
  return [
    {
      id: 'new-blank',
      label: 'New, empty shop',
      menu: 'File',
      // a browser keeps Mod+n to itself
      keys: ['Mod+Alt+n', 'Mod+n'],
      run: () => void files.newBlank(),
    },
    ...EXAMPLES.map(({ id, label }): AppCommand => ({
      id: `new-${id}`,
      label,
      menu: 'File',
      keys: [],
      run: () => void files.newFromExample(id),
    })),
    { id: 'open', label: 'Open…', menu: 'File', keys: ['Mod+o'], run: () => void files.open() },
    ...[0, 1, 2, 3].map((i): AppCommand => ({
      id: `recent-${i}`,
      label: `Open recent file ${i + 1}`,
      menu: 'File',
      keys: [],
      enabled: () => files.recent[i] !== undefined,
      now: () => (files.recent[i] ? `Open ${files.recent[i].name}` : `Recent file ${i + 1}: none`),
      run: () => {
        const recent = files.recent[i];
        if (recent) void files.openRecent(recent.token);
      },
    })),
    { id: 'save', label: 'Save', menu: 'File', keys: ['Mod+s'], run: () => void files.save() },
    { id: 'save-as', label: 'Save as…', menu: 'File', keys: ['Mod+Shift+s'], run: () => void files.saveAs() },
    {
      id: 'undo',
      label: 'Undo',
      menu: 'Edit',
      keys: ['Mod+z'],
      enabled: () => workbook.undoLabel !== null,
      now: () => (workbook.undoLabel === null ? 'Undo' : `Undo: ${workbook.undoLabel}`),
      run: () => workbook.undo(),
    },
    {
      id: 'redo',
      label: 'Redo',
      menu: 'Edit',
      keys: ['Mod+Shift+z', 'Mod+y'],
      enabled: () => workbook.redoLabel !== null,
      now: () => (workbook.redoLabel === null ? 'Redo' : `Redo: ${workbook.redoLabel}`),
      run: () => workbook.redo(),
    },
    { id: 'copy', label: 'Copy', menu: 'Edit', keys: ['Mod+c'], enabled: some, run: copy },
    {
      id: 'cut',
      label: 'Cut',
      menu: 'Edit',
      keys: ['Mod+x'],
      enabled: some,
      run: () => {
        copy();
        edit({ kind: 'remove', ids: ids() });
      },
    },
    {
      id: 'paste',
      label: 'Paste',
      menu: 'Edit',
      keys: ['Mod+v'],
      enabled: () => clip !== null,
      run: () => {
        if (clip) edit({ kind: 'paste', clip });
      },
    },
    {
      id: 'duplicate',
      label: 'Duplicate',
      menu: 'Edit',
      keys: ['Mod+d'],
      enabled: some,
      run: () => edit({ kind: 'duplicate', ids: ids() }),
    },
    {
      id: 'delete',
      label: 'Delete, and close the gap',
      menu: 'Edit',
      keys: ['Delete', 'Backspace'],
      enabled: some,
      run: () => edit({ kind: 'remove', ids: ids() }),
    },
    {
      id: 'select-all',
      label: 'Select all',
      menu: 'Edit',
      keys: ['Mod+a'],
      run: () =>
        workbook.select([
          ...workbook.document.things.map((t) => t.id),
          ...workbook.document.runs.map((r) => r.id),
        ]),
    },
    {
      id: 'to-fields',
      label: 'Go to the fields of the selection',
      menu: 'Edit',
      keys: ['F2'],
      enabled: () => workbook.selection.size === 1,
      run: () => workbook.goTo(ids()[0]!, ['name']),
    },
    {
      id: 'select-none',
      label: 'Select nothing',
      menu: 'Edit',
      keys: ['Escape'],
      enabled: some,
      run: () => workbook.clearSelection(),
    },
    ...EDGES.map(([edge, label]): AppCommand => ({
      id: `align-${edge}`,
      label,
      menu: 'Edit',
      keys: [],
      enabled: () => workbook.selection.size > 1,
      run: () => edit({ kind: 'align', ids: ids(), edge }),
    })),
    ...shapeCommands(workbook, files),
    { id: 'show-plan', label: 'Plan', menu: 'View', keys: ['1'], run: () => (workbook.screen = 'plan') },
    {
      id: 'show-ledger',
      label: 'Ledger',
      menu: 'View',
      keys: ['2'],
      run: () => (workbook.screen = 'ledger'),
    },
    { id: 'show-curve', label: 'Curves', menu: 'View', keys: ['3'], run: () => (workbook.screen = 'curve') },
    {
      id: 'show-fan-bench',
      label: 'Fan bench',
      menu: 'View',
      keys: ['4'],
      run: () => (workbook.screen = 'fan-bench'),
    },
    {
      id: 'show-upkeep',
      label: 'Upkeep',
      menu: 'View',
      keys: ['5'],
      run: () => (workbook.screen = 'upkeep'),
    },
    {
      id: 'show-sheets',
      label: 'Sheets',
      menu: 'View',
      keys: ['6'],
      run: () => (workbook.screen = 'sheets'),
    },
    ...(
      [
        ['zoom-in', 'Zoom in', 'zoomIn'],
        ['zoom-out', 'Zoom out', 'zoomOut'],
        ['zoom-fit', 'Show the whole shop', 'fit'],
      ] as const
    ).map(([id, label, act]): AppCommand => ({
      id,
      label,
      menu: 'View',
      keys: [],
      enabled: () => workbook.planView !== null,
      run: () => workbook.planView?.[act](),
    })),
    {
      id: 'fields',
      label: 'Show or fold the fields',
      menu: 'View',
      keys: ['F4'],
      run: () => (preferences.side = !preferences.side),
    },
    {
      id: 'theme',
      label: 'Light or dark',
      menu: 'View',
      keys: ['Mod+Shift+l'],
      run: () => (preferences.dark = !preferences.dark),
    },
    {
      id: 'units',
      label: 'Metric or US customary units',
      menu: 'View',
      keys: ['Mod+u'],
      run: () => (workbook.units = workbook.units === 'si' ? 'us' : 'si'),
    },
    {
      id: 'next-setting',
      label: 'Next gate setting',
      menu: 'Shop',
      keys: ['Mod+.'],
      enabled: () => workbook.settings.length > 1,
      run: () => {
        const at = workbook.settings.indexOf(workbook.setting);
        workbook.setSetting(workbook.settings[(at + 1) % workbook.settings.length]!);
      },
    },
    {
      id: 'add-fan',
      label: 'Add a fan to the bench',
      menu: 'Shop',
      keys: [],
      run: () => {
        const done = workbook.run({ kind: 'addFan' });
        if (done.ok) workbook.goTo(done.created[0]!, ['name']);
        else files.tell('That cannot be done', [done.message, done.remedy]);
      },
    },
    { id: 'find', label: 'Commands and places…', menu: 'Help', keys: ['Mod+k'], run: openList },
    { id: 'keys', label: 'Keys', menu: 'Help', keys: ['F1', '?'], run: openKeys },
    {
      id: 'guide',
      label: 'What to try first',
      menu: 'Help',
      keys: [],
      run: () => (preferences.guide = true),
    },
  ];
}
