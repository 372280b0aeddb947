import { DROPPED, SHELL_EVENTS, SHELL_MESSAGES } from '../core/document/shell-messages.ts';
import type { ShellCall } from '../core/document/shell-messages.ts';
import type { Shell } from '../core/document/shell.ts';

/** The name under which the page finds the shell on `window`. */
export const SHELL_KEY = 'chipdraftShell';

/** Arguments of a call, as the page gives them. */
export type Takes<Call extends ShellCall> = Parameters<Shell[Call]>;
/** What a call resolves to. */
export type Gives<Call extends ShellCall> = Awaited<ReturnType<Shell[Call]>>;

const row = <Call extends ShellCall>(call: Call) => ({ channel: `shell:${call}`, ...SHELL_MESSAGES[call] });

/** Every channel from page to machine; both ends are built from this table, and nothing else is answered. */
export const CALLS = {
  open: row('open'),
  openRecent: row('openRecent'),
  recent: row('recent'),
  save: row('save'),
  saveCopy: row('saveCopy'),
  savePdf: row('savePdf'),
  printPage: row('printPage'),
  changedOutside: row('changedOutside'),
  keepRecovery: row('keepRecovery'),
  recovery: row('recovery'),
  setUnsaved: row('setUnsaved'),
} as const satisfies { readonly [Call in ShellCall]: ReturnType<typeof row<Call>> };

/** From the preload's drop listener to the machine; the page itself has no way to call it. */
export const DROP_CHANNEL = { channel: 'shell:dropped', takes: DROPPED } as const;

/** Every channel from machine to page. */
export const EVENTS = {
  menu: { channel: 'shell:menu', carries: SHELL_EVENTS.menu },
  opened: { channel: 'shell:opened', carries: SHELL_EVENTS.opened },
} as const;

export type ShellEvent = keyof typeof EVENTS;
/** What an event carries. */
export type Carries = {
  readonly menu: Parameters<Parameters<Shell['onMenu']>[0]>;
  readonly opened: Parameters<Parameters<Shell['onOpened']>[0]>;
};
