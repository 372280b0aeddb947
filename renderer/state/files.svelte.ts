import { EXAMPLES } from '../../core/examples/index.ts';
import type { ExampleId } from '../../core/examples/index.ts';
import { blankDocument } from '../../core/document/commands/defaults.ts';
import { readDocument, readValue } from '../../core/document/read.ts';
import type { ReadResult } from '../../core/document/read.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import type { FileHandle, RecentFile, Recovery, Shell } from '../../core/document/shell.ts';
import { writeDocument } from '../../core/document/write.ts';
import { AtRest } from './at-rest.ts';
import type { Workbook } from './workbook.svelte.ts';

/** Something to tell the user, until it is dismissed. */
export interface Notice {
  readonly title: string;
  readonly lines: readonly string[];
  readonly kind: 'error' | 'note';
}

/** A question with answers; resolves with the id of the one chosen, null where it was put aside. */
export interface Question {
  readonly title: string;
  readonly text: string;
  readonly answers: readonly { readonly id: string; readonly label: string; readonly primary?: boolean }[];
  readonly resolve: (answer: string | null) => void;
}

/** How long the newest edit may wait before it is kept against a crash [ms]. */
const RECOVERY_AFTER = 400;
/** Long dragging is kept this often [ms]. */
const RECOVERY_WITHIN = 2000;

/** The first document that a new user sees: the one-router example. */
export function firstDocument(): ShopDocument {
  const read = readValue(EXAMPLES['one-router']);
  if (!read.ok) throw new Error(read.problems[0]?.message ?? 'the example cannot be read');
  return read.document;
}

/** Opening, saving, recovering: what stands between the workbook and the shell. */
export class Files {
  file = $state.raw<FileHandle | null>(null);
  saved = $state.raw<ShopDocument | null>(null);
  recent = $state.raw<readonly RecentFile[]>([]);
  notice = $state.raw<Notice | null>(null);
  question = $state.raw<Question | null>(null);
  recovery = $state.raw<Recovery | null>(null);
  busy = $state(false);
  private toldNotKept = false;
  private readonly keeping = new AtRest(() => void this.keep(), RECOVERY_AFTER, RECOVERY_WITHIN);

  constructor(
    private readonly workbook: Workbook,
    readonly shell: Shell,
  ) {
    this.saved = workbook.document;
    void shell.recovery().then((found) => (this.recovery = found));
    void this.listRecent();
    shell.onOpened((file, text) => void this.openText(text, file));
  }

  get unsaved(): boolean {
    return this.workbook.document !== this.saved;
  }

  get title(): string {
    return this.file?.name ?? this.workbook.document.name;
  }

  /** Called after every edit: keeps the newest one, and tells the window. */
  edited(): void {
    this.shell.setUnsaved(this.unsaved, this.title);
    this.keeping.ask();
  }

  private async keep(): Promise<void> {
    // an offer that waits for an answer is not written over
    if (this.recovery !== null) return;
    const recovery = this.unsaved
      ? { text: writeDocument(this.workbook.document), name: this.title, at: Date.now(), file: this.file }
      : null;
    await this.shell.keepRecovery(recovery).catch(() => this.tellNotKept());
  }

  /** Once: edits go on without the net, and the user should know. */
  private tellNotKept(): void {
    if (this.toldNotKept) return;
    this.toldNotKept = true;
    this.tell('Edits are not kept against a crash', [
      'Chipdraft could not write to the folder of its own settings.',
      'Free some space on that disk, and save often until then.',
    ]);
  }

  async newBlank(): Promise<void> {
    if (await this.mayLeave()) this.show(blankDocument(this.workbook.units), null);
  }

  async newFromExample(id: ExampleId): Promise<void> {
    if (!(await this.mayLeave())) return;
    const read = readValue(EXAMPLES[id]);
    if (read.ok) this.show(read.document, null);
  }

  async open(): Promise<void> {
    if (!(await this.mayLeave())) return;
    const opened = await this.shell.open();
    if (opened.ok) await this.openText(opened.text, opened.file, true);
    else if (opened.reason !== 'cancelled')
      this.tell('The file was not opened', [opened.message, opened.remedy]);
  }

