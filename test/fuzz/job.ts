/** What a child process is to try. */
export interface Job {
  readonly target: string;
  readonly seed: number;
  readonly runs: number;
  /** When to stop, though fewer cases were tried [ms]. */
  readonly time_ms: number;
  /** Folder that may be written to. */
  readonly folder: string;
  /** File in which the number of the case stands that is being tried. */
  readonly beat: string;
  /** Prints this case in the place of trying any. */
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
