import { summaryHtml } from '../../../core/summary/summary.ts';
import type { SummaryOptions } from '../../../core/summary/summary.ts';
import type { ShopDocument } from '../../../core/document/schema.ts';

/** A summary that has to come out, on A4 in the document's units unless said otherwise. */
export function pageOf(document: ShopDocument, more: Partial<SummaryOptions> = {}): string {
  const { html, problems } = summaryHtml(document, {
    date: '2026-03-04',
    version: '9.8.7',
    paper: 'a4',
    units: document.units,
    ...more,
  });
  if (problems.length > 0) throw new Error(problems.map(({ message }) => message).join('; '));
  return html;
}

export interface Tag {
  readonly name: string;
  readonly end: boolean;
  readonly attributes: ReadonlyMap<string, string>;
}

const NO_END = new Set(['meta', 'br', 'col', '!doctype']);
const TAG = /<(\/?)([a-z][a-z0-9]*|!doctype)((?: [a-zA-Z:-]+="[^"<>]*")*)( html)?>/iy;

/**
 * Takes a page apart as strictly as it was written: every `<` has to start a tag of the plain form, every tag has to be
 * closed by its own end, and what stands between is text.
 */
export function takeApart(html: string): { tags: Tag[]; text: string } {
  const tags: Tag[] = [];
  const open: string[] = [];
  let text = '';
  let at = 0;
  while (at < html.length) {
    const next = html.indexOf('<', at);
    text += html.slice(at, next < 0 ? html.length : next);
    if (next < 0) break;
    TAG.lastIndex = next;
    const found = TAG.exec(html);
    if (found === null) throw new Error(`no tag at ${html.slice(next, next + 60)}`);
    const [whole, slash, name, written] = found as unknown as [string, string, string, string];
    const end = slash === '/';
    if (end) {
      const last = open.pop();
      if (last !== name) throw new Error(`</${name}> closes <${last ?? 'nothing'}>`);
    } else if (!NO_END.has(name.toLowerCase())) open.push(name);
    const attributes = new Map(
      [...written.matchAll(/ ([a-zA-Z:-]+)="([^"]*)"/g)].map((match) => [match[1]!, match[2]!]),
    );
    tags.push({ name: name.toLowerCase(), end, attributes });
    text += ' ';
    at = next + whole.length;
  }
  if (open.length > 0) throw new Error(`open at the end: ${open.join(', ')}`);
  return { tags, text };
}

const NAMED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" };

/** Text as a reader sees it. */
export const seen = (markup: string): string =>
  markup
    .replace(/<[^>]*>/g, '')
    .replace(/&(lt|gt|amp|quot|#39);/g, (_, name: string) => NAMED[name]!)
    .trim();

/** Rows of all tables by what they are about: the cells of each, as a reader sees them. */
export function rowsAbout(html: string): Map<string, string[]> {
  const rows = new Map<string, string[]>();
  for (const [, about, inside] of html.matchAll(/<tr[^>]* data-about="([^"]*)"[^>]*>(.*?)<\/tr>/gs)) {
    const cells = [...inside!.matchAll(/<t[dh][^>]*>(.*?)<\/t[dh]>/gs)].map((match) => seen(match[1]!));
    rows.set(seen(about!), cells);
  }
  return rows;
}

/** One section of a page, without its heading. */
export function sectionOf(html: string, id: string): string {
  const start = html.indexOf(`<section id="section-${id}">`);
  if (start < 0) throw new Error(`no section ${id}`);
  return html.slice(html.indexOf('</h2>', start) + 5, html.indexOf('</section>', start));
}
