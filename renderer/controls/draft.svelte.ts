/** What is being typed into a field, until it is taken or thrown away. */
export interface Draft {
  readonly text: string;
  readonly dirty: boolean;
  /** Why the last text was not taken. */
  readonly refused: string | null;
  type(text: string): void;
  /** Takes a text at once, as a button does. */
  replace(text: string): void;
  commit(): void;
  restore(): void;
  /** Enter takes the text, Escape brings the old one back. */
  key(event: KeyboardEvent): void;
}

/** Takes a text; answers with what is wrong with it, or null. */
export type Take = (text: string) => string | null;

/**
 * Keeps what is typed apart from the document: the document changes once, when the text is taken, and a text that is
 * refused stays in its field with the reason. A field that leaves the screen half typed gives up its text first, to
 * what it was opened for.
 *
 * @param shown - text of the document's value
 * @param identity - changes whenever the value does
 * @param taker - who takes the text of the field as it now is
 */
export function keepDraft(shown: () => string, identity: () => unknown, taker: () => Take): Draft {
  let typed = $state<string | null>(null);
  let refused = $state<string | null>(null);
  // the taker of the moment when typing began, so that a selection made meanwhile does not get the text
  let take: Take | null = null;
  let opened: unknown = undefined;
  let before = '';

  const forget = () => {
    typed = null;
    refused = null;
    take = null;
  };
  const commit = () => {
    if (typed === null) return;
    if (typed === before) return forget();
    const wrong = (take ?? taker())(typed);
    if (wrong === null) forget();
    else refused = wrong;
  };

  // a value that changes by other ways, such as undo, stands before what was typed
  $effect.pre(() => {
    const now = identity();
    if (typed !== null && now !== opened) forget();
  });

  $effect(() => () => {
    const [text, last] = [typed, take];
    // the field loses the focus as it goes, and must not give up its text twice
    forget();
    if (text !== null && text !== before) last?.(text);
  });

  return {
    get text() {
      return typed ?? shown();
    },
    get dirty() {
      return typed !== null;
    },
    get refused() {
      return refused;
    },
    type(text) {
      if (typed === null) {
        take = taker();
        opened = identity();
        before = shown();
      }
      typed = text;
      refused = null;
    },
    replace(text) {
      take = taker();
      opened = identity();
      before = shown();
      typed = text;
      commit();
    },
    commit,
    restore: forget,
    key(event) {
      if (event.key === 'Enter' && !event.isComposing && !event.shiftKey) {
        event.preventDefault();
        commit();
      } else if (event.key === 'Escape' && typed !== null) {
        event.preventDefault();
        event.stopPropagation();
        forget();
      }
    },
  };
}
