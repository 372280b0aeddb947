import type { ShellFailure } from '../../core/document/shell.ts';

type Deed = 'read' | 'saved';
type Reason = ShellFailure['reason'];

interface Row {
  readonly reason: Reason;
  readonly cause: string;
  readonly remedy: string;
}

const LOCKED: Row = {
  reason: 'read-only',
  cause: 'writing there is not allowed',
  remedy: 'save under another name or in another folder, or have the permission changed',
};
const FULL: Row = {
  reason: 'disk-full',
  cause: 'the disk is full',
  remedy: 'free some space, or save on another disk',
};
const GONE: Row = {
  reason: 'gone',
  cause: 'the file or its folder is not there any more',
  remedy: 'look for it under its new name or place, or save it anew',
};
const BUSY: Row = {
  reason: 'unreadable',
  cause: 'another program keeps the file to itself',
  remedy: 'close the other program and try again',
};
const FOLDER: Row = {
  reason: 'unreadable',
  cause: 'it is a folder or a device, not a file',
  remedy: 'choose a file',
};

/** What the operating system's codes mean to the user. A code that is not here is told as it is. */
const ROWS: Readonly<Record<string, Row>> = {
  EROFS: { ...LOCKED, cause: 'the disk is read-only' },
  EACCES: LOCKED,
  EPERM: LOCKED,
  ENOSPC: FULL,
  EDQUOT: { ...FULL, cause: 'your share of the disk is used up' },
  EFBIG: { ...FULL, cause: 'the file is too large for that disk' },
  ENOENT: GONE,
  ENOTDIR: GONE,
  ESTALE: GONE,
  EBUSY: BUSY,
  ETXTBSY: BUSY,
  EISDIR: FOLDER,
  ENAMETOOLONG: {
    reason: 'not-possible-here',
    cause: 'the name is too long for that disk',
    remedy: 'choose a shorter name',
  },
};

/** For reading, a permission that is missing is a file that cannot be read, not a place that cannot be written. */
const NOT_PERMITTED: Row = {
  reason: 'unreadable',
  cause: 'reading it is not allowed',
  remedy: 'have the permission changed, or open another file',
};

/** The operating system's code for what went wrong, or null. */
export function codeOf(error: unknown): string | null {
  const code = (error as { code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : null;
}

/** A failure in words: the file by name, the cause, the remedy. */
export function fileFailure(name: string, deed: Deed, error: unknown): ShellFailure {
  const code = codeOf(error);
  const refused = deed === 'read' && (code === 'EACCES' || code === 'EPERM');
  const row = refused ? NOT_PERMITTED : code === null ? undefined : ROWS[code];
  const cause =
    row?.cause ?? `the system says ${code ?? (error instanceof Error ? error.message : 'nothing')}`;
  return {
    ok: false,
    reason: row?.reason ?? (deed === 'read' ? 'unreadable' : 'not-possible-here'),
    message: `${name} could not be ${deed}: ${cause}`,
    remedy:
      row?.remedy ?? (deed === 'read' ? 'try again, or open another file' : 'try again, or save elsewhere'),
  };
}

/** A failure that did not come from the operating system. */
export function refusal(reason: Reason, message: string, remedy: string): ShellFailure {
  return { ok: false, reason, message, remedy };
}

export const CANCELLED: ShellFailure = refusal('cancelled', '', '');
