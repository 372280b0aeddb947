import type { FanDesign } from '../document/schema-fans.ts';
import type { ShopDocument } from '../document/schema.ts';
import { reduceDesign } from '../fan-bench/design-curve.ts';
import { fanShapeOf } from '../fan-bench/fan-shape.ts';
import { plateSizes } from '../fan/tests/plate-sizes.ts';
import { traversePlaces } from '../fan/tests/traverse.ts';
import type { PressureFamily } from '../fan/reduce/families.ts';
import { roomAir } from '../network/room-air.ts';
import { ImpossibleInput } from '../quantities/impossible-input.ts';
import type { UnitSystem } from '../quantities/dimensions.ts';
import { displayUnit, printQuantity } from '../quantities/print.ts';
import { PAGE_STYLE, SAFETY, STEPS } from './test-sheet-words.ts';

export interface SheetOptions {
  readonly units: UnitSystem;
  readonly paper: 'a4' | 'letter';
}

/** Plates that a sheet asks for. */
const PLATES = 5;
/** Points on each of two diameters of a traverse. */
const TRAVERSE_POINTS = 6;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escape = (text: string) => text.replace(/[&<>"']/g, (character) => ESCAPES[character]!);

/**
 * A page to test a fan by: how each test is done safely, which holes to drill for this fan, where to put the probe in a
 * duct, and a table for what is read. Whole in itself, black on white.
 *
 * @throws RangeError where the document has no fan of that id
 */
export function testSheet(document: ShopDocument, fanId: string, options: SheetOptions): string {
  const design = document.fans.find((fan) => fan.id === fanId);
  if (design === undefined) throw new RangeError(`no fan of the document is called "${fanId}"`);
  const { units, paper } = options;
  const title = `Test sheet: ${design.name ?? design.id}`;
  const sizes = holesFor(document, design);
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    `<title>${escape(title)}</title>`,
    `<style>@page { size: ${paper === 'a4' ? 'A4' : 'letter'}; margin: 14mm; }\n${PAGE_STYLE}</style></head><body>`,
    `<h1>${escape(title)}</h1>`,
    `<p>${escape(document.name)}. Wheel ${printQuantity(design.wheelDiameter.si, 'length', units)}, outlet ${printQuantity(design.outletDiameter.si, 'length', units)}. Date ______________ Air temperature __________ Barometer or altitude __________</p>`,
    '<section class="safety"><h2>Before anything turns</h2><ul>',
    ...SAFETY.map((line) => `<li>${escape(line)}</li>`),
    '</ul></section>',
    ...STEPS.map(
      ({ name, steps }) =>
        `<section><h2>${escape(name)}</h2><ol>${steps.map((step) => `<li>${escape(step)}</li>`).join('')}</ol></section>`,
    ),
    '<section><h2>Plates to drill</h2>',
    `<p>${escape(sizes.words)}</p>`,
    table(
      ['plate', 'one sharp hole of', 'measured diameter'],
      sizes.holes_m.map((hole, i) => [String(i + 1), printQuantity(hole, 'length', units), '']),
    ),
    '</section>',
    ...traverseLines(design, units),
    '<section><h2>Readings</h2>',
    readingsTable(sizes.holes_m, units),
    '<p class="small">Read two or three times and write each down. Plus or minus, as you know your instruments: pressure ______ length ______ speed ______ volts ______ amps ______</p>',
    '</section>',
    '<p class="small">This workbook helps to design and certifies nothing. Follow local codes, and leave mains wiring and doubtful wheels to a licensed professional.</p>',
    '</body></html>',
    '',
  ].join('\n');
}

interface Holes {
  readonly holes_m: readonly number[];
  readonly words: string;
}

/** Holes from what is known of this fan: its tests so far, else its kind, wheel and outlet. */
function holesFor(document: ShopDocument, design: FanDesign): Holes {
  const known = coefficients(document, design);
  const fan = {
    wheelDiameter_m: design.wheelDiameter.si,
    outletDiameter_m: design.outletDiameter.si,
    ...known,
  };
  try {
    const holes_m = plateSizes(fanShapeOf(design), fan, PLATES).filter(
      (hole) => hole > 0 && Number.isFinite(hole),
    );
    const from =
      known.freeFlowCoefficient === null
        ? 'a fan of this kind, wheel and outlet; nothing was measured yet'
        : 'its tests so far';
    return {
      holes_m,
      words: `These holes spread the points evenly between blocked and open, as far as can be told from ${from}. A hole close to it does as well: measure what was drilled. Thin sheet, sharp edge towards the room, hole in the middle.`,
    };
  } catch (error) {
    if (!(error instanceof ImpossibleInput)) throw error;
    return { holes_m: [], words: 'No sizes can be told for such a wheel and outlet: check both.' };
  }
}

function coefficients(document: ShopDocument, design: FanDesign) {
  const unknown = { shutOffCoefficient: null, freeFlowCoefficient: null };
  try {
    const { fit } = reduceDesign(design, roomAir(document));
    if (fit === null || fit.shapeAssumed) return unknown;
    const family = fit.pressure.family as PressureFamily;
    return {
      shutOffCoefficient: family.shutOff(fit.pressure.unknowns),
      freeFlowCoefficient: family.freeFlow(fit.pressure.unknowns),
    };
  } catch (error) {
    if (error instanceof ImpossibleInput) return unknown;
    throw error;
  }
}

function traverseLines(design: FanDesign, units: UnitSystem): string[] {
  const ducts = design.readings.flatMap((reading) =>
    reading.kind === 'pitot-traverse' || reading.kind === 'vane-traverse' ? [reading.duct.si] : [],
  );
  const duct = ducts[0] ?? design.outletDiameter.si;
  const places = (rule: 'log-linear' | 'log-tchebycheff') =>
    traversePlaces(duct, rule, TRAVERSE_POINTS).map((place) =>
      printQuantity(place, 'length', units, { digits: 3 }),
    );
  return [
    '<section><h2>Traverse of a round duct</h2>',
    `<p>Inside diameter ${printQuantity(duct, 'length', units)}. Mark the probe at these distances from the inside of the wall, on two diameters at right angles, ten diameters of straight duct in front. Use one rule throughout.</p>`,
    table(
      ['rule', ...Array.from({ length: TRAVERSE_POINTS }, (_, i) => String(i + 1))],
      [
        ['log-linear', ...places('log-linear')],
        ['log-Tchebycheff', ...places('log-tchebycheff')],
        ['first diameter, read', ...Array.from({ length: TRAVERSE_POINTS }, () => '')],
        ['second diameter, read', ...Array.from({ length: TRAVERSE_POINTS }, () => '')],
      ],
    ),
    '</section>',
  ];
}

function readingsTable(holes_m: readonly number[], units: UnitSystem): string {
  const pressure = displayUnit('pressure', units);
  const head = [
    'test',
    `suction ${pressure} or water column`,
    'speed rpm',
    'volts',
    'amps',
    'throttle %',
    'note',
  ];
  const blank = head.slice(1).map(() => '');
  const plates = holes_m.map((hole, i) => [
    `plate ${i + 1}, ${printQuantity(hole, 'length', units)}`,
    ...blank,
  ]);
  return table(head, [['blocked', ...blank], ...plates, ['', ...blank], ['', ...blank]]);
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const cells = (row: readonly string[], tag: string) =>
    row.map((cell) => `<${tag}>${escape(cell)}</${tag}>`).join('');
  return `<table><thead><tr>${cells(head, 'th')}</tr></thead><tbody>${rows.map((row) => `<tr>${cells(row, 'td')}</tr>`).join('')}</tbody></table>`;
}
