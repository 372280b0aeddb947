import { openShop } from '../network/solve.ts';
import { systemCurve } from '../network/system-curve.ts';
import { curveText } from '../summary/curve-text.ts';
import { badDocument, fail, NO_SOLUTION, SOLVED, unknownSetting, USAGE } from './outcome.ts';
import type { Command } from './outcome.ts';

/** The system curve of one fan in one setting. */
export const curveCommand: Command = (document, { setting, fan, json, file }) => {
  if (setting === undefined) return fail(USAGE, 'curve: name a setting with --setting NAME');
  const unknown = unknownSetting('curve', document, setting);
  if (unknown !== null) return unknown;
  const opened = openShop(document);
  if (!opened.ok) return badDocument(file, opened.problems);
  const fans = opened.bench.shop.fans.map((f) => f.thing.id);
  if (fans.length === 0)
    return fail(NO_SOLUTION, `${file}: the shop has no fan to sweep\n  remedy: draw a fan`);
  if (fan !== undefined && !fans.includes(fan)) {
    return fail(USAGE, `curve: no fan is named "${fan}"; there are ${fans.join(', ')}`);
  }
  const curve = systemCurve(opened.bench, setting, fan ?? fans[0]!);
  const out = json ? `${JSON.stringify(curve, null, 2)}\n` : curveText(curve, document.units);
  if (curve.points.length === 0) {
    const err = `${file}: no system curve in setting "${setting}": ${curve.reason ?? ''}`;
    return fail(NO_SOLUTION, `${err}\n  remedy: open a gate on the way of the fan`, out);
  }
  return { out, err: '', code: SOLVED };
};
