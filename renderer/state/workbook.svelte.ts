import { getContext, setContext } from 'svelte';
import { applyCommand } from '../../core/document/commands/apply.ts';
import type { Command } from '../../core/document/commands/command.ts';
import type { DocumentProblem } from '../../core/document/problem.ts';
import type { ShopDocument } from '../../core/document/schema.ts';
import { findGaps } from '../../core/document/shape.ts';
import { settingNames } from '../../core/network/apply-setting.ts';
import type { AirResult, SettingResult } from '../../core/network/solution.ts';
import type { SystemCurve } from '../../core/network/system-curve.ts';
import type { Dimension, UnitSystem } from '../../core/quantities/dimensions.ts';
import { printQuantity } from '../../core/quantities/print.ts';
import { AtRest } from './at-rest.ts';
import type { BenchDesk } from './bench-desk.svelte.ts';
import { History } from './history.ts';
import type { Inquiry } from './inquiry.svelte.ts';
import type { SheetDesk } from './sheet-desk.svelte.ts';
import type { FromSolver } from './solver-messages.ts';
import { Solver } from './solver.ts';

export type Screen = 'plan' | 'ledger' | 'curve' | 'fan-bench' | 'upkeep' | 'sheets';

/** What is asked of a field that is to be focused: the id of its thing, run or piece, and its path. */
export interface FieldFocus {
  readonly id: string;
  readonly path: readonly (string | number)[] | null;
}

export type RunOutcome =
  | { readonly ok: true; readonly created: readonly string[] }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

/** What the panels beside the plan show. */
export interface Panels {
  readonly document: ShopDocument;
  readonly gaps: readonly DocumentProblem[];
  readonly problems: readonly DocumentProblem[];
  readonly result: SettingResult | null;
}

/** What menus may ask of the plan while it is on screen. */
export interface PlanView {
  fit(): void;
  zoomIn(): void;
  zoomOut(): void;
}

/**
 * The open workbook: the document with its history, what the user looks at, and what the solver says. Only this folder
 * writes to it.
 */
export class Workbook {
  document = $state.raw<ShopDocument>(null as unknown as ShopDocument);
  undoLabel = $state<string | null>(null);
  redoLabel = $state<string | null>(null);

  screen = $state<Screen>('plan');
  setting = $state('');
  selection = $state.raw<ReadonlySet<string>>(new Set());
  private shownUnits = $state<UnitSystem>('si');
  focusField = $state.raw<FieldFocus | null>(null);
  /** Fan of the list of fans that is on the bench; the first where there is none of that name. */
  fan = $state('');
  /** What works fans out; null while another screen is shown. */
  desk = $state.raw<BenchDesk | null>(null);
  /** What follows the running hours, and what goes on paper; null while another screen is shown. */
  upkeep = $state.raw<Inquiry<'upkeep'> | null>(null);
  sheets = $state.raw<SheetDesk | null>(null);
  /** The plan's view; null while another screen is shown. */
  planView = $state.raw<PlanView | null>(null);

  solutions = $state.raw<ReadonlyMap<string, SettingResult>>(new Map());
  air = $state.raw<AirResult | null>(null);
  problems = $state.raw<readonly DocumentProblem[]>([]);
  solving = $state(false);
  curve = $state.raw<SystemCurve | null>(null);

  /** What an incomplete shop still lacks; results wait for it. */
  gaps = $derived(findGaps(this.document));
  settings = $derived(settingNames(this.document));
  /** Result of the setting that is looked at. */
  result = $derived(this.solutions.get(this.setting) ?? null);

  /** What the panels show: it follows the plan's own figures when the hand rests. */
  panels = $state.raw<Panels>(null as unknown as Panels);

  private readonly panelsLater = new AtRest(() => this.showPanels());
  readonly history: History<ShopDocument>;
  private readonly solver: Solver;
  private fresh = new Map<string, SettingResult>();
  private curveWanted = false;

  constructor(document: ShopDocument) {
    this.document = document;
    this.history = new History(document);
    this.solver = new Solver((answer, newest) => this.take(answer, newest));
    this.load(document);
  }

  /** Units that figures are shown in; the document keeps its own. */
  get units(): UnitSystem {
    return this.shownUnits;
  }

  set units(units: UnitSystem) {
    if (units === this.shownUnits) return;
    this.shownUnits = units;
    // findings carry their figures in words
    if (this.gaps.length === 0) this.ask();
  }

  /** Starts afresh with another document. */
  load(document: ShopDocument): void {
    this.history.reset(document);
    this.shownUnits = document.units;
    this.selection = new Set();
    this.focusField = null;
    this.solutions = new Map();
    this.fresh = new Map();
    this.curve = null;
    this.solver.forget();
    this.show();
    this.showPanels();
  }

