import type { DocumentProblem } from '../document/problem.ts';
import { pathText } from '../document/problem.ts';
import { isQuantity } from '../document/quantity-field.ts';
import type { ShopDocument } from '../document/schema.ts';
import type { ImpossibleInput } from '../quantities/impossible-input.ts';

/** Unit at the end of a field's name in code; the document's fields carry none. */
const UNIT_SUFFIX = /_(m|m2|m3|m3s|ms|rad|Pa|Pas|Pasm|K|kgm2|kgm3|kgs|rpm|W|A|s)$/;

/** Fields that a relation calls otherwise than the document does. */
const OTHER_NAMES: Readonly<Record<string, string>> = { includedAngle: 'angle', captureVelocity: 'velocity' };

/** What a relation refuses of a value at `path`, as a problem: the field of the document, and what was typed there. */
export function impossibleField(
  document: ShopDocument,
  path: readonly (string | number)[],
  error: ImpossibleInput,
): DocumentProblem {
  const fields = error.field.replace(UNIT_SUFFIX, '').split(/[.[\]]+/);
  const keys = fields
    .filter((key) => key !== '')
    .map((key) => (/^\d+$/.test(key) ? Number(key) : (OTHER_NAMES[key] ?? key)));
  const whole = [...path, ...keys];
  let value: unknown = document;
  for (const key of whole) {
    value =
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<string | number, unknown>)[key]
        : undefined;
  }
  const typed = isQuantity(value) && value.text !== null ? `\`${value.text}\`` : `"${String(error.value)}"`;
  const place = pathText(document, whole);
  const missing = error.value === 'not given';
  return {
    path: place,
    message: missing
      ? `${place}: is missing; it must be ${error.rule}`
      : `${place}: ${typed} is not possible, it must be ${error.rule}`,
    remedy: missing ? 'give the value' : 'correct the value',
  };
}
