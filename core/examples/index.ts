import benchLine from './bench-line.json' with { type: 'json' };
import fiveMachines from './five-machines.json' with { type: 'json' };
import oneRouter from './one-router.json' with { type: 'json' };

/** The Tern Street shops, as parsed files: read them with `readValue` before use. */
export const EXAMPLES = {
  'one-router': oneRouter,
  'five-machines': fiveMachines,
  'bench-line': benchLine,
} as const satisfies Record<string, unknown>;

/** File name of an example, without its ending. */
export type ExampleId = keyof typeof EXAMPLES;
