import type { Plugin } from 'vite';

export interface Notice {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly by: string | null;
  readonly homepage: string | null;
  readonly texts: readonly string[];
}
export declare const NOTICES_FILE: string;
export declare function packagesOf(modules: Iterable<string>): string[];
export declare function noticeOf(folder: string): Notice;
export declare function noticesText(folders: readonly string[]): string;
export declare function noticesPlugin(): Plugin;
