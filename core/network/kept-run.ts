import type { RunEnd } from '../document/ends.ts';
import type { Things } from '../document/route.ts';
import type { Run } from '../document/schema-pieces.ts';
import type { Thing } from '../document/schema-things.ts';
import { buildRun } from './compile-run.ts';
import type { BuiltRun } from './compile-run.ts';

const built = new WeakMap<Run, { readonly from: Thing; readonly to: Thing; readonly run: BuiltRun }>();

/**
 * A run built into segments, or what was built of it before. Documents are never changed in place and share what an edit
 * left alone, so a run whose object and whose ends' objects are the same is the same run.
 */
export function keptRun(run: Run, from: RunEnd, to: RunEnd, things: Things): BuiltRun {
  const old = built.get(run);
  if (old !== undefined && old.from === from.thing && old.to === to.thing) return old.run;
  const made = buildRun(run, from, to, things);
  built.set(run, { from: from.thing, to: to.thing, run: made });
  return made;
}
