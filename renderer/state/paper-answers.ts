import type { FromPaper, PaperKind, PaperWork, ToPaper } from './paper-messages.ts';

type Workers = {
  readonly [K in PaperKind]: (asked: PaperWork[K]['asked']) => Promise<PaperWork[K]['answer']>;
};

/** Each part is loaded when it is asked for: who looks at running hours needs no page for the printer. */
const WORK: Workers = {
  upkeep: async ({ document, hours }) =>
    (await import('../../core/upkeep/upkeep.ts')).upkeep(document, hours),
  parts: async ({ document }) => (await import('../../core/summary/parts/parts-list.ts')).partsList(document),
  summary: async ({ document, options }) =>
    (await import('../../core/summary/summary.ts')).summaryHtml(document, options),
  compare: async ({ before, after, units }) =>
    (await import('../../core/summary/compare.ts')).compareShops(before, after, units),
};

/** Answers a question about running hours or paper, whatever happens: the page would wait for ever else. */
export async function answerPaper(
  { of, serial, asked }: ToPaper,
  post: (answer: FromPaper) => void,
): Promise<void> {
  try {
    const work = WORK[of] as (given: typeof asked) => Promise<PaperWork[PaperKind]['answer']>;
    post({ kind: 'paper', serial, ok: true, answer: await work(asked) });
  } catch (cause) {
    const message = cause instanceof Error ? cause.message : String(cause);
    post({ kind: 'paper', serial, ok: false, message });
  }
}
