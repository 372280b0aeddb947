import type { Command } from '../../core/document/commands/command.ts';
import type { AppCommand } from './app-commands.ts';
import type { Files } from './files.svelte.ts';
import type { Workbook } from './workbook.svelte.ts';

/** Commands that change the shape of what is selected on the plan. */
export function shapeCommands(workbook: Workbook, files: Files): AppCommand[] {
  const chosen = () => (workbook.selection.size === 1 ? [...workbook.selection][0] : undefined);
  const wye = () => workbook.document.things.find(({ id, kind }) => id === chosen() && kind === 'wye');
  const typedRun = () => workbook.document.runs.find((run) => run.id === chosen() && !run.route);
  const edit = (command: Command): boolean => {
    const done = workbook.run(command);
    if (!done.ok) files.tell('That cannot be done', [done.message, done.remedy]);
    return done.ok;
  };
  return [
    {
      id: 'mirror-wye',
      label: 'Mirror the wye: branch on the other side',
      menu: 'Edit',
      keys: ['m'],
      enabled: () => wye() !== undefined,
      run: () => void edit({ kind: 'mirror', id: wye()!.id }),
    },
    {
      id: 'lay-run',
      label: 'Draw the typed run on the plan',
      menu: 'Edit',
      keys: [],
      enabled: () => typedRun() !== undefined,
      run: () => {
        // the step is called by what was done
        if (edit({ kind: 'layRun', run: typedRun()!.id }))
          files.tell('The run is drawn', [workbook.undoLabel ?? '', 'Undo makes it typed again.']);
      },
    },
  ];
}
