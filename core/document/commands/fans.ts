import { FAN_DESIGN } from '../schema-fans.ts';
import type { ShopDocument } from '../schema.ts';
import type { Handler } from './command.ts';
import { done, Refused } from './command.ts';
import { without } from './corners.ts';
import { readPart } from './defaults.ts';
import { DESIGN_STARTS } from './fan-defaults.ts';
import { idFor } from './ids.ts';
import { findDesign, titleOf } from './items.ts';

function needDesign(document: ShopDocument, id: string) {
  const found = findDesign(document, id);
  if (found === null) {
    throw new Refused(`no fan is kept under the name "${id.slice(0, 40)}"`, 'choose a fan of the list');
  }
  return found;
}

/** A name for people that no other fan of the list has. */
function freeName(document: ShopDocument, start: string): string {
  const taken = new Set(document.fans.map(titleOf));
  let n = 1;
  while (taken.has(`${start} ${n}`)) n++;
  return `${start} ${n}`;
}

export const addFan: Handler<'addFan'> = (document, { type = 'radial' }) => {
  if (!Object.hasOwn(DESIGN_STARTS, type)) {
    throw new Refused(
      `there is no type of fan "${String(type)}"`,
      `choose one of ${Object.keys(DESIGN_STARTS).join(', ')}`,
    );
  }
  const id = idFor(document, 'design');
  const name = freeName(document, 'Fan');
  const start = { id, name, type, ...DESIGN_STARTS[type](document.units), readings: [] };
  const design = readPart(FAN_DESIGN, start);
  return done({ ...document, fans: [...document.fans, design] }, `Add ${name}`, [id]);
};

/** A fan on the plan that this one stood for has its own curve again. */
export const removeFan: Handler<'removeFan'> = (document, { id }) => {
  const { design } = needDesign(document, id);
  const things = document.things.map((thing) =>
    thing.kind === 'fan' && thing.design === id ? without(thing, 'design') : thing,
  );
  const fans = document.fans.filter((fan) => fan.id !== id);
  return done({ ...document, things, fans }, `Remove ${titleOf(design)}`);
};

export const duplicateFan: Handler<'duplicateFan'> = (document, { id }) => {
  const { design, index } = needDesign(document, id);
  const made = idFor(document, 'design');
  const copy = { ...design, id: made, name: freeName(document, `${titleOf(design).slice(0, 60)}, copy`) };
  const fans = document.fans.toSpliced(index + 1, 0, copy);
  return done({ ...document, fans }, `Duplicate ${titleOf(design)}`, [made]);
};
