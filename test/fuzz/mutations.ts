import fc from 'fast-check';
import { EXAMPLES } from '../../core/examples/index.ts';
import { DIMENSION_NAMES, DIMENSIONS } from '../../core/quantities/dimensions.ts';
import { json, keys, numbers, putOwn, strings } from './hostile.ts';
import { quantityTexts } from './texts.ts';

// The example shops, changed here and there as no editor of ours would change them.

const examples = fc.constantFrom(...Object.values(EXAMPLES));

interface Slot {
  readonly parent: Record<PropertyKey, unknown> | unknown[];
  readonly key: string | number;
}

function slotsOf(root: unknown): Slot[] {
  const slots: Slot[] = [];
  const walk = (value: unknown) => {
    if (typeof value !== 'object' || value === null) return;
    const parent = value as Slot['parent'];
    for (const key of Object.keys(value)) {
      slots.push({ parent, key: Array.isArray(value) ? Number(key) : key });
      walk((value as Record<string, unknown>)[key]);
    }
  };
  walk(root);
  return slots;
}

const read = ({ parent, key }: Slot): unknown => (parent as Record<PropertyKey, unknown>)[key];
const put = ({ parent, key }: Slot, value: unknown) => putOwn(parent, key, value);

/** One change at a slot, or between two. */
type Change = (slot: Slot, other: Slot) => void;

const copy = (value: unknown): unknown => (value === undefined ? null : structuredClone(value));
const times = (value: unknown, count: number): unknown[] => Array.from({ length: count }, () => value);

const changes: fc.Arbitrary<Change> = fc.oneof(
  fc.constant<Change>((slot) => {
    if (Array.isArray(slot.parent)) slot.parent.splice(Number(slot.key), 1);
    else Reflect.deleteProperty(slot.parent, slot.key);
  }),
  json.map(
    (value): Change =>
      (slot) =>
        put(slot, value),
  ),
  numbers.filter(Number.isFinite).map(
    (value): Change =>
      (slot) =>
        put(slot, value),
  ),
  strings.map(
    (value): Change =>
      (slot) =>
        put(slot, value),
  ),
  quantityTexts.map(
    (value): Change =>
      (slot) =>
        put(slot, value),
  ),
  fc.tuple(keys, json).map(([key, value]): Change => (slot) => {
    const group = read(slot);
    if (typeof group === 'object' && group !== null && !Array.isArray(group)) putOwn(group, key, value);
    else if (!Array.isArray(slot.parent)) putOwn(slot.parent, key, value);
  }),
  fc.constant<Change>((slot, other) => put(slot, copy(read(other)))),
  fc.constant<Change>((slot, other) => {
    const kept = copy(read(slot));
    put(slot, copy(read(other)));
    put(other, kept);
  }),
  fc.constantFrom(2, 3, 30, 501, 2001, 20_001).map((count): Change => (slot) => {
    const value = read(slot);
    // repeated as text, so that a long list costs no more than it says
    if (Array.isArray(value)) put(slot, times(value, count).flat().slice(0, 20_001));
    else put(slot, times(value, Math.min(count, 501)));
  }),
  fc.constantFrom(5, 500, 20_000).map(
    (depth): Change =>
      (slot) =>
        put(slot, { [DEEP]: depth }),
  ),
);

/** Stands for a value as deep as it says, which is made as text: deep values cannot be written by recursion. */
const DEEP = 'deeply nested';

/** Text of a value; deep ones are nested lists. */
export function textOf(value: unknown): string {
  return (JSON.stringify(value) ?? 'null').replace(
    /\{"deeply nested":(\d+)\}/g,
    (_, depth: string) => '['.repeat(Number(depth)) + ']'.repeat(Number(depth)),
  );
}

/** Examples of which one to four parts were changed in any way, as text. */
export const brokenExamples: fc.Arbitrary<string> = fc
  .tuple(examples, fc.array(fc.tuple(changes, fc.nat(), fc.nat()), { minLength: 1, maxLength: 4 }))
  .map(([example, list]) => {
    const root: unknown = structuredClone(example);
    for (const [change, a, b] of list) {
      const slots = slotsOf(root);
      if (slots.length > 0) change(slots[a % slots.length]!, slots[b % slots.length]!);
    }
    return textOf(root);
  });

const SIZES = [1e-12, 1e-6, 1e-3, 0.01, 0.1, 0.5, 1, 1.5, 3, 30, 300, 3000, 1e5, 1e8, 1e12];
const EXAMPLE_TEXTS = DIMENSION_NAMES.flatMap((name) => [...DIMENSIONS[name].examples]);

/** Whether a text of an example is a quantity rather than a name. */
const isMeasure = (value: unknown): boolean =>
  (typeof value === 'string' && /^-?[\d.]+ ?\S*/.test(value)) || typeof value === 'number';

/** Examples with other figures in them, sensible and absurd: most of them are read, and have to be solved or refused. */
export const otherFigures: fc.Arbitrary<string> = fc
  .tuple(
    examples,
    fc.array(
      fc.tuple(fc.nat(), fc.constantFrom(...SIZES), fc.nat({ max: 6 }), fc.constantFrom(...EXAMPLE_TEXTS)),
      {
        minLength: 1,
        maxLength: 6,
      },
    ),
  )
  .map(([example, list]) => {
    const root: unknown = structuredClone(example);
    const slots = slotsOf(root).filter((slot) => slot.key !== 'version' && isMeasure(read(slot)));
    for (const [n, size, how, text] of list) {
      const slot = slots[n % slots.length]!;
      const old = read(slot);
      if (typeof old === 'number' || how === 0) put(slot, size);
      else if (how === 1) put(slot, text);
      else
        put(
          slot,
          String(old).replace(/^-?[\d.]+/, (typed) => String(Number(typed) * size)),
        );
    }
    return textOf(root);
  });

interface Cut {
  readonly at: number;
  readonly length: number;
  readonly text: string;
}

/** Texts of examples with bytes turned, cut out or put in, and cut off. */
export const brokenTexts: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc
      .tuple(
        examples,
        fc.array(
          fc.record<Cut>({
            at: fc.nat({ max: 20_000 }),
            length: fc.constantFrom(0, 0, 1, 1, 2, 20, 30_000),
            text: fc.oneof(
              fc.constantFrom(
                '',
                '0',
                '1e999',
                '-1e999',
                '"',
                '{',
                '}',
                '[',
                ']',
                ',',
                ':',
                '\\',
                '\\u0000',
                '\ud800',
              ),
              fc.constantFrom(
                '"__proto__":{"canary":1},',
                '"id":"R1",',
                '"version":1e300,',
                '"version":-0.5,',
                '\0',
              ),
              strings,
            ),
          }),
          { minLength: 1, maxLength: 4 },
        ),
      )
      .map(([example, cuts]) =>
        cuts.reduce((text, { at, length, text: more }) => {
          const place = at % (text.length + 1);
          return text.slice(0, place) + more + text.slice(place + length);
        }, JSON.stringify(example)),
      ),
  },
  { weight: 1, arbitrary: strings },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.constantFrom('[', '{"a":', '{"format":"chipdraft-shop","version":2,"note":[', '[[],'),
        fc.constantFrom(10, 5000, 300_000),
      )
      .map(([open, count]) => open.repeat(count)),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      ...['null', '3', '"text"', '[]', '{}', 'true', '\ufeff', '\ufeff{}', '/**/{}'],
    ),
  },
);
