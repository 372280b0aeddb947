export interface FindMachine {
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly userId: number | null;
}
export type FoundElectron =
  { readonly program: string; readonly why: null } | { readonly program: null; readonly why: string };
export declare function findElectron(top: string, machine?: FindMachine): FoundElectron;
export declare function electronProgram(
  top: string,
  env?: Readonly<Record<string, string | undefined>>,
): string | null;
export declare const GET_IT: string;
