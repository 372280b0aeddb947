type Env = Readonly<Record<string, string | undefined>>;

export declare const PACKAGER: { readonly name: string; readonly version: string };
export declare function missingForPackaging(top: string, env?: Env): string[];
export declare function packagerWords(top: string, dir: boolean, env?: Env): string[];
