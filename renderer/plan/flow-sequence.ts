/** What `flowSequence` must know of a run. */
interface Way {
  readonly id: string;
  readonly from: string;
  readonly to: string;
}

const thingOf = (end: string): string => end.split('.', 1)[0]!;

/**
 * Ids of things and runs in the order in which the air passes them, each branch before the main that it enters; so that
 * the keyboard walks through the shop as the chips do.
 */
export function flowSequence(things: readonly { readonly id: string }[], runs: readonly Way[]): string[] {
  const leaving = new Map<string, Way[]>();
  const arriving = new Map<string, number>();
  for (const run of runs) {
    const from = thingOf(run.from);
    const list = leaving.get(from);
    if (list) list.push(run);
    else leaving.set(from, [run]);
    const to = thingOf(run.to);
    arriving.set(to, (arriving.get(to) ?? 0) + 1);
  }
  const sequence: string[] = [];
  const done = new Set<string>();
  const follow = (start: string) => {
    const stack = [start];
    while (stack.length > 0) {
      const thing = stack.pop()!;
      if (done.has(thing)) continue;
      done.add(thing);
      sequence.push(thing);
      for (const run of [...(leaving.get(thing) ?? [])].reverse()) {
        sequence.push(run.id);
        const next = thingOf(run.to);
        const left = arriving.get(next)! - 1;
        arriving.set(next, left);
        if (left <= 0) stack.push(next);
      }
    }
  };
  for (const { id } of things) if (!arriving.has(id) && leaving.has(id)) follow(id);
  // things in a ring, and things that no run has reached yet
  for (const { id } of things) if (leaving.has(id)) follow(id);
  for (const { id } of things) follow(id);
  return sequence;
}
