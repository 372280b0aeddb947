import { applyCommand } from '../../core/document/commands/apply.ts';
import { readDocument } from '../../core/document/read.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import { openShop, solveSetting } from '../../core/network/solve.ts';
import type { Workbench } from '../../core/network/solve.ts';
import { growthShop } from './growth-shop.ts';

// Whole shops, as a user's file has them: wyes that mix, dust, devices, findings and all.
// read: text to document. open: document to network. cold: the first solve of a setting. edit: one branch gets another
// length, by the command of the window. again: the edited shop opened beside the old one and solved from its state.

const SIZES = [10, 100, 1000, 5000];
const BUDGET_ms = 2000;
const LEAST = 5;
const MOST = 60;
const STEPS = ['read', 'open', 'cold', 'edit', 'again'] as const;
type Step = (typeof STEPS)[number];

function opened(document: ShopDocument, before: Workbench | null): Workbench {
  const made = openShop(document, before);
  if (!made.ok) throw new Error(made.problems[0]?.message ?? 'the shop cannot be opened');
  return made.bench;
}

function measured(text: string): Record<Step, number> & { runs: number } {
  const taken: Record<Step, number[]> = { read: [], open: [], cold: [], edit: [], again: [] };
  let runs = 0;
  const clocked = <T>(step: Step, work: () => T): T => {
    const before = performance.now();
    const result = work();
    taken[step].push(performance.now() - before);
    return result;
  };
  const begun = performance.now();
  for (let i = 0; i < LEAST || (i < MOST && performance.now() - begun < BUDGET_ms); i++) {
    const read = clocked('read', () => readDocument(text));
    if (!read.ok) throw new Error(read.problems[0]?.message);
    runs = read.document.runs.length;
    const setting = settingNames(read.document)[0]!;
    const bench = clocked('open', () => opened(read.document, null));
    clocked('cold', () => solveSetting(bench, setting));
    const edited = clocked('edit', () =>
      applyCommand(read.document, {
        kind: 'setField',
        id: read.document.runs[0]!.id,
        path: ['pieces', 0, 'length'],
        text: `${2 + i / 10} m`,
      }),
    );
    if (!edited.ok) throw new Error(edited.message);
    const result = clocked('again', () => solveSetting(opened(edited.document, bench), setting));
    if (!result.converged) throw new Error(`${runs} runs do not settle`);
  }
  const middle = (list: readonly number[]) => [...list].sort((a, b) => a - b)[list.length >> 1]!;
  const medians = Object.fromEntries(STEPS.map((step) => [step, middle(taken[step])])) as Record<
    Step,
    number
  >;
  return { ...medians, runs };
}

/** Whole shops from 10 to 5000 runs, and how the time per run grows. */
export function growthBench(): void {
  measured(JSON.stringify(growthShop(100)));
  console.log('\nwhole shops, medians in ms');
  const all = SIZES.map((size) => measured(JSON.stringify(growthShop(size))));
  for (const { runs, ...steps } of all) {
    const each = STEPS.map((step) => `${step} ${steps[step].toFixed(2)}`).join(', ');
    console.log(`  ${String(runs).padStart(5)} runs: ${each}`);
  }
  const [small, large] = [all[2]!, all[3]!];
  const ratios = STEPS.map(
    (step) => `${step} ${(large[step] / large.runs / (small[step] / small.runs)).toFixed(2)}`,
  );
  console.log(
    `  time per run at ${large.runs} over that at ${small.runs} (1 is linear): ${ratios.join(', ')}`,
  );
}
