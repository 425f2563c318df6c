/** Path of a Chromium on this machine, or null. */
export declare function findChromium(): string | null;