  async openRecent(token: string): Promise<void> {
    if (!(await this.mayLeave())) return;
    const opened = await this.shell.openRecent(token);
    if (opened.ok) await this.openText(opened.text, opened.file, true);
    else if (opened.reason !== 'cancelled')
      this.tell('The file was not opened', [opened.message, opened.remedy]);
  }

  /** Opens the text of a file that came from anywhere; a broken one leaves the open document as it is. */
  async openText(text: string, file: FileHandle | null, left = false): Promise<void> {
    const read: ReadResult = readDocument(text, { allowIncomplete: true });
    if (!read.ok) {
      const lines = read.problems.slice(0, 6).map((p) => `${p.message} (${p.remedy})`);
      this.tell(`${file?.name ?? 'The file'} cannot be opened`, [...lines, 'The open shop is as it was.']);
      return;
    }
    if (!left && !(await this.mayLeave())) return;
    this.show(read.document, file);
    await this.listRecent();
  }

  async save(): Promise<boolean> {
    return this.saveTo(this.file);
  }

  async saveAs(): Promise<boolean> {
    return this.saveTo(null);
  }

  private async saveTo(file: FileHandle | null): Promise<boolean> {
    if (file && (await this.shell.changedOutside(file))) {
      const answer = await this.ask(
        'The file was changed on disk',
        `${file.name} was changed by another program since it was opened here.`,
        [
          { id: 'over', label: 'Save over it' },
          { id: 'as', label: 'Save as another file', primary: true },
          { id: 'no', label: 'Do not save' },
        ],
      );
      if (answer === 'as') return this.saveTo(null);
      if (answer !== 'over') return false;
    }
    const document = this.workbook.document;
    this.busy = true;
    const saved = await this.shell.save(file, writeDocument(document), `${slug(document.name)}.json`);
    this.busy = false;
    // somebody else was quicker by a moment: the question is asked about what they wrote
    if (!saved.ok && saved.reason === 'changed' && file) return this.saveTo(file);
    if (!saved.ok) {
      if (saved.reason !== 'cancelled') {
        this.tell('The shop was not saved', [
          saved.message,
          saved.remedy,
          'Nothing is lost: the edits are still here.',
        ]);
      }
      return false;
    }
    this.file = saved.file;
    this.saved = document;
    this.edited();
    await this.listRecent();
    return true;
  }

  /** Takes up the edit that was left by a crash. */
  async recover(): Promise<void> {
    const found = this.recovery;
    this.recovery = null;
    if (!found) return;
    const read = readDocument(found.text, { allowIncomplete: true });
    if (!read.ok) {
      this.tell('The unsaved edits cannot be read', [read.problems[0]?.message ?? '']);
      return;
    }
    this.show(read.document, found.file);
    // it is not saved yet
    this.saved = null;
    this.edited();
  }

  async discardRecovery(): Promise<void> {
    this.recovery = null;
    await this.shell.keepRecovery(null);
  }

  dismiss(): void {
    this.notice = null;
  }

  tell(title: string, lines: readonly string[], kind: Notice['kind'] = 'error'): void {
    this.notice = { title, lines: lines.filter((line) => line !== ''), kind };
  }

  ask(title: string, text: string, answers: Question['answers']): Promise<string | null> {
    return new Promise((resolve) => {
      this.question = {
        title,
        text,
        answers,
        resolve: (answer) => {
          this.question = null;
          resolve(answer);
        },
      };
    });
  }

  /** Asks what to do with unsaved edits before another document takes their place. */
  private async mayLeave(): Promise<boolean> {
    if (!this.unsaved) return true;
    const answer = await this.ask('Keep your changes?', `"${this.title}" has changes that are not saved.`, [
      { id: 'save', label: 'Save', primary: true },
      { id: 'drop', label: 'Discard them' },
      { id: 'stay', label: 'Keep editing' },
    ]);
    if (answer === 'drop') return true;
    return answer === 'save' && (await this.save());
  }

  private show(document: ShopDocument, file: FileHandle | null): void {
    this.file = file;
    this.workbook.load(document);
    this.saved = this.workbook.document;
    this.edited();
  }

  private async listRecent(): Promise<void> {
    this.recent = await this.shell.recent().catch(() => []);
  }
}

const slug = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '') || 'shop';
