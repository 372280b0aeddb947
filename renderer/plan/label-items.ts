import type { ThingKind } from '../../core/document/schema-things.ts';
import type { UnitSystem } from '../../core/quantities/dimensions.ts';
import { placeLabels } from '../../core/summary/figures/plan/label-layout.ts';
import type { LabelWish, Paper } from '../../core/summary/figures/plan/label-layout.ts';
import {
  blockedBy,
  ductBoxes,
  ledTexts,
  runTexts,
  runWish,
  shortName,
  tagWish,
  thingWish,
} from './label-wishes.ts';
import { runFigures } from './result-text.ts';
import type { Print } from './result-text.ts';
import { STATUS_WORDS } from './run-status.ts';
import type { RunStatus } from './run-status.ts';
import type { RunView } from '../../core/summary/figures/plan/run-view.ts';
import type { Scene } from './scene.svelte.ts';
import type { ThingView } from '../../core/summary/figures/plan/thing-view.ts';

/** A label of the plan: where its offset counts from, and what it says, the fullest first. */
export interface LabelItem {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly sizes: readonly (readonly string[])[];
  /** Lines of the first size from this one on are results. */
  readonly status: RunStatus | null;
  readonly kind: 'thing' | 'run' | 'tag';
  readonly name: string | null;
  readonly urgent: boolean;
  /** Sizes that stand off and are led to their point by a line. */
  readonly leaders: readonly boolean[];
  readonly wish: (pixelsPerMetre: number) => LabelWish;
}

/** Where a label stands from its item's point [px], and which size it has. */
export interface LabelOffset {
  readonly dx: number;
  readonly dy: number;
  readonly size: number;
  readonly leader: boolean;
}

const URGENT: ReadonlySet<RunStatus> = new Set<RunStatus>(['too-slow', 'too-little']);
/** Junctions are named by their runs, and by name only when they are selected. */
const UNNAMED: ReadonlySet<ThingKind> = new Set<ThingKind>(['wye', 'tee', 'breeches', 'joint']);

/** Hands out the same item while nothing it was made of has changed. */
export class LabelItems {
  private kept = new Map<string, { from: readonly unknown[]; items: readonly LabelItem[] }>();
  private next = new Map<string, { from: readonly unknown[]; items: readonly LabelItem[] }>();

  private keep(id: string, from: readonly unknown[], make: () => readonly LabelItem[]): readonly LabelItem[] {
    const old = this.kept.get(id);
    const same = old && old.from.length === from.length && old.from.every((value, i) => value === from[i]);
    const items = same ? old.items : make();
    this.next.set(id, { from, items });
    return items;
  }

  of(scene: Scene, names: boolean, print: Print): LabelItem[] {
    this.next = new Map();
    const { units, selection } = scene.wb;
    const { results } = scene;
    const runs = scene.shownRuns.flatMap((view) => {
      const result = results?.run(view.id);
      if (!result) return [];
      const status = results!.status(result);
      const chosen = selection.has(view.id);
      const figures = status === 'shut' ? '' : runFigures(result, print);
      return this.keep(view.id, [view, status, figures, chosen], () => [
        runItem(view, status, figures, chosen),
      ]);
    });
    const things = !names
      ? []
      : scene.shownThings.flatMap((view) => {
          if (UNNAMED.has(view.thing.kind) && !selection.has(view.id)) return [];
          const lines = results?.lines(view, scene.runAt.get(view.id), print) ?? [];
          return this.keep(view.id, [view, units, ...lines], () => [thingItem(view, lines, print)]);
        });
    const tags = !names
      ? []
      : scene.shownRuns.flatMap((view) =>
          this.keep(`${view.id} tags`, [view, units], () => tagItems(view, units, print)),
        );
    this.kept = this.next;
    const urgent = runs.filter((item) => item.urgent);
    return [...urgent, ...things, ...runs.filter((item) => !item.urgent), ...tags];
  }
}

