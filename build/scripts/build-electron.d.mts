export interface Bundle {
  readonly path: string;
  readonly bytes: number;
}
export declare function buildElectron(folder?: string): Promise<readonly Bundle[]>;
