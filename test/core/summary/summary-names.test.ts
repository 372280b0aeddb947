import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../../core/document/read.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';
import { writeDocument } from '../../../core/document/write.ts';
import { exampleDocument } from '../upkeep/examples.ts';
import { pageOf, seen, takeApart } from './page.ts';

const TEXTS = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "=cmd()'",
  '</style><b>',
  '&lt;',
  '\u0000\u001b]',
  '}*{color:red',
  '<!--',
  ']]>',
  '${x}',
];

describe('names that try to be more', () => {
  const nasty = fc.oneof(
    fc.constantFrom(...TEXTS),
    fc.string({ minLength: 1, maxLength: 60, unit: 'binary' }),
    fc.string({ minLength: 1, maxLength: 60 }),
  );
  /** Every text of the document that a person may type freely, put through its own file. */
  const named = (text: (i: number) => string): ShopDocument => {
    const document = structuredClone(exampleDocument('one-router')) as unknown as {
      name: string;
      note: string;
      things: { name: string }[];
      runs: { name: string }[];
      settings: { name: string }[];
      fans: { name: string }[];
      parts: unknown;
    };
    let next = 0;
    document.name = text(next++);
    document.note = text(next++);
    for (const list of [document.things, document.runs, document.settings, document.fans]) {
      for (const part of list) part.name = text(next++);
    }
    document.parts = { money: text(next++).slice(0, 12) };
    const read = readDocument(writeDocument(document as unknown as ShopDocument));
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join());
    return read.document;
  };
  const plain = pageOf(
    named((i) => `plain ${i}`),
    { sections: ['job', 'ledger', 'parts', 'findings'] },
  );
  const shape = (html: string) =>
    takeApart(html)
      .tags.map(({ name, end, attributes }) => `${end ? '/' : ''}${name} ${[...attributes.keys()].join()}`)
      .join('\n');

  it('stand there as text', () => {
    const html = pageOf(named((i) => TEXTS[i % TEXTS.length]!));
    takeApart(html);
    expect(html).not.toContain('<script');
    expect(html).not.toContain('<img');
    expect(seen(html)).toContain('<script>alert(1)</script>');
    // the one style is whole: what its foot says ends neither it nor the string
    expect(html.match(/<\/style>/g)).toHaveLength(1);
  });

  it('leave the tags of a page as they are, whatever they hold', () => {
    fc.assert(
      fc.property(fc.array(nasty, { minLength: 30, maxLength: 30 }), (texts) => {
        const html = pageOf(
          named((i) => texts[i]!),
          { sections: ['job', 'ledger', 'parts', 'findings'] },
        );
        expect(shape(html)).toBe(shape(plain));
      }),
      { seed: 41, numRuns: 40 },
    );
  });

  it('leave a whole page in the pictures too', () => {
    fc.assert(
      fc.property(fc.array(nasty, { minLength: 30, maxLength: 30 }), (texts) => {
        const html = pageOf(
          named((i) => texts[i]!),
          { sections: ['plan', 'staircase', 'devices'] },
        );
        const known = new Set(takeApart(plain).tags.map(({ name }) => name));
        for (const tag of ['svg', 'g', 'path', 'rect', 'circle', 'text', 'figure', 'figcaption'])
          known.add(tag);
        for (const { name } of takeApart(html).tags) expect(known).toContain(name);
      }),
      { seed: 42, numRuns: 25 },
    );
  });
});
