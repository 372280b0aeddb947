import { effectivePieces } from '../../document/effective-pieces.ts';
import { isDrawn, measureRoute } from '../../document/route.ts';
import type { Things } from '../../document/route.ts';
import type { Run } from '../../document/schema-pieces.ts';
import { NO_VALUE, printQuantity } from '../../quantities/print.ts';
import { planFigure } from '../figures/plan-figure.ts';
import { longText } from '../figures/plan-wishes.ts';
import type { SummaryFacts } from '../facts.ts';
import { htmlTable } from '../html-table.ts';
import { el, join } from '../markup.ts';
import type { Markup } from '../markup.ts';

/** Most of a page that the plan may take [CSS px]. */
const HEIGHT = 620;

/** The shop from above, to scale, and its runs in figures. */
export function planSection({ document, units, width, nameOf }: SummaryFacts): Markup {
  const plan = planFigure(document, { width, height: HEIGHT, units });
  const things: Things = new Map(document.things.map((thing) => [thing.id, thing]));
  const typed = document.runs.filter((run) => !isDrawn(run));
  return join(
    plan === null
      ? el('p', {}, 'No thing has a place on the plan, so that there is nothing to draw to scale.')
      : el(
          'figure',
          {},
          plan.figure,
          el(
            'figcaption',
            {},
            'From above. Straight walls are duct, wavy ones hose; a ring with a dot rises, one with a cross drops. ',
            'Each run has its inside diameter and its length along the centre line; small figures are straights without their bends. ',
            typed.length > 0 ? 'Runs with dashed walls have typed lengths and are not to scale. ' : null,
            plan.leftOut.length > 0 ? `Without a place, and left out: ${plan.leftOut.join(', ')}.` : null,
          ),
        ),
    htmlTable(
      [
        { head: 'run' },
        { head: 'from' },
        { head: 'to' },
        { head: 'inside diameter' },
        { head: 'straights', align: 'right' },
        { head: 'bends', align: 'right' },
        { head: 'length', align: 'right' },
        { head: 'rise', align: 'right' },
      ],
      document.runs.map((run) => {
        const pieces = effectivePieces(run, things);
        const straights = pieces.flatMap((piece) =>
          piece.kind === 'straight' || piece.kind === 'bare' ? [piece.length.si] : [],
        );
        const bends = pieces.filter(({ kind }) => kind === 'elbow' || kind === 'hose-bend').length;
        const hose = pieces.reduce(
          (sum, piece) => sum + (piece.kind === 'hose-bend' ? piece.radius.si * piece.angle.si : 0),
          0,
        );
        const straight = straights.reduce((sum, length) => sum + length, 0);
        const measure = isDrawn(run) ? measureRoute(run, things) : null;
        const [first, last] = [measure?.points[0], measure?.points.at(-1)];
        return {
          about: run.id,
          cells: [
            run.name === undefined ? run.id : `${run.id}: ${run.name}`,
            nameOf(run.from.split('.')[0]!),
            nameOf(run.to.split('.')[0]!),
            sizesOf(run, pieces)
              .map((size) => printQuantity(size, 'length', units))
              .join(', ') || NO_VALUE,
            longText(straight, units),
            String(bends),
            longText(measure?.length_m ?? straight + hose, units),
            first && last ? longText(last.z - first.z, units) : NO_VALUE,
          ],
        };
      }),
      { class: 'flowing' },
    ),
  );
}

/** Inside diameters in the order of flow, each once. */
function sizesOf(run: Run, pieces: ReturnType<typeof effectivePieces>): number[] {
  const sizes = run.diameter === undefined ? [] : [run.diameter.si];
  for (const piece of pieces) {
    const size = piece.kind === 'reducer' ? piece.to.si : piece.diameter?.si;
    if (size !== undefined && !sizes.includes(size)) sizes.push(size);
  }
  return sizes;
}