function runItem(view: RunView, status: RunStatus, figures: string, chosen: boolean): LabelItem {
  const short = status === 'shut' ? [STATUS_WORDS.shut, ''] : runTexts(figures, STATUS_WORDS[status]);
  const urgent = URGENT.has(status) || chosen;
  const { texts, leaders } = urgent ? ledTexts(short) : { texts: short, leaders: [] };
  const { x, y } = view.labelPlaces[0] ?? { x: 0, y: 0 };
  return {
    id: view.id,
    x,
    y,
    sizes: texts.map((text) => [text]),
    status,
    kind: 'run',
    name: null,
    urgent,
    leaders,
    wish: (scale) => runWish(view, texts, scale, leaders),
  };
}

function thingItem(view: ThingView, results: readonly string[], print: Print): LabelItem {
  const name = shortName(view.name);
  const tall = view.z === 0 ? name : `${name} · ${print(view.z, 'length')} up`;
  const sizes =
    results.length > 0 ? [[tall, ...results], [name, ...results], results, [name]] : [[tall], [name]];
  const { x, y } = view.box;
  const wish = (scale: number) => thingWish(view, sizes, scale);
  return { id: view.id, x, y, sizes, status: null, kind: 'thing', name, urgent: false, leaders: [], wish };
}

/** Heights at risers and drops, and lengths that are typed. */
function tagItems(view: RunView, _units: UnitSystem, print: Print): LabelItem[] {
  const tag = (id: string, x: number, y: number, off_m: number, text: string): LabelItem => ({
    id,
    x,
    y,
    sizes: [[text]],
    status: null,
    kind: 'tag',
    name: null,
    urgent: false,
    leaders: [],
    wish: (scale) => tagWish(id, { x, y }, off_m, text, scale),
  });
  const rises = view.verticals.map((v, i) =>
    tag(`${view.id} rise ${i}`, v.x, v.y, v.diameter_m / 2, `${v.way} to ${print(v.to_m, 'length')}`),
  );
  const typed = (view.run.route?.legs ?? []).flatMap((leg, i) => {
    const [a, b] = [view.line[i], view.line[i + 1]];
    if (!leg.length || !a || !b) return [];
    const text = `${print(leg.length.si, 'length')} typed`;
    return [tag(`${view.id} leg ${i}`, (a.x + b.x) / 2, (a.y + b.y) / 2, view.diameter_m / 2, text)];
  });
  return [...rises, ...typed];
}

/** What the window showed when the whole shop was last fitted into it, in pixels of the plan. */
function paperOf(scene: Scene, pixelsPerMetre: number): Paper | null {
  const box = scene.fittedBox;
  return (
    box && {
      left: box.left * pixelsPerMetre,
      top: box.top * pixelsPerMetre,
      right: box.right * pixelsPerMetre,
      bottom: box.bottom * pixelsPerMetre,
    }
  );
}

/** Finds a place for every label for which there is one. */
export function layOut(
  items: readonly LabelItem[],
  scene: Scene,
  pixelsPerMetre: number,
): Map<string, LabelOffset> {
  const wishes = items.map((item) => item.wish(pixelsPerMetre));
  const placed = placeLabels(
    wishes,
    blockedBy(
      scene.shownThings,
      scene.shownRuns.flatMap((view) => view.marks),
      pixelsPerMetre,
    ),
    ductBoxes(scene.shownRuns, pixelsPerMetre),
    paperOf(scene, pixelsPerMetre),
  );
  const offsets = new Map<string, LabelOffset>();
  items.forEach(({ id, x, y, urgent, leaders, status }, i) => {
    // what has to be read is never left out, nor left as a bare mark
    const bare = placed.get(id)?.size === leaders.length - 1 && status !== 'shut';
    const first = wishes[i]!.sizes[0]?.places[0];
    const forced = urgent && first && (bare || !placed.has(id)) ? { ...first, size: 0 } : null;
    const place = forced ?? placed.get(id);
    if (!place) return;
    const leader = leaders[place.size] === true;
    offsets.set(id, {
      dx: place.x - x * pixelsPerMetre,
      dy: place.y - y * pixelsPerMetre,
      size: place.size,
      leader,
    });
  });
  return offsets;
}
