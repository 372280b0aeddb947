import { chanceSteps } from '../../core/chance/holds.ts';
import { benchFan } from '../../core/fan-bench/bench.ts';
import { compareFans } from '../../core/fan-bench/compare.ts';
import { fanInShop, placeOfDesign } from '../../core/fan-bench/in-shop.ts';
import { benchPicture } from '../../core/fan-bench/picture.ts';
import type { Workbench } from '../../core/network/solve.ts';
import { testSheet } from '../../core/summary/test-sheet.ts';
import type { FromBench, ToBench } from './bench-messages.ts';

type Post = (answer: FromBench) => void;

/** The shop as it was solved last, so that the next solve starts warm. */
let before: Workbench | null = null;

/** Samples between two looks at what else is asked. */
const CHUNK = 50;
/** The newest question about chances; an older one is left where it is. */
let newestChance = 0;

async function draw(
  { serial, document, setting }: Extract<ToBench, { kind: 'chance' }>,
  post: Post,
): Promise<void> {
  newestChance = serial;
  const steps = chanceSteps(document, { setting }, CHUNK);
  for (;;) {
    const step = steps.next();
    if (step.done === true) {
      post({ kind: 'chance', serial, chance: step.value });
      return;
    }
    post({ kind: 'drawn', serial, samples: step.value });
    await new Promise((resume) => setTimeout(resume, 0));
    if (newestChance !== serial) return;
  }
}

async function work(asked: ToBench, post: Post): Promise<void> {
  if (asked.kind === 'chance') return draw(asked, post);

  if (asked.kind === 'sheet') {
    const { serial, document, design, paper } = asked;
    post({ kind: 'sheet', serial, html: testSheet(document, design, { units: document.units, paper }) });
    return;
  }
  const { serial, document, setting, solvable } = asked;
  if (asked.kind === 'compare') {
    post({ kind: 'compare', serial, comparison: compareFans(document, setting, solvable) });
    return;
  }
  const { design } = asked;
  const result = benchFan(document, design);
  const fan = document.fans.find(({ id }) => id === design)!;
  post({ kind: 'fan', serial, result, picture: benchPicture(fan, result) });
  const thing = placeOfDesign(document, design);
  if (!solvable || thing === null || result.curve === null) {
    post({ kind: 'shop', serial, shop: null });
    return;
  }
  const tried = fanInShop({ document, design, thing, setting, curve: result.curve, before });
  before = tried.bench;
  post({ kind: 'shop', serial, shop: tried.result });
}

/** Answers a question of the fan bench, whatever happens: the page would wait for ever else. */
export function answer(asked: ToBench, post: Post): void {
  work(asked, post).catch((cause: unknown) => {
    const message = cause instanceof Error ? cause.message : String(cause);
    post({ kind: 'fault', serial: asked.serial, of: asked.kind, message });
  });
}
