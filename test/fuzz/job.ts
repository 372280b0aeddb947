/** What a child process is to try. */
export interface Job {
  /** Targets one after the other, each with so many cases. */
  readonly orders: readonly { readonly target: string; readonly runs: number }[];
  readonly seed: number;
  /** When to stop with a target, though fewer cases were tried [ms]. */
  readonly time_ms: number;
  /** Folder that may be written to. */
  readonly folder: string;
  /** File in which the place of the target and the number of the case stand that is being tried. */
  readonly beat: string;
  /** Prints this case of the first target in the place of trying any. */
  readonly show: number | null;
  /** How much of a case is printed [characters]. */
  readonly longest: number;
}

export interface Failure {
  readonly message: string;
  /** Where fast-check finds the case again. */
  readonly path: string;
  readonly given: string;
}

/** How it went. */
export interface Report {
  readonly cases: number;
  readonly outcomes: Readonly<Record<string, number>>;
  readonly slowest_ms: number;
  readonly failure: Failure | null;
}
