/**
 * What the workbook asks of the machine that it runs on. The desktop program and the plain browser each fulfil it;
 * nothing else in the app knows which. Every call is asynchronous; a refusal is a value, not an exception.
 */

/** A file that the user chose; the shell alone knows where it is. */
export interface FileHandle {
  /** Opaque; only the shell that made it can use it. */
  readonly token: string;
  /** Name without folders, for titles. */
  readonly name: string;
}

/** A failure in words: which file, why, and what would mend it. */
export interface ShellFailure {
  readonly ok: false;
  /** `cancelled` needs no word to the user. */
  readonly reason:
    'cancelled' | 'unreadable' | 'read-only' | 'disk-full' | 'gone' | 'changed' | 'not-possible-here';
  readonly message: string;
  readonly remedy: string;
}

export type ShellResult<T> = ({ readonly ok: true } & T) | ShellFailure;

export interface RecentFile {
  readonly token: string;
  readonly name: string;
  /** When it was last opened or saved, milliseconds since 1970. */
  readonly at: number;
}

/** The newest edit that was not saved when the program ended. */
export interface Recovery {
  readonly text: string;
  readonly name: string;
  readonly at: number;
  readonly file: FileHandle | null;
}

/** What a page can be printed on. */
export type PrintPaper = 'a4' | 'letter';
/** Files for other programs that the workbook writes as text. */
export type CopyEnding = 'html' | 'csv';

/** Commands that a menu of the shell may send; ids of the app's command table. */
export type MenuCommand = string;

export interface Shell {
  readonly kind: 'desktop' | 'browser';
  /** Lets the user choose a document and reads it. */
  open(): Promise<ShellResult<{ readonly file: FileHandle; readonly text: string }>>;
  openRecent(token: string): Promise<ShellResult<{ readonly file: FileHandle; readonly text: string }>>;
  recent(): Promise<readonly RecentFile[]>;
  /**
   * Writes to a file whole or not at all; `file: null` lets the user choose one. Where somebody else wrote it since this
   * program read, wrote or last asked `changedOutside` about it, nothing is written and the reason is `changed`.
   */
  save(
    file: FileHandle | null,
    text: string,
    suggestedName: string,
  ): Promise<ShellResult<{ readonly file: FileHandle }>>;
  /** Writes a copy for other programs to a file that the user chooses, whole or not at all; gives its name. */
  saveCopy(
    text: string,
    ending: CopyEnding,
    suggestedName: string,
  ): Promise<ShellResult<{ readonly name: string }>>;
  /** The same for a page that is printed into a PDF file. The page is whole in itself and runs nothing. */
  savePdf(
    html: string,
    paper: PrintPaper,
    suggestedName: string,
  ): Promise<ShellResult<{ readonly name: string }>>;
  /** Lets the user print a page. */
  printPage(html: string, paper: PrintPaper): Promise<ShellResult<object>>;
  /** Whether the file was changed by somebody else since this program last read or wrote it. */
  changedOutside(file: FileHandle): Promise<boolean>;
  /** Keeps the newest edit in case the program ends; null forgets it. */
  keepRecovery(recovery: Recovery | null): Promise<void>;
  recovery(): Promise<Recovery | null>;
  /** Tells the window whether leaving would lose work. */
  setUnsaved(unsaved: boolean, title: string): void;
  /** Menu commands, and a document opened from outside; returns a function that stops listening. */
  onMenu(listener: (command: MenuCommand) => void): () => void;
  onOpened(listener: (file: FileHandle, text: string) => void): () => void;
}
