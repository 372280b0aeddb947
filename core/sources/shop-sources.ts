import { WASTEFUL_RATIO } from '../network/port-dust.ts';
import { LOADING_CAP } from '../network/march.ts';
import { CLOSE_MARGIN, VERY_FAST } from '../checks/run-checks.ts';
import { USUAL_CO2_FRACTION } from '../air/moist-air.ts';
import { SOLIDS_LOSS_K } from '../conveying/solids-loss.ts';
import { NOMINAL_BODY } from '../document/anchors.ts';
import { DRAWN_REDUCER_RAD, effectivePieces } from '../document/effective-pieces.ts';
import { isDrawn } from '../document/route.ts';
import type { SourceContext } from './context.ts';
import { WHOLE_SHOP } from './source-row.ts';

const ALL = [WHOLE_SHOP] as const;

/** Air of the room and what holds for the whole shop. */
export function shopSources({ shop, list }: SourceContext): void {
  const { document } = shop;
  const { air } = document;
  if (air.kind === 'given') {
    list.given(air.density, 'density of the air', 'air.density', ALL);
    list.given(air.viscosity, 'viscosity of the air', 'air.viscosity', ALL);
  } else {
    list.use(ALL, 'moistAir', 'vapourPressure', 'viscosity');
    list.given(air.temperature, 'temperature of the room', 'air.temperature', ALL);
    list.given(air.humidity, 'relative humidity of the room', 'air.humidity', ALL);
    list.add(
      {
        kind: 'default',
        what: 'carbon dioxide in the air',
        value: `${USUAL_CO2_FRACTION * 1e6} ppm`,
        source: 'CIPM-2007, laboratory air, as quoted in open libraries',
        basis: 'published',
      },
      ALL,
    );
    if (air.barometer) list.given(air.barometer, 'barometer', 'air.barometer', ALL);
    else {
      list.use(ALL, 'altitude');
      list.either(
        air.altitude,
        'altitude of the shop',
        'air.altitude',
        {
          kind: 'default',
          si: 0,
          dimension: 'length',
          source: 'no source; sea level, where no height and no barometer is given',
          basis: 'assumed',
        },
        ALL,
      );
    }
  }
  list.use(ALL, 'velocityPressure');
  if (document.options.compressible) list.use(ALL, 'thinning');
  else {
    list.add(
      {
        kind: 'model',
        what: 'air of one density throughout',
        source: 'chosen in the document',
        basis: 'measured-by-user',
        field: 'options.compressible',
      },
      ALL,
    );
  }
}

/** Bounds of findings and what runs share, at the runs that they are about. */
export function checkSources({ shop, settings, list }: SourceContext): void {
  const runs = shop.runs.map(({ run }) => run.id);
  const asked = new Set(
    settings.flatMap((setting) =>
      setting.runs.flatMap((run) => (run.requiredVelocity_ms === null ? [] : [run.id])),
    ),
  );
  list.add(
    {
      kind: 'default',
      what: 'share to spare below which a run holds by little only',
      ...CLOSE_MARGIN,
      value: { si: CLOSE_MARGIN.value, dimension: 'fraction' },
    },
    [...asked],
  );
  list.add(
    {
      kind: 'default',
      what: 'velocity that counts as wastefully high, over the one needed',
      value: { si: WASTEFUL_RATIO, dimension: 'coefficient' },
      source: 'no source; loss has doubled at about 1.4 times the velocity needed',
      basis: 'common-practice',
    },
    [...asked],
  );
  list.add(
    {
      kind: 'default',
      what: 'velocity near which these relations end',
      ...VERY_FAST,
      value: { si: VERY_FAST.value, dimension: 'velocity' },
    },
    runs,
  );
}

/** What the dust in the air adds to the loss of the runs that carry it. */
export function solidsSources({ shop, settings, list }: SourceContext): void {
  if (!shop.document.options.solidsLoss) return;
  const carrying = new Set(
    settings.flatMap((setting) => setting.runs.flatMap((run) => (run.dust_kgs > 0 ? [run.id] : []))),
  );
  const runs = [...carrying];
  list.use(runs, 'solids');
  list.add(
    {
      kind: 'coefficient',
      what: 'loss added by dust, over its load in the air',
      value: { si: SOLIDS_LOSS_K.value, dimension: 'coefficient' },
      source: `${SOLIDS_LOSS_K.source}; reported from ${SOLIDS_LOSS_K.span.join(' to ')}`,
      basis: SOLIDS_LOSS_K.basis,
    },
    runs,
  );
  list.add(
    {
      kind: 'default',
      what: 'load of dust beyond which no more loss is added, kg for each kg of air',
      value: { si: LOADING_CAP, dimension: 'coefficient' },
      source: 'no source; far beyond what a shop carries',
      basis: 'assumed',
    },
    runs,
  );
}

/** What a drawing gives that nobody typed: sizes of bodies and angles of reducers, on which lengths and losses rest. */
export function drawingSources({ shop, list }: SourceContext): void {
  const { things, runs } = shop.document;
  const body = (kind: 'bin' | 'filter' | 'fan', what: string, figure: { value: number; length: boolean }) =>
    list.add(
      {
        kind: 'default',
        what,
        value: { si: figure.value, dimension: figure.length ? 'length' : 'coefficient' },
        source: NOMINAL_BODY.source,
        basis: NOMINAL_BODY.basis,
      },
      things.flatMap((thing) => (thing.kind === kind && thing.at !== undefined ? [thing.id] : [])),
    );
  body('bin', 'width of a bin on the plan', { value: NOMINAL_BODY.bin_m, length: true });
  body('filter', 'width of a filter on the plan', { value: NOMINAL_BODY.filter_m, length: true });
  body('fan', 'width of a fan on the plan, over its outlet', {
    value: NOMINAL_BODY.fanPerOutlet,
    length: false,
  });
  const drawn = runs.flatMap((run) =>
    isDrawn(run)
      ? effectivePieces(run, shop.things).flatMap((piece) =>
          piece.kind === 'reducer' && piece.derived ? [piece.key] : [],
        )
      : [],
  );
  list.add(
    {
      kind: 'default',
      what: 'full angle of a reducer that the drawing gives',
      value: { si: DRAWN_REDUCER_RAD, dimension: 'angle' },
      source: 'no source; a reducer as it is sold',
      basis: 'common-practice',
    },
    drawn,
  );
}
