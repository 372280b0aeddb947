import { FAN_SHAPES } from '../catalogue/fan-shapes.ts';
import type { FanShape } from '../catalogue/fan-shapes.ts';
import type { FanDesign } from '../document/schema-fans.ts';

/** Row of the catalogue for a kind of fan; a radial wheel whose blades are not told counts as leaning back. */
export function fanShapeOf(design: FanDesign): FanShape {
  const id = design.type === 'radial' ? `radial-${design.blading ?? 'backward'}` : design.type;
  return FAN_SHAPES[id]!;
}

/** Area of the outlet over that of the wheel's disc [-]. */
export function outletShareOf(design: FanDesign): number {
  return (design.outletDiameter.si / design.wheelDiameter.si) ** 2;
}
