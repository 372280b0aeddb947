import type { ShopDocument } from '../document/schema.ts';
import { partsCsv } from '../summary/parts/parts-csv.ts';
import { partsList } from '../summary/parts/parts-list.ts';
import { summaryHtml } from '../summary/summary.ts';
import type { Paper } from '../summary/summary.ts';
import { VERSION } from '../version.ts';
import { findBrowser, printToPdf } from './chromium.ts';
import { badDocument, done, fail, USAGE } from './outcome.ts';
import type { Command, Options, Outcome } from './outcome.ts';
import { hoursOf } from './upkeep.ts';
import { writeWhole } from './write-file.ts';

const PAPER_WORDS: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'Letter' };
/** Paper that is usual where the units are. */
const USUAL_PAPER = { si: 'a4', us: 'letter' } as const;

/** The shop on paper, written to a file whose ending says as what. */
export const summaryCommand: Command = (document, options) => {
  const { out } = options;
  if (out === undefined) {
    return fail(USAGE, 'summary: name the file to write with --out NAME.html, NAME.pdf or NAME.csv');
  }
  const ending = /\.(html|pdf|csv)$/i.exec(out)?.[1]?.toLowerCase();
  if (ending === undefined) {
    return fail(
      USAGE,
      `summary: "${out}" does not end in .html, .pdf or .csv\n  remedy: let its ending say what to write`,
    );
  }
  if (ending === 'csv') {
    if (options.sections !== undefined) {
      return fail(USAGE, 'summary: a .csv is the parts list; --sections are of .html and .pdf');
    }
    const list = partsList(document);
    return written(out, partsCsv(list), `parts list, ${list.rows.length} rows`);
  }
  const page = pageOf(document, options);
  if ('code' in page) return page;
  const says = `summary for ${PAPER_WORDS[page.paper]}`;
  if (ending === 'html') return written(out, page.html, says);
  const browser = findBrowser();
  if (browser.program === null) {
    return fail(USAGE, `summary: ${browser.why}\n  remedy: ${browser.remedy}`);
  }
  const printed = printToPdf(page.html, browser.program);
  if (!printed.ok) return fail(USAGE, `summary: ${printed.why}\n  remedy: ${printed.remedy}`);
  return written(out, printed.pdf, says);
};

function written(path: string, content: string | Uint8Array, says: string): Outcome {
  return writeWhole(path, content) ?? done(`wrote ${path}: ${says}\n`);
}

/** The page of a document, or what is wrong with what was asked. */
function pageOf(
  document: ShopDocument,
  { sections, paper: asked, date = '', hours: text, file }: Options,
): { readonly html: string; readonly paper: Paper } | Outcome {
  if (asked !== undefined && asked !== 'a4' && asked !== 'letter') {
    return fail(USAGE, `summary: --paper is a4 or letter, not "${asked}"`);
  }
  if (date !== '' && !isDate(date)) {
    return fail(USAGE, `summary: --date is a day as YYYY-MM-DD, not "${date}"`);
  }
  const hours = hoursOf('summary', text);
  if (typeof hours === 'object') return hours;
  const paper = asked ?? USUAL_PAPER[document.units];
  const { html, problems } = summaryHtml(document, {
    sections: sections === undefined ? null : sections.split(',').map((name) => name.trim()),
    date,
    version: VERSION,
    paper,
    units: document.units,
    ...(hours === undefined ? {} : { hours }),
  });
  const [first] = problems;
  if (first === undefined) return { html, paper };
  if (first.path !== 'sections') return badDocument(file, problems);
  return fail(USAGE, `summary: ${first.message}\n  remedy: ${first.remedy}`);
}

/** Whether a text is a day that the calendar has. */
function isDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  if (year === undefined) return false;
  const time = new Date(`${text}T00:00:00Z`);
  return (
    !Number.isNaN(time.getTime()) &&
    time.getUTCMonth() + 1 === Number(month) &&
    time.getUTCDate() === Number(day)
  );
}
