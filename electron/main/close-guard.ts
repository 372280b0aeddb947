import type { LeaveAnswer } from './dialogs.ts';

export interface CloseGuardOptions {
  readonly ask: () => Promise<LeaveAnswer>;
  /** Tells the page to save. */
  readonly requestSave: () => void;
  /** Forgets what was kept since the program started. */
  readonly settle: () => Promise<void>;
  readonly close: () => void;
}

/** Keeps the window open while leaving would lose work that the user has not decided about. */
export interface CloseGuard {
  onClose(event: { preventDefault(): void }): void;
  setUnsaved(unsaved: boolean): void;
  /** A save came to its end. */
  saved(ok: boolean): void;
}

export function closeGuard({ ask, requestSave, settle, close }: CloseGuardOptions): CloseGuard {
  let unsaved = false;
  let decided = false;
  let asking = false;
  /** The user chose to save and leave, and the save is under way. */
  let leaving: 'no' | 'saving' | 'saved' = 'no';

  const leave = async () => {
    // A recovery that cannot be removed is offered at the next start, which is no reason to stay open.
    await settle().catch(() => undefined);
    decided = true;
    close();
  };
  const leaveSaved = async () => {
    await settle().catch(() => undefined);
    // Edited in the meantime: the user has gone on working.
    if (!unsaved) await leave();
  };
  const decide = async () => {
    const answer = await ask();
    if (answer === 'discard') await leave();
    else if (answer === 'save') {
      leaving = 'saving';
      requestSave();
    }
  };

  return {
    onClose(event) {
      if (decided || !unsaved) return;
      event.preventDefault();
      if (asking) return;
      asking = true;
      leaving = 'no';
      void decide()
        // If the question cannot be asked, the window stays: that loses nothing.
        .catch(() => undefined)
        .finally(() => (asking = false));
    },
    setUnsaved(value) {
      unsaved = value;
      if (!value && leaving !== 'no') void leaveSaved();
      // A save that is under way may still be followed by its own word; a finished one has been.
      if (!value || leaving === 'saved') leaving = 'no';
    },
    saved(ok) {
      if (leaving === 'saving') leaving = ok ? 'saved' : 'no';
    },
  };
}
