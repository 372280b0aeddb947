/** The room's air as the bench needs it: that of a solution. */
export interface BenchAir {
  readonly density_kgm3: number;
  readonly viscosity_Pas: number;
  /** Null where the document gives density alone. */
  readonly temperature_K: number | null;
  readonly pressure_Pa: number | null;
}
