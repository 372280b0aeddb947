/** A piece of HTML or SVG that is whole and safe: plain strings only ever get into one as text. */
export class Markup {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  toString(): string {
    return this.text;
  }
}

export type Child = string | number | Markup | null | readonly Child[];
export type Attributes = Readonly<Record<string, string | number | null>>;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
/** Characters that no page may hold; they would end the text early or change how it is read. */
const UNPRINTABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]/g;

/** Text as it stands in a page, also within quotes: nothing in it can be a tag. */
export const escapeText = (text: string): string =>
  text.replace(UNPRINTABLE, '\ufffd').replace(/[&<>"']/g, (character) => ESCAPES[character]!);

/** Text as a string of CSS, quoted. */
export const cssString = (text: string): string =>
  `"${text.replace(UNPRINTABLE, '').replace(/[^\w .,:;()-]/gu, (c) => `\\${c.codePointAt(0)!.toString(16)} `)}"`;

/** Elements that have no end. */
const VOID: ReadonlySet<string> = new Set(['meta', 'br', 'col']);

function childText(child: Child): string {
  if (child === null) return '';
  if (typeof child === 'string') return escapeText(child);
  if (typeof child === 'number') return String(child);
  return child instanceof Markup ? child.text : child.map(childText).join('');
}

/** A coordinate to a hundredth, what is smaller than one to three figures, as short as it goes. */
const shortNumber = (value: number): string =>
  String(Math.abs(value) < 1 ? Number(value.toPrecision(3)) : Math.round(value * 100) / 100);

/** One element with its attributes and what stands in it; an attribute that is null is left out. */
export function el(name: string, attributes: Attributes = {}, ...children: readonly Child[]): Markup {
  const given = Object.entries(attributes).flatMap(([key, value]) =>
    value === null ? [] : [` ${key}="${typeof value === 'number' ? shortNumber(value) : escapeText(value)}"`],
  );
  const open = `<${name}${given.join('')}>`;
  return new Markup(VOID.has(name) ? open : `${open}${children.map(childText).join('')}</${name}>`);
}

/** Several pieces one after the other. */
export const join = (...children: readonly Child[]): Markup => new Markup(children.map(childText).join('\n'));
