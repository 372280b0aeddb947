import { MINIMUM_FACTORS, rotorMaterial, TIP_SPEED_PRACTICE } from '../catalogue/rotor-materials.ts';
import type { RotorMaterial } from '../catalogue/rotor-materials.ts';
import type { FanDesign, Rotor } from '../document/schema-fans.ts';
import { CUT_OFF_PRACTICE, HEAT_MARGIN } from '../fan/rotor/gaps.ts';
import type { Dimension } from '../quantities/dimensions.ts';
import type { Sourced } from '../quantities/sourced.ts';
import { sourced } from './piece-sources.ts';
import type { RelationId } from './relations.ts';
import type { SourceList } from './source-list.ts';

/** Relations of what carries the load, by form of the rotor. */
const BODIES: Readonly<Record<Rotor['form'], (bored: boolean) => readonly RelationId[]>> = {
  disc: (bored) => [bored ? 'boredDisc' : 'solidDisc', 'discGrowth'],
  ring: () => ['ringStress', 'ringGrowth'],
  'bladed-disc': (bored) => [
    bored ? 'boredDisc' : 'solidDisc',
    'discGrowth',
    'rimLoad',
    'rimGrowth',
    'bladeRoot',
  ],
};

/** Rotor of a fan of the list: its material, what it bears and how much of that is used. */
export function rotorSources(list: SourceList, design: FanDesign, where: readonly string[]): void {
  const { rotor } = design;
  const material = rotor && rotorMaterial(rotor.material);
  if (!rotor || !material) return;
  const add = (
    kind: 'catalogue' | 'default',
    what: string,
    si: number,
    dimension: Dimension,
    from: Sourced,
  ) => list.add({ kind, what, value: { si, dimension }, ...sourced(from) }, where);
  list.use(where, ...BODIES[rotor.form](rotor.bore.si > 0));
  const name = material.label;
  const { bulk = material, poisson = material } = material;
  list.either(
    rotor.strength,
    `strength of ${name}`,
    'rotor.strength',
    { kind: 'catalogue', si: material.strength_Pa, dimension: 'stress', ...sourced(material) },
    where,
  );
  add('catalogue', `density of ${name}`, material.density_kgm3, 'density', bulk);
  add('catalogue', `modulus of ${name}`, material.youngsModulus_Pa, 'stress', bulk);
  add('catalogue', `Poisson ratio of ${name}`, material.poissonRatio, 'coefficient', poisson);
  const factor = factorOf(material);
  add('default', `least strength over stress of ${name}`, factor.factor, 'coefficient', factor);
  const tip = TIP_SPEED_PRACTICE[material.kind];
  add('default', `tip speed at which practice stops, ${material.kind}`, tip.highest_ms, 'velocity', tip);
  if (material.softening_K !== null && rotor.temperature) {
    add('catalogue', `where ${name} softens`, material.softening_K, 'temperature', bulk);
    const margin = `${HEAT_MARGIN.least_K} K`;
    const what = 'distance to keep from where a rotor softens';
    list.add({ kind: 'default', what, value: margin, ...sourced(HEAT_MARGIN) }, where);
  }
  if (rotor.cutOffGap && design.type === 'radial') {
    list.use(where, 'cutOff');
    const percent = (si: number) => list.print({ si, dimension: 'fraction' });
    const value = `${percent(CUT_OFF_PRACTICE.close)} to ${percent(CUT_OFF_PRACTICE.wide)}`;
    const what = 'gap to the cut-off edge over the diameter of the wheel';
    list.add({ kind: 'default', what, value, ...sourced(CUT_OFF_PRACTICE) }, where);
  }
}

/** The row that a material's least factor comes from. */
function factorOf(material: RotorMaterial): Sourced & { readonly factor: number } {
  const rows = Object.values(MINIMUM_FACTORS).filter(({ factor }) => factor === material.minimumFactor);
  // fibreboard shares its figure with prints across their layers
  return rows.find(({ basis }) => (basis === 'assumed') === (material.id === 'mdf')) ?? rows[0]!;
}
