import { appendFileSync, mkdirSync, statSync, truncateSync } from 'node:fs';
import { dirname } from 'node:path';

export interface Log {
  info(message: string): void;
  error(message: string, cause?: unknown): void;
}

const MAX_BYTES = 2_000_000;

/** A plain log file; it starts over when it has grown past 2 MB. Errors go to the terminal too. */
export function fileLog(file: string): Log {
  mkdirSync(dirname(file), { recursive: true });
  if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > MAX_BYTES) truncateSync(file);
  const write = (line: string) => appendFileSync(file, `${new Date().toISOString()} ${line}\n`);
  return {
    info: write,
    error(message, cause) {
      const text = `${message}${cause === undefined ? '' : `: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}`}`;
      write(`ERROR ${text}`);
      console.error(text);
    },
  };
}

/** For the command line: only errors, on the terminal. */
export const terminalLog: Log = {
  info: () => undefined,
  error: (message, cause) => console.error(cause === undefined ? message : `${message}: ${String(cause)}`),
};
