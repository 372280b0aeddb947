import { ID } from '../schema-common.ts';
import type { ShopDocument } from '../schema.ts';
import type { FieldPath } from './command.ts';
import { Refused } from './command.ts';
import { withValue } from './edit-value.ts';

const renamedEnd = (end: string, names: ReadonlyMap<string, string>): string => {
  const [id, ...rest] = end.split('.') as [string, ...string[]];
  const name = names.get(id);
  return name === undefined ? end : [name, ...rest].join('.');
};

/** Points the ends of runs, the gates of settings and the designs of fans to the new names. */
export function followNames(document: ShopDocument, names: ReadonlyMap<string, string>): ShopDocument {
  const runs = document.runs.map((run) => {
    const [from, to] = [renamedEnd(run.from, names), renamedEnd(run.to, names)];
    return from === run.from && to === run.to ? run : { ...run, from, to };
  });
  const settings = document.settings.map((setting) =>
    Object.keys(setting.gates).some((gate) => names.has(gate))
      ? {
          ...setting,
          gates: Object.fromEntries(
            Object.entries(setting.gates).map(([gate, opening]) => [names.get(gate) ?? gate, opening]),
          ),
        }
      : setting,
  );
  const things = document.things.map((thing) => {
    const design = thing.kind === 'fan' && thing.design ? names.get(thing.design) : undefined;
    return design === undefined ? thing : { ...thing, design };
  });
  return { ...document, runs, settings, things };
}

/** Gives a thing, run or piece another id, and all that points to it. */
export function renamed(document: ShopDocument, path: FieldPath, old: string, name: string): ShopDocument {
  const parsed = ID.safeParse(name);
  if (!parsed.success) {
    throw new Refused(`id: "${name.slice(0, 40)}" cannot stand here`, parsed.error.issues[0]!.message);
  }
  return followNames(withValue(document, path, name) as ShopDocument, new Map([[old, name]]));
}
