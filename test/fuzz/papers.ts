import { openShop } from '../../core/network/solve.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import { systemCurve } from '../../core/network/system-curve.ts';
import { howLikely, LEAST_SAMPLES } from '../../core/chance/holds.ts';
import { benchFan } from '../../core/fan-bench/bench.ts';
import { readDocument } from '../../core/document/read.ts';
import { partsCsv } from '../../core/summary/parts/parts-csv.ts';
import { partsList } from '../../core/summary/parts/parts-list.ts';
import { summaryHtml } from '../../core/summary/summary.ts';
import { upkeep } from '../../core/upkeep/upkeep.ts';
import { must, mustBeFinite, mustRead } from './target.ts';

/** What is made of a solved shop: curve, chances, hours, parts, fans, paper; all finite or refused in words. */
export function makePapers(text: string): string {
  const read = readDocument(text);
  if (!read.ok) return 'refused';
  const { document } = read;
  const opened = openShop(document);
  if (!opened.ok) return 'read, not compiled';
  const { bench } = opened;
  const [setting = ''] = settingNames(document);
  for (const fan of bench.shop.fans) mustBeFinite(systemCurve(bench, setting, fan.thing.id), 'curve');
  mustBeFinite(howLikely(bench, { setting, samples: LEAST_SAMPLES, seed: 1 }), 'chance');
  for (const { id } of document.fans) mustBeFinite(benchFan(document, id), 'bench');
  const followed = upkeep(document, 8);
  if (followed.ok) mustBeFinite(followed.result, 'upkeep');
  else for (const { message, remedy } of followed.problems) mustRead(message, remedy);
  const parts = partsList(document);
  mustBeFinite(parts, 'parts');
  must(!/(^|,)(NaN|Infinity|undefined)(,|\r)/.test(partsCsv(parts)), 'a figure of the parts list');
  const { html } = summaryHtml(document, {
    sections: null,
    date: '',
    version: '0',
    paper: 'a4',
    units: document.units,
    hours: 8,
  });
  must(
    !/>(NaN|Infinity|undefined)\b|\[object /.test(html),
    `a figure on paper: ${html.match(/.{60}(NaN|Infinity|undefined|\[object ).{20}/)?.[0] ?? ''}`,
  );
  return followed.ok ? 'all made' : 'made, hours refused';
}
