/** Packages that may run a script when they are installed, and why. */
export const MAY_RUN: Readonly<Record<string, string>>;
/** Weaknesses that are known and stay, by the advisory's name, and why. */
export const ARGUED: Readonly<Record<string, string>>;
export const CLEAN: number;
export const WEAK: number;
export const NOT_RUN: number;
export function lockFaults(lock: {
  readonly packages: Readonly<
    Record<string, { integrity?: string; resolved?: string; hasInstallScript?: boolean }>
  >;
}): string[];
export function verdict(text: string): { readonly code: number; readonly lines: readonly string[] };
