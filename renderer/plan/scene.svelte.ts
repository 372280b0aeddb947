import { findEnd } from '../../core/document/ends.ts';
import type { SettingResult } from '../../core/network/solution.ts';
import { drawnPart, meetsBox } from '../geometry/drawn-part.ts';
import type { DrawnPart } from '../geometry/drawn-part.ts';
import { AtRest } from '../state/at-rest.ts';
import { settingGates } from './gate-openings.ts';
import type { Workbook } from '../state/workbook.svelte.ts';
import { boxAround, inBox, planPoint, screenPoint, toPlan, viewOf } from '../geometry/space.ts';
import type { PlanBox, PlanPoint, View } from '../geometry/space.ts';
import { gridStep } from '../geometry/snap.ts';
import { flowSequence } from './flow-sequence.ts';
import { RunViews } from '../../core/summary/figures/plan/run-view.ts';
import type { RunView } from '../../core/summary/figures/plan/run-view.ts';
import { planResults } from './plan-results.ts';
import { ThingViews } from '../../core/summary/figures/plan/thing-view.ts';
import type { EndView, ThingView } from '../../core/summary/figures/plan/thing-view.ts';

/** Scales that the plan can be looked at in [px/m]. */
export const SCALE_LIMITS = { least: 4, most: 2500 };
const FIT_MARGIN_PX = { x: 236, y: 74 };
/** Rulers lie along the top and the left of the window [px]. */
const RULER_PX = 24;
/** A pause of edits after which what is not seen follows [ms]. */
const LATE_MS = 300;
/** Part of the plan that an empty shop shows [m]. */
const EMPTY_BOX: PlanBox = { left: 0, top: 0, right: 8, bottom: 5 };

export type SequenceItem =
  | { readonly kind: 'thing'; readonly id: string; readonly view: ThingView }
  | { readonly kind: 'run'; readonly id: string; readonly view: RunView };

/** What the plan shows: the document as views, the part of it in the window, and the results beside it. */
export class Scene {
  readonly wb: Workbook;
  view: View = $state.raw({ x: 40, y: 40, pixelsPerMetre: 100 });
  size = $state.raw({ width_px: 0, height_px: 0 });
  /** What is said to the user, at the foot of the plan and to a screen reader. */
  message = $state.raw<{ text: string; bad: boolean } | null>(null);

  private readonly thingViews = new ThingViews();
  private readonly runViews = new RunViews();
  private readonly items = new WeakMap<ThingView | RunView, SequenceItem>();
  private timer: ReturnType<typeof setTimeout> | undefined;

  scale = $derived(this.view.pixelsPerMetre);
  grid = $derived.by(() => gridStep(this.scale, this.wb.units));

  placed = $derived.by(() => this.thingViews.withPlaces(this.wb.document.things));
  things: ThingView[] = $derived.by(() =>
    this.thingViews.of(this.wb.document.things, this.placed, this.runs),
  );
  runs: RunView[] = $derived.by(() => this.runViews.of(this.wb.document.runs, this.placed));
  private order = $derived.by(() => flowSequence(this.wb.document.things, this.wb.document.runs));
  thingById = $derived.by(() => new Map(this.things.map((view) => [view.id, view])));
  runById = $derived.by(() => new Map(this.runs.map((view) => [view.id, view])));
  sequence: SequenceItem[] = $derived.by(() =>
    this.order.map((id): SequenceItem => {
      const view = this.thingById.get(id) ?? this.runById.get(id)!;
      const old = this.items.get(view);
      if (old) return old;
      const item: SequenceItem = 'thing' in view ? { kind: 'thing', id, view } : { kind: 'run', id, view };
      this.items.set(view, item);
      return item;
    }),
  );
  ends: EndView[] = $derived.by(() => this.things.flatMap((view) => view.ends));
  marks = $derived.by(() => this.runs.flatMap((view) => view.marks));
  openings = $derived.by(() => settingGates(this.wb.document, this.wb.setting));

  /** Results may lag behind the drawing for a moment; they are shown all the same, so that nothing flickers. */
  results = $derived.by(() => planResults(this.wb.result, this.wb.gaps.length > 0));
  /** Of what lies outside the window: figures that are read out but not seen wait until edits pause. */
  private late = $state.raw<SettingResult | null>(null);
  lateResults = $derived.by(() => planResults(this.late, this.wb.gaps.length > 0));
  /** Run at each thing that has one end only. */
  runAt = $derived.by(() => {
    const found = new Map<string, string>();
    for (const run of this.wb.document.runs) {
      for (const side of ['from', 'to'] as const) {
        const end = findEnd(this.placed, run[side], side);
        if (typeof end !== 'string' && end.end === '') found.set(end.thing.id, run.id);
      }
    }
    return found;
  });

