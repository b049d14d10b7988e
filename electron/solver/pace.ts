/** A process reports at most so often. */
export const REPORT_MS = 100;

/** Lets a message in. */
export const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
