/** One thing that the user can ask of the program, from a menu, a key, or the command list. */
export interface AppCommand {
  readonly id: string;
  readonly label: string;
  readonly menu: 'File' | 'Edit' | 'View' | 'Shop' | 'Help' | null;
  /** Key as pressed, `Mod` being Ctrl or Cmd; several may do the same. */
  readonly keys: readonly string[];
  readonly run: () => void;
  readonly enabled?: () => boolean;
  /** Label that depends on state, such as what would be undone. */
  readonly now?: () => string;
}

/** Text fields keep these keys for themselves. */
const EDITING = new Set(['Mod+z', 'Mod+Shift+z', 'Mod+y', 'Mod+a', 'Mod+c', 'Mod+x', 'Mod+v']);

/** The key that an event stands for, as the table writes it. */
export function keyOf(event: KeyboardEvent): string {
  const parts: string[] = [];
  if (event.ctrlKey || event.metaKey) parts.push('Mod');
  if (event.altKey) parts.push('Alt');
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  if (event.shiftKey && (key.length > 1 || /[a-z]/.test(key))) parts.push('Shift');
  parts.push(key);
  return parts.join('+');
}

/** Whether an event belongs to a field in which text is edited. */
export function isTextField(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.matches('input:not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable]')
  );
}

/** Finds what a key press asks for; null where it belongs to the field that has the focus. */
export function commandFor(commands: readonly AppCommand[], event: KeyboardEvent): AppCommand | null {
  const key = keyOf(event);
  const inText = isTextField(event.target);
  if (inText && (EDITING.has(key) || !key.startsWith('Mod'))) return null;
  const found = commands.find((command) => command.keys.includes(key));
  return found && (found.enabled?.() ?? true) ? found : null;
}

const MAC = typeof navigator !== 'undefined' && /mac/i.test(navigator.platform);

/** A key as menus and tooltips show it. */
export function keyLabel(key: string): string {
  return key
    .split('+')
    .map((part) =>
      part === 'Mod'
        ? MAC
          ? '⌘'
          : 'Ctrl'
        : part.length === 1
          ? part.toUpperCase()
          : part.replace('Arrow', ''),
    )
    .join('+');
}