  /** Does one command as one step. */
  run(command: Command): RunOutcome {
    const applied = applyCommand(this.history.document, command);
    if (!applied.ok) return applied;
    this.history.push(applied.label, applied.document);
    this.show();
    return { ok: true, created: applied.created ?? [] };
  }

  begin(label: string): void {
    this.history.begin(label);
  }

  end(): void {
    this.history.end();
    this.labels();
  }

  cancel(): void {
    this.history.cancel();
    this.show();
  }

  undo(): void {
    if (this.history.undo()) this.show();
  }

  redo(): void {
    if (this.history.redo()) this.show();
  }

  select(ids: Iterable<string>, mode: 'set' | 'add' | 'toggle' = 'set'): void {
    const next = new Set(mode === 'set' ? [] : this.selection);
    for (const id of ids) {
      if (mode === 'toggle' && next.has(id)) next.delete(id);
      else next.add(id);
    }
    this.selection = next;
  }

  clearSelection(): void {
    if (this.selection.size > 0) this.selection = new Set();
  }

  /** Shows a thing, run or piece on the plan, a fan of the list on the bench, and puts the focus on one of its fields. */
  goTo(id: string, path: FieldFocus['path'] = null): void {
    if (this.document.fans.some((fan) => fan.id === id)) {
      this.screen = 'fan-bench';
      this.fan = id;
    } else {
      this.screen = 'plan';
      this.select([id]);
    }
    this.focusField = { id, path };
  }

  setSetting(name: string): void {
    this.setting = name;
    this.curve = null;
    this.panelsLater.ask();
    this.ask();
    if (this.curveWanted) this.askCurve();
  }

  /** Works out the system curve of the setting on screen, now and after every edit until `dropCurve`. */
  askCurve(): void {
    this.curveWanted = true;
    if (this.gaps.length === 0) this.solver.curve(this.setting, null);
  }

  dropCurve(): void {
    this.curveWanted = false;
  }

  /** The curves of any setting and fan, also at another speed, to lay over those on screen; null where they cannot be had. */
  curveOf(setting: string, fan: string, speed = 1): Promise<SystemCurve | null> {
    return this.gaps.length === 0 ? this.solver.curveOf(setting, fan, speed) : Promise.resolve(null);
  }

  print(si: number | null | undefined, dimension: Dimension): string {
    return printQuantity(si, dimension, this.units);
  }

  private ask(): void {
    this.solver.solve({ ...this.document, units: this.shownUnits }, this.setting);
  }

  private labels(): void {
    this.undoLabel = this.history.undoLabel;
    this.redoLabel = this.history.redoLabel;
  }

  /** Brings the screen up to the history's document. */
  private show(): void {
    this.document = this.history.document;
    this.labels();
    const ids = new Set(this.selection);
    for (const id of this.selection) if (!this.exists(id)) ids.delete(id);
    if (ids.size !== this.selection.size) this.selection = ids;
    if (!this.settings.includes(this.setting)) this.setting = this.settings[0]!;
    this.panelsLater.ask();
    if (this.gaps.length > 0) {
      this.solutions = new Map();
      this.curve = null;
      this.problems = [];
      return;
    }
    this.solving = true;
    this.ask();
    if (this.curveWanted) this.solver.curve(this.setting, null);
  }

  private showPanels(): void {
    this.panelsLater.drop();
    const { document, gaps, problems, result } = this;
    this.panels = { document, gaps, problems, result };
  }

  private exists(id: string): boolean {
    const { things, runs } = this.document;
    return (
      things.some((thing) => thing.id === id) ||
      runs.some((run) => run.id === id || id.startsWith(`${run.id}.`) || run.pieces.some((p) => p.id === id))
    );
  }

  private take(answer: FromSolver, newest: boolean): void {
    if (this.gaps.length > 0) return;
    if (answer.kind === 'curve') {
      if (newest) this.curve = answer.curve;
      return;
    }
    this.panelsLater.ask();
    if (answer.kind === 'problems') {
      if (!newest) return;
      this.problems = answer.problems;
      this.solutions = new Map();
      this.solving = false;
      return;
    }
    // the setting on screen is shown at once, the others together when all are there
    this.fresh.set(answer.result.name, answer.result);
    this.air = answer.air;
    this.problems = [];
    if (answer.result.name === this.setting || answer.last) {
      const all = new Map([...this.solutions, ...this.fresh]);
      this.solutions = new Map([...all].filter(([name]) => this.settings.includes(name)));
      if (answer.last) this.fresh = new Map();
    }
    if (newest && answer.last) this.solving = false;
  }
}

const KEY = Symbol('workbook');

export const provideWorkbook = (workbook: Workbook): Workbook => setContext(KEY, workbook);
export const getWorkbook = (): Workbook => getContext<Workbook>(KEY);
