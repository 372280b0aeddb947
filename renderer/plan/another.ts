interface Named {
  readonly id: string;
}

/** Whether a list of things is of another document: an edit keeps most things as they are, or moves them all. */
export function isAnother(before: readonly Named[], now: readonly Named[]): boolean {
  if (now.length === 0 || (before.length === 0 && now.length === 1)) return false;
  const known = new Set<Named>(before);
  if (now.some((thing) => known.has(thing))) return false;
  return before.length !== now.length || now.some((thing, i) => thing.id !== before[i]!.id);
}
