export declare const CONTENT_POLICY: string;
export declare const MIME: Readonly<Record<string, string>>;
export interface ServedPage {
  readonly url: string;
  readonly port: number;
  close(): Promise<void>;
}
export declare function servePage(folder: string, options?: { readonly port?: number }): Promise<ServedPage>;
