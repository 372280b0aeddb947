import * as z from 'zod/mini';
import type { FileHandle, RecentFile, Recovery, Shell, ShellFailure } from './shell.ts';

/** What a validator reads out of a stranger's value; null where it refuses it, or stumbles over it. */
export function readMessage<T>(schema: z.ZodMiniType<T>, raw: unknown): { readonly data: T } | null {
  try {
    const read = schema.safeParse(raw);
    return read.success ? { data: read.data } : null;
  } catch {
    // a group in the place of a text is asked how long it is, and need not know
    return null;
  }
}

/** A save that would write over what somebody else wrote since the user was last asked; in every shell. */
export const changedElsewhere = (name: string): ShellFailure => ({
  ok: false,
  reason: 'changed',
  message: `${name} was changed by another program a moment ago`,
  remedy: 'look at what is there, or save under another name',
});

/** Calls of the shell that cross from the page to the machine; the others are listeners inside the page. */
export type ShellCall = Exclude<keyof Shell, 'kind' | 'onMenu' | 'onOpened'>;

/** Longest document text that crosses, in characters: as the longest document that is read. */
export const LONGEST_MESSAGE = 50_000_000;
const LONGEST_NAME = 1024;

const NAME = z.string().check(z.maxLength(LONGEST_NAME));
const TEXT = z.string().check(z.maxLength(LONGEST_MESSAGE));
const MOMENT = z.number().check(z.gte(0));
const MESSAGE = z.string();

export const TOKEN: z.ZodMiniType<string> = z.string().check(z.minLength(1), z.maxLength(128));
export const FILE_HANDLE: z.ZodMiniType<FileHandle> = z.strictObject({ token: TOKEN, name: NAME });
export const RECENT_FILE: z.ZodMiniType<RecentFile> = z.strictObject({
  token: TOKEN,
  name: NAME,
  at: MOMENT,
});
export const RECOVERY: z.ZodMiniType<Recovery> = z.strictObject({
  text: TEXT,
  name: NAME,
  at: MOMENT,
  file: z.nullable(FILE_HANDLE),
});
const FAILURE: z.ZodMiniType<ShellFailure> = z.strictObject({
  ok: z.literal(false),
  reason: z.enum([
    'cancelled',
    'unreadable',
    'read-only',
    'disk-full',
    'gone',
    'changed',
    'not-possible-here',
  ]),
  message: MESSAGE,
  remedy: MESSAGE,
});
const OPENED = z.strictObject({ ok: z.literal(true), file: FILE_HANDLE, text: TEXT });
const PAPER = z.enum(['a4', 'letter']);
const COPIED = z.strictObject({ ok: z.literal(true), name: NAME });
const DONE = z.strictObject({ ok: z.literal(true) });
const SAVED = z.strictObject({ ok: z.literal(true), file: FILE_HANDLE });

/** What a call takes and what it gives, as validators whose types are held against `Shell`. */
export type ShellMessages = {
  readonly [Call in ShellCall]: {
    readonly takes: z.ZodMiniType<Parameters<Shell[Call]>>;
    readonly gives: z.ZodMiniType<Awaited<ReturnType<Shell[Call]>>>;
  };
};

/** One row for each call. Anything that is not written here is refused on the way in and on the way out. */
export const SHELL_MESSAGES: ShellMessages = {
  open: { takes: z.tuple([]), gives: z.union([OPENED, FAILURE]) },
  openRecent: { takes: z.tuple([TOKEN]), gives: z.union([OPENED, FAILURE]) },
  recent: { takes: z.tuple([]), gives: z.array(RECENT_FILE) },
  save: { takes: z.tuple([z.nullable(FILE_HANDLE), TEXT, NAME]), gives: z.union([SAVED, FAILURE]) },
  saveCopy: { takes: z.tuple([TEXT, z.enum(['html', 'csv']), NAME]), gives: z.union([COPIED, FAILURE]) },
  savePdf: { takes: z.tuple([TEXT, PAPER, NAME]), gives: z.union([COPIED, FAILURE]) },
  printPage: { takes: z.tuple([TEXT, PAPER]), gives: z.union([DONE, FAILURE]) },
  changedOutside: { takes: z.tuple([FILE_HANDLE]), gives: z.boolean() },
  keepRecovery: { takes: z.tuple([z.nullable(RECOVERY)]), gives: z.void() },
  recovery: { takes: z.tuple([]), gives: z.nullable(RECOVERY) },
  setUnsaved: { takes: z.tuple([z.boolean(), NAME]), gives: z.void() },
};

/** What the machine tells the page without being asked. */
export const SHELL_EVENTS = {
  menu: z.tuple([NAME]),
  opened: z.tuple([FILE_HANDLE, TEXT]),
} as const;

/** A file dropped on the window: where it is. Only the preload can learn that, from the drop itself. */
export const DROPPED = z.tuple([z.string().check(z.minLength(1), z.maxLength(32_768))]);
