import { cssString } from './markup.ts';

export type Paper = 'a4' | 'letter';

/** CSS name of a paper, and the width that its margins leave [CSS px]. */
export const PAPERS: Readonly<Record<Paper, { readonly size: string; readonly width: number }>> = {
  a4: { size: 'A4', width: 672 },
  letter: { size: 'letter', width: 694 },
};

/** Black on white; what a page needs is in it, and nothing is told by colour. Margins hold the name and the page. */
export function pageStyle(paper: Paper, foot: string): string {
  return `@page {
  size: ${PAPERS[paper].size};
  margin: 15mm 16mm 17mm;
  @bottom-left { content: ${cssString(foot)}; font: 8pt Arial, Helvetica, "Liberation Sans", sans-serif; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt Arial, Helvetica, "Liberation Sans", sans-serif; }
}
* { box-sizing: border-box; }
body { font: 9.5pt/1.35 Arial, Helvetica, "Liberation Sans", "DejaVu Sans", sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: ${PAPERS[paper].width}px; }
h1 { font-size: 18pt; line-height: 1.15; margin: 0 0 4pt; overflow-wrap: anywhere; }
h2 { font-size: 13pt; margin: 16pt 0 4pt; border-bottom: 1.2pt solid #000; break-after: avoid; }
h3 { font-size: 10.5pt; margin: 9pt 0 3pt; break-after: avoid; overflow-wrap: anywhere; }
p { margin: 3pt 0; orphans: 3; widows: 3; overflow-wrap: anywhere; }
ul { margin: 3pt 0; padding-left: 14pt; }
h2 + p, h3 + p { break-inside: avoid; break-after: avoid; }
li { break-inside: avoid; margin: 1pt 0; overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; margin: 4pt 0 6pt; font-size: 8.5pt; line-height: 1.25; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
tbody tr:nth-child(-n+2), tbody tr:nth-last-child(2) { break-after: avoid; }
th, td { border-bottom: 0.4pt solid #888; padding: 1.6pt 4pt; text-align: left; vertical-align: top; overflow-wrap: break-word; font-variant-numeric: tabular-nums; }
thead th { border-bottom: 1pt solid #000; vertical-align: bottom; }
th small { font-weight: normal; }
th.r, td.r { text-align: right; white-space: nowrap; }
tr.group th { border-top: 0.8pt solid #000; background: #eee; padding-top: 2.5pt; break-after: avoid; font-weight: normal; }
tr.group { break-after: avoid; }
table.keep, ul.keep { break-inside: avoid; }
tr.strong td { font-weight: bold; }
table.pairs { width: auto; min-width: 60%; }
table.pairs th { font-weight: normal; color: #444; padding-right: 12pt; white-space: nowrap; }
table.title { border: 1pt solid #000; font-size: 9.5pt; }
table.title th { width: 16%; font-weight: normal; color: #444; white-space: nowrap; }
table.title td { width: 34%; overflow-wrap: anywhere; }
table.sources { table-layout: fixed; font-size: 8pt; line-height: 1.2; }
table.sources thead th:first-child { width: 35%; }
table.sources thead th:nth-child(2) { width: 33%; }
table.sources thead th:nth-child(3) { width: 15%; }
table.sources td { padding: 1pt 3pt; }
figure { margin: 4pt 0; break-inside: avoid; text-align: center; }
figure svg { max-width: 100%; height: auto; display: block; margin: 0 auto; }
figcaption { text-align: left; font-size: 8.5pt; margin-top: 2pt; }
.verdict { border: 1pt solid #000; padding: 4pt 6pt; font-size: 11pt; break-inside: avoid; }
.safety { border: 1.5pt solid #000; padding: 3pt 8pt; break-inside: avoid; }
.long { break-inside: auto; -webkit-box-decoration-break: clone; box-decoration-break: clone; }
.small { font-size: 8.5pt; }
.mark { display: inline-block; vertical-align: -1px; margin-right: 2px; }
.word { white-space: nowrap; }
@media screen { body { padding: 12px; } }`;
}
