import { readValue } from '../../../../core/document/read.ts';
import type { ShopDocument } from '../../../../core/document/schema.ts';
import { EXAMPLES } from '../../../../core/examples/index.ts';
import type { ExampleId } from '../../../../core/examples/index.ts';
import { openShop, solveSetting } from '../../../../core/network/solve.ts';
import type { Workbench } from '../../../../core/network/solve.ts';
import type { SettingResult } from '../../../../core/network/solution.ts';

export function exampleDocument(id: ExampleId): ShopDocument {
  const read = readValue(structuredClone(EXAMPLES[id]));
  if (!read.ok) throw new Error(`example ${id} cannot be read: ${read.problems[0]?.message ?? ''}`);
  return read.document;
}

export function benchOf(document: ShopDocument): Workbench {
  const opened = openShop(document);
  if (!opened.ok) throw new Error(opened.problems[0]?.message ?? 'cannot be opened');
  return opened.bench;
}

/** One setting of an example shop, solved. */
export const solvedExample = (id: ExampleId, setting: string): SettingResult =>
  solveSetting(benchOf(exampleDocument(id)), setting);
