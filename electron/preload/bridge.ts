import type { IpcRenderer } from 'electron';
import type { Shell } from '../../core/document/shell.ts';
import { readMessage } from '../../core/document/shell-messages.ts';
import type { ShellCall } from '../../core/document/shell-messages.ts';
import { CALLS, EVENTS } from '../channels.ts';
import type { Carries, Gives, ShellEvent, Takes } from '../channels.ts';

/** The two ways of speaking with the machine that the bridge needs. */
export type Line = Pick<IpcRenderer, 'invoke' | 'on'>;

/**
 * The desktop program's `Shell`, as the page sees it. The page gets these functions and never the line itself.
 * What the machine sends before anybody listens is kept for the first listener.
 */
export function makeShell(line: Line): Shell {
  const call =
    <Call extends ShellCall>(name: Call) =>
    async (...given: Takes<Call>): Promise<Gives<Call>> =>
      CALLS[name].gives.parse(await line.invoke(CALLS[name].channel, ...given)) as Gives<Call>;
  const setUnsaved = call('setUnsaved');
  return {
    kind: 'desktop',
    open: call('open'),
    openRecent: call('openRecent'),
    recent: call('recent'),
    save: call('save'),
    saveCopy: call('saveCopy'),
    savePdf: call('savePdf'),
    printPage: call('printPage'),
    changedOutside: call('changedOutside'),
    keepRecovery: call('keepRecovery'),
    recovery: call('recovery'),
    setUnsaved: (unsaved, title) => {
      // A refusal is reported by the machine's side; the page has nothing to wait for.
      setUnsaved(unsaved, title).catch(() => undefined);
    },
    onMenu: listenersOf(line, 'menu'),
    onOpened: listenersOf(line, 'opened'),
  } satisfies Shell;
}

function listenersOf<Name extends ShellEvent>(line: Line, name: Name) {
  type Listener = (...carried: Carries[Name]) => void;
  const listeners = new Set<Listener>();
  let early: Carries[Name][] = [];
  line.on(EVENTS[name].channel, (_event, ...carried: unknown[]) => {
    const read = readMessage<unknown>(EVENTS[name].carries, carried);
    if (read === null) return;
    const message = read.data as unknown as Carries[Name];
    if (listeners.size === 0) early.push(message);
    for (const listener of listeners) listener(...message);
  });
  return (listener: Listener): (() => void) => {
    // One entry for each call, so that a function given twice is also dropped twice.
    const entry: Listener = (...carried) => listener(...carried);
    listeners.add(entry);
    const waiting = early;
    early = [];
    for (const message of waiting) listener(...message);
    return () => void listeners.delete(entry);
  };
}
