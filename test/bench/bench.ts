import { InitHydOption, LinkProperty, Project, Workspace } from 'epanet-js';
import { solveNet } from '../../core/network/newton.ts';
import type { NetOutcome, PlanCache } from '../../core/network/newton.ts';
import { packNet } from '../../core/network/packed.ts';
import { asNet, asWaterInput, benchTree, DENSITY_kgm3 } from './bench-tree.ts';
import type { BenchTree } from './bench-tree.ts';
import { growthBench } from './growth-bench.ts';
import { chanceBench } from './chance-bench.ts';
import { startBench } from './start-bench.ts';
import { upkeepBench } from './upkeep-bench.ts';
import { pageBench } from './page/page-bench.ts';

// Solve times of ducts in trees, ours and a general water-network engine's, in one process on the same trees.
// layOut: from the network as data to flows. Ours `packNet` and `solveNet` without a plan; the engine `open`, which reads
//   its input as text (in its figure, not in ours), `openH`, `initH` with first flows, `runH`, `closeH`, `close`.
// again: cold, laid out. Ours `solveNet` with a kept plan and no start; the engine `initH` with first flows, `runH`.
// warm: the local loss of one inlet moves to and fro. Ours `solveNet` with plan and the last state; the engine
//   `setLinkValue`, `initH` that keeps flows, `runH`.
// Accuracy: the engine's smallest ACCURACY, 1e-5 of the flow, and HEADERROR 1e-8 Pa along a run; ours 1e-9 Pa.

const SIZES = [10, 100, 1000, 5000];
/** Time for each measurement [ms], and repetitions at least and at most. */
const BUDGET_ms = 1500;
const LEAST = 7;
const MOST = 400;
/** Flows of the two may differ by this share: their friction formula is an explicit fit to ours. */
const SAME_FLOW = 5e-3;
/** A gate that moves between these coefficients makes the warm solves differ. */
const GATE = [2, 2.6] as const;

interface Timed {
  readonly median_ms: number;
  readonly spread_ms: readonly [number, number];
  readonly times: number;
}

/** Median over several repetitions; the first ones warm the compiler up and do not count. */
function time(work: (repetition: number) => void): Timed {
  const warmUp = performance.now();
  for (let i = 0; i < 5 || (performance.now() - warmUp < 300 && i < 200); i++) work(i);
  globalThis.gc?.();
  const taken: number[] = [];
  const start = performance.now();
  while (taken.length < LEAST || (performance.now() - start < BUDGET_ms && taken.length < MOST)) {
    const before = performance.now();
    work(taken.length);
    taken.push(performance.now() - before);
  }
  taken.sort((a, b) => a - b);
  const at = (share: number) => taken[Math.floor(share * (taken.length - 1))]!;
  return { median_ms: at(0.5), spread_ms: [at(0.25), at(0.75)], times: taken.length };
}

function converged(outcome: NetOutcome) {
  if (!outcome.converged) throw new Error(`ours: ${outcome.reason}`);
  return outcome;
}

/** Times of ours, and the flows at either position of the gate [m3/s]. */
function ours(tree: BenchTree) {
  const net = asNet(tree);
  const layOut = time(() => converged(solveNet(packNet(net))));
  const packed = packNet(net);
  const plans: PlanCache = new Map();
  const again = time(() => converged(solveNet(packed, { plans })));
  const gate = packed.segmentStart[1]! - 1; // the local loss of run 0
  const turn = (i: number) => {
    packed.forward[gate] = GATE[i % 2]!;
    packed.backward[gate] = GATE[i % 2]!;
  };
  let last = converged(solveNet(packed, { plans }));
  const coldIterations = last.iterations;
  const warm = time((i) => {
    turn(i);
    last = converged(solveNet(packed, { plans, warm: last.state }));
  });
  const flows = [0, 1].map((i) => {
    turn(i);
    last = converged(solveNet(packed, { plans, warm: last.state }));
    return Array.from(last.state.flow_kgs, (m) => m / DENSITY_kgm3);
  });
  return { layOut, again, warm, flows, coldIterations, warmIterations: last.iterations };
}

/** The same of the water engine. */
function theirs(workspace: Workspace, tree: BenchTree) {
  workspace.writeFile('tree.inp', asWaterInput(tree));
  const openAndRun = () => {
    const model = new Project(workspace);
    model.open('tree.inp', 'report.rpt', 'out.bin');
    model.openH();
    model.initH(InitHydOption.InitFlow);
    model.runH();
    return model;
  };
  const layOut = time(() => {
    const model = openAndRun();
    model.closeH();
    model.close();
  });
  const model = openAndRun();
  const again = time(() => {
    model.initH(InitHydOption.InitFlow);
    model.runH();
  });
  const turn = (i: number) => model.setLinkValue(1, LinkProperty.MinorLoss, GATE[i % 2]!);
  const warmRun = (i: number) => {
    turn(i);
    model.initH(InitHydOption.NoSave);
    model.runH();
  };
  const warm = time(warmRun);
  const flows = [0, 1].map((i) => {
    warmRun(i);
    return tree.ducts.map((_, e) => model.getLinkValue(e + 1, LinkProperty.Flow) / 1e3);
  });
  model.closeH();
  model.close();
  return { layOut, again, warm, flows };
}

const workspace = new Workspace();
await workspace.loadModule();
const show = (t: Timed) =>
  `${t.median_ms.toFixed(3)} (${t.spread_ms.map((x) => x.toFixed(3)).join('..')}; ${t.times})`;
const growth: Record<string, number[]> = {};
for (const size of SIZES) {
  const tree = benchTree(size, 20 + size);
  const our = ours(tree);
  const their = theirs(workspace, tree);
  let gap = 0;
  our.flows.forEach((flows, g) => {
    flows.forEach((flow, e) => {
      gap = Math.max(gap, Math.abs(their.flows[g]![e]! / flow - 1));
    });
  });
  console.log(`\n${tree.ducts.length} runs, largest difference of a flow ${(gap * 100).toFixed(3)} %`);
  console.log(`  our steps: cold ${our.coldIterations}, warm ${our.warmIterations}`);
  for (const what of ['layOut', 'again', 'warm'] as const) {
    const ratio = our[what].median_ms / their[what].median_ms;
    console.log(
      `  ${what.padEnd(7)} ours ${show(our[what])} ms, engine ${show(their[what])} ms, ratio ${ratio.toFixed(3)}`,
    );
    (growth[what] ??= []).push(our[what].median_ms / tree.ducts.length);
  }
  if (!(gap < SAME_FLOW)) throw new Error('the two do not give the same flows');
}
console.log('\ntime per run at 5000 over time per run at 1000 (1 is linear growth)');
for (const [what, each] of Object.entries(growth))
  console.log(`  ${what.padEnd(7)} ${(each[3]! / each[2]!).toFixed(2)}`);

startBench();
growthBench();
chanceBench();
upkeepBench();
await pageBench();
