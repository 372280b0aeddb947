import { ductSegments, PASSIVE } from '../../core/network/net.ts';
import type { Element, Net } from '../../core/network/net.ts';
import { seeded } from '../core/network/seeded.ts';

/** Air of the bench, as in the network checks. */
export const DENSITY_kgm3 = 1.2;
export const KINEMATIC_m2s = 1.5e-5;
/** Suction at the root of the tree [Pa gauge]; every leaf is open to the room. */
export const ROOT_Pa = -2500;

export interface BenchDuct {
  readonly from: number;
  readonly to: number;
  readonly length_m: number;
  readonly diameter_m: number;
  readonly roughness_m: number;
  readonly coefficient: number;
}

/** A tree of runs from open inlets to one root; node 0 is the root, `leaves` come next. */
export interface BenchTree {
  readonly nodeCount: number;
  readonly leaves: number;
  readonly ducts: readonly BenchDuct[];
}

/**
 * A tree with about so many runs: two random branches meet again and again until one main is left; a main has the area
 * of what joins in it.
 */
export function benchTree(runs: number, seed: number): BenchTree {
  const random = seeded(seed);
  const leaves = Math.max(2, Math.round((runs + 1) / 2));
  const ducts: BenchDuct[] = [];
  const open: { node: number; area: number }[] = [];
  const lay = (from: number, to: number, area: number) => {
    ducts.push({
      from,
      to,
      length_m: 0.5 + 3 * random(),
      diameter_m: Math.sqrt((4 / Math.PI) * area),
      roughness_m: random() < 0.5 ? 1.5e-6 : 1.5e-4,
      coefficient: from <= leaves ? 1 + 2 * random() : 0.1 + 0.3 * random(),
    });
  };
  for (let i = 1; i <= leaves; i++)
    open.push({ node: i, area: (Math.PI / 4) * (0.1 + 0.06 * random()) ** 2 });
  const take = () => {
    const i = Math.floor(random() * open.length);
    const taken = open[i]!;
    open[i] = open[open.length - 1]!;
    open.pop();
    return taken;
  };
  let next = leaves + 1;
  while (open.length > 1) {
    const a = take();
    const b = take();
    const node = next++;
    lay(a.node, node, a.area);
    lay(b.node, node, b.area);
    open.push({ node, area: a.area + b.area });
  }
  lay(open[0]!.node, 0, open[0]!.area);
  return { nodeCount: next, leaves, ducts };
}

/** The tree as our network. */
export function asNet(tree: BenchTree): Net {
  const nodes = Array.from({ length: tree.nodeCount }, (_, v) => ({
    id: `N${v}`,
    pressure_Pa: v === 0 ? ROOT_Pa : v <= tree.leaves ? 0 : null,
    legs: null,
  }));
  const elements = tree.ducts.map((duct, e): Element => ({
    id: `D${e}`,
    from: duct.from,
    to: duct.to,
    kind: PASSIVE,
    segments: ductSegments(duct),
    fan: null,
  }));
  const air = {
    density_kgm3: DENSITY_kgm3,
    viscosity_Pas: KINEMATIC_m2s * DENSITY_kgm3,
    roomPressure_Pa: null,
  };
  return { air, nodes, elements };
}

/** Gravity of the water engine: 32.2 ft/s2 [m/s2]. */
const ENGINE_GRAVITY_ms2 = 9.81456;

/** Head by which the engine may be off along a pipe [m]: our tolerance of 1e-8 Pa. */
const HEAD_ERROR = 1e-8 / (DENSITY_kgm3 * ENGINE_GRAVITY_ms2);

/** The tree as an input file of the water engine: head is pressure over `rho g`, viscosity that of air. */
export function asWaterInput(tree: BenchTree): string {
  const head = ROOT_Pa / (DENSITY_kgm3 * ENGINE_GRAVITY_ms2);
  const lines = ['[RESERVOIRS]', `N0 ${head}`];
  for (let v = 1; v <= tree.leaves; v++) lines.push(`N${v} 0`);
  lines.push('[JUNCTIONS]');
  for (let v = tree.leaves + 1; v < tree.nodeCount; v++) lines.push(`N${v} 0 0`);
  lines.push('[PIPES]');
  tree.ducts.forEach((d, e) => {
    lines.push(
      `D${e} N${d.from} N${d.to} ${d.length_m} ${d.diameter_m * 1e3} ${d.roughness_m * 1e3} ${d.coefficient} Open`,
    );
  });
  lines.push(
    '[OPTIONS]',
    'UNITS LPS',
    'HEADLOSS D-W',
    `VISCOSITY ${KINEMATIC_m2s}`,
    'ACCURACY 0.00001',
    'TRIALS 200',
    `HEADERROR ${HEAD_ERROR}`,
  );
  lines.push('[TIMES]', 'DURATION 0', '[REPORT]', 'STATUS NO', '[END]');
  return `${lines.join('\n')}\n`;
}
