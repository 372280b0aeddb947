/**
 * What happens over running hours. Plain data in SI, time in hours; what does not apply is null, never absent. The
 * screen, the paper and the command line read this and work nothing out again.
 */
export interface UpkeepResult {
  readonly document: string;
  /** Running hours that were asked for [h]. */
  readonly asked_h: number;
  /** Running hours that were reached [h]; less where the march stopped. */
  readonly reached_h: number;
  /** Why it stopped, and what would mend it; null where it did not. */
  readonly stopped: { readonly message: string; readonly remedy: string } | null;
  readonly duty: readonly { readonly setting: string; readonly share: number }[];
  readonly assumptions: readonly Assumption[];
  readonly timeline: readonly UpkeepPoint[];
  readonly events: readonly UpkeepEvent[];
  /** The first time that the filter asks to be cleaned; null where it does not within the hours. */
  readonly firstClean: UpkeepEvent | null;
  /** Bins with a volume that fill within the hours: when for the first time, and how often in all. */
  readonly binsFull: readonly BinFull[];
  readonly totals: UpkeepTotals;
  readonly sentences: readonly string[];
  /** Evaluations of the whole shop that it took. */
  readonly solves: number;
}

/** A figure that the march rests on and where it comes from. */
export interface Assumption {
  readonly what: string;
  readonly value: number;
  readonly dimension: 'fraction' | 'coefficient';
  readonly source: string;
  readonly basis: string;
}

export interface UpkeepPoint {
  readonly time_h: number;
  readonly settings: readonly SettingState[];
  /** Cake on each layer of each filter, in the order of the document. */
  readonly cake: readonly { readonly filter: string; readonly layer: number; readonly load_kgm2: number }[];
  /** Largest drop of each filter over the settings in use [Pa]. */
  readonly drops: readonly { readonly filter: string; readonly drop_Pa: number }[];
  /** How full each bin is since it was last emptied, of its whole volume [-]; null where no volume is given. */
  readonly bins: readonly { readonly id: string; readonly filled: number | null; readonly mass_kg: number }[];
}

export interface SettingState {
  readonly name: string;
  /** Through the first fan [m3/s]. */
  readonly flow_m3s: number;
  /** Below the room at its inlet [Pa]. */
  readonly suction_Pa: number;
  readonly power_W: number | null;
  /** Run with the least to spare among those that held at the start, and what it has over what it needs [-]. */
  readonly tightest: { readonly run: string; readonly margin: number } | null;
  readonly held: number;
  readonly asked: number;
}

export interface BinFull {
  readonly id: string;
  readonly first_h: number;
  readonly times: number;
}

export type UpkeepEventKind = 'run-lost' | 'filter-limit' | 'cleaned';

export interface UpkeepEvent {
  readonly kind: UpkeepEventKind;
  readonly time_h: number;
  /** Run or filter. */
  readonly where: string;
  /** Setting in which it shows; null where it is the same in all. */
  readonly setting: string | null;
}

export interface UpkeepTotals {
  readonly made_kg: number;
  readonly caught: readonly { readonly id: string; readonly mass_kg: number }[];
  readonly filtered: readonly { readonly id: string; readonly mass_kg: number }[];
  /** Through the filter, or out where there is none [kg]. */
  readonly passed_kg: number;
  /** Made less caught, filtered and passed, over made [-]. */
  readonly imbalance: number;
  readonly energy_J: number | null;
  readonly cost: number | null;
}