  private part: DrawnPart | null = null;
  /** The part of the plan that is drawn; null before the window has a size. */
  shown: PlanBox | null = $derived.by(() => {
    const { width_px, height_px } = this.size;
    if (width_px === 0) return null;
    const [from, to] = [this.at(0, 0), this.at(width_px, height_px)];
    const window = { left: from.x, top: from.y, right: to.x, bottom: to.y };
    this.part = drawnPart(this.part, window, this.scale);
    return this.part.box;
  });
  shownRuns = $derived.by(() => this.runs.filter((view) => this.isShown(view)));
  shownThings = $derived.by(() => this.things.filter((view) => this.isShown(view)));

  constructor(wb: Workbook) {
    this.wb = wb;
  }

  /** Whether a thing or run lies in the part that is drawn, or is selected. */
  isShown(view: ThingView | RunView): boolean {
    const { shown } = this;
    if (shown === null || this.wb.selection.has(view.id)) return true;
    if ('run' in view) return view.box === null || meetsBox(shown, view.box, view.diameter_m);
    const { x, y, halfX, halfY } = view.box;
    return meetsBox(shown, { left: x - halfX, right: x + halfX, top: y - halfY, bottom: y + halfY });
  }

  /** Plan point under a place of the window, from its upper left corner. */
  at(x: number, y: number): PlanPoint {
    return toPlan(this.view, screenPoint(x, y));
  }

  /** Middle of the window on the plan. */
  get middle(): PlanPoint {
    return this.at(this.size.width_px / 2, this.size.height_px / 2);
  }

  get extent(): PlanBox | null {
    const points: PlanPoint[] = [];
    for (const { box } of this.things) {
      points.push(
        planPoint(box.x - box.halfX, box.y - box.halfY),
        planPoint(box.x + box.halfX, box.y + box.halfY),
      );
    }
    for (const { line } of this.runs) points.push(...line);
    return boxAround(points);
  }

  /** Ids of the things and runs that lie wholly in a part of the plan. */
  within(box: PlanBox): string[] {
    return [
      ...this.things.filter((view) => inBox(box, view)),
      ...this.runs.filter((view) => view.line.length > 0 && view.line.every((p) => inBox(box, p))),
    ].map((view) => view.id);
  }

  private fitted: object | null = null;
  /** What the window showed when the shop was last fitted into it; labels stay inside. */
  fittedBox = $state.raw<PlanBox | null>(null);

  /** Shows the whole shop. */
  fit(): void {
    if (this.size.width_px === 0) return;
    const margin = { ...FIT_MARGIN_PX, x: Math.min(FIT_MARGIN_PX.x, this.size.width_px / 4) };
    this.view = viewOf(this.extent ?? EMPTY_BOX, this.size, margin, { ...SCALE_LIMITS, most: 260 });
    this.fitted = this.view;
    const from = this.at(RULER_PX, RULER_PX);
    const to = this.at(this.size.width_px - 4, this.size.height_px - 4);
    this.fittedBox = { left: from.x, top: from.y, right: to.x, bottom: to.y };
  }

  /** Nobody has moved the view since it was fitted. */
  private get untouched(): boolean {
    return this.fitted === null || this.fitted === this.view;
  }

  /** The window has another size; a view that shows the whole shop goes on doing so. */
  resize(width_px: number, height_px: number): void {
    const { untouched } = this;
    this.size = { width_px, height_px };
    if (untouched) this.fit();
  }

  /** Brings a place into the window, if it is not there already. */
  reveal(point: PlanPoint): void {
    const { width_px, height_px } = this.size;
    const { pixelsPerMetre } = this.view;
    const edge = 40 / pixelsPerMetre;
    const from = this.at(0, 0);
    const to = this.at(width_px, height_px);
    const box = { left: from.x + edge, top: from.y + edge, right: to.x - edge, bottom: to.y - edge };
    if (width_px === 0 || inBox(box, point)) return;
    this.view = {
      x: width_px / 2 - point.x * pixelsPerMetre,
      y: height_px / 2 - point.y * pixelsPerMetre,
      pixelsPerMetre,
    };
  }

  private readonly later = new AtRest(() => (this.late = this.wb.result), LATE_MS, Infinity);

  /** Lets what is outside the window follow the result. */
  followResult(): void {
    void this.wb.result;
    this.later.ask();
  }

  say(text: string, bad = false): void {
    clearTimeout(this.timer);
    this.message = { text, bad };
    this.timer = setTimeout(() => (this.message = null), bad ? 9000 : 5000);
  }

  /** Does a command and says so where it is refused. */
  run(command: Parameters<Workbook['run']>[0]): readonly string[] | null {
    const done = this.wb.run(command);
    if (done.ok) return done.created;
    this.say(done.remedy ? `${done.message}: ${done.remedy}` : done.message, true);
    return null;
  }
}
