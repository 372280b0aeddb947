import type { BrowserWindow, Dialog } from 'electron';
import { access } from 'node:fs/promises';
import { extname } from 'node:path';
import type { ShellFailure } from '../../core/document/shell.ts';
import { DOCUMENT_ENDING } from '../files/files.ts';

export type LeaveAnswer = 'save' | 'discard' | 'keep-editing';

export interface Dialogs {
  /** A document to open, or null. */
  chooseToOpen(): Promise<string | null>;
  /** Where to save, or null. The user was asked before an existing file is replaced. */
  chooseToSave(suggestedName: string): Promise<string | null>;
  /** Where to write a copy for other programs, with that ending, or null. */
  chooseCopy(suggestedName: string, ending: CopyKind): Promise<string | null>;
  askBeforeLeaving(title: string): Promise<LeaveAnswer>;
  tell(failure: ShellFailure): Promise<void>;
}

const FILTERS = [{ name: 'Chipdraft shop', extensions: [DOCUMENT_ENDING.slice(1)] }];
/** Files for other programs, by ending. */
const COPIES = { html: 'Web page', csv: 'Comma-separated values', pdf: 'PDF document' } as const;
export type CopyKind = keyof typeof COPIES;
const ANSWERS: readonly { readonly answer: LeaveAnswer; readonly label: string }[] = [
  { answer: 'save', label: 'Save' },
  { answer: 'discard', label: 'Discard' },
  { answer: 'keep-editing', label: 'Keep editing' },
];
const LONGEST_SUGGESTION = 120;

/** Questions to the user, each in front of the window. */
export function setupDialogs(
  dialog: Pick<Dialog, 'showOpenDialog' | 'showSaveDialog' | 'showMessageBox'>,
  window: () => BrowserWindow,
  exists: (path: string) => Promise<boolean> = isThere,
): Dialogs {
  return {
    async chooseToOpen() {
      const { canceled, filePaths } = await dialog.showOpenDialog(window(), {
        filters: [...FILTERS, { name: 'All files', extensions: ['*'] }],
        properties: ['openFile'],
      });
      return canceled ? null : (filePaths[0] ?? null);
    },
    async chooseToSave(suggestedName) {
      const { canceled, filePath } = await dialog.showSaveDialog(window(), {
        defaultPath: bareName(suggestedName),
        filters: FILTERS,
        properties: ['showOverwriteConfirmation', 'createDirectory'],
      });
      if (canceled || filePath === '') return null;
      const whole = `${filePath}${DOCUMENT_ENDING}`;
      // Some systems do not add the ending. It is added only where nothing is replaced that nobody was asked about.
      return extname(filePath) === '' && !(await exists(whole)) ? whole : filePath;
    },
    async chooseCopy(suggestedName, ending) {
      const { canceled, filePath } = await dialog.showSaveDialog(window(), {
        defaultPath: bareName(suggestedName, `.${ending}`),
        filters: [{ name: COPIES[ending], extensions: [ending] }],
        properties: ['showOverwriteConfirmation', 'createDirectory'],
      });
      if (canceled || filePath === '') return null;
      if (extname(filePath).toLowerCase() === `.${ending}`) return filePath;
      // never over a shop document, and never over a file that nobody was asked about
      const whole = `${filePath}.${ending}`;
      return (await exists(whole)) ? null : whole;
    },
    async askBeforeLeaving(title) {
      const { response } = await dialog.showMessageBox(window(), {
        type: 'warning',
        message: `Save the changes to ${title}?`,
        detail: 'Changes that are not saved are lost.',
        buttons: ANSWERS.map(({ label }) => label),
        defaultId: 0,
        cancelId: 2,
        noLink: true,
      });
      return ANSWERS[response]?.answer ?? 'keep-editing';
    },
    async tell({ message, remedy }) {
      await dialog.showMessageBox(window(), { type: 'error', message, detail: remedy, buttons: ['OK'] });
    },
  };
}

/** A file name without folders and without characters that some system refuses, ending as a document does or as told. */
export function bareName(suggested: string, ending: string = DOCUMENT_ENDING): string {
  const plain = suggested
    .split(/[/\\]/)
    .at(-1)!
    .replace(/[<>:"|?*\u0000-\u001f]/g, '-')
    .replace(/^[.\s]+|[.\s]+$/g, '');
  const stem = plain.endsWith(ending) ? plain.slice(0, -ending.length) : plain;
  return `${[...stem].slice(0, LONGEST_SUGGESTION).join('') || 'shop'}${ending}`;
}

const isThere = (path: string) =>
  access(path).then(
    () => true,
    () => false,
  );
