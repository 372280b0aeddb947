export declare function pageIsStale(top: string): boolean;
