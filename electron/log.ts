import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

export interface Log {
  info(message: string): void;
  error(message: string, cause?: unknown): void;
}

const MAX_BYTES = 2_000_000;
/** A line longer than this is cut; nobody outside may fill the disk with one. */
const MAX_LINE = 110_000;
/** The same line is written at most this often; said in between, it is counted. */
const SAME_LINE_MS = 60_000;
/** Different lines remembered so; past it all are forgotten. */
const MAX_REMEMBERED = 1000;

/**
 * A plain log file. Past 2 MB it becomes FILE.old (over the one before) and begins anew, so that what was said last is
 * always there. Errors go to the terminal too. It never throws: what a line tells of has happened all the same.
 */
export function fileLog(file: string): Log {
  const lines = repeats();
  let size: number | null = null;
  const write = (text: string): void => {
    const line = lines.toWrite(text.slice(0, MAX_LINE), Date.now());
    if (line === null) return;
    const bytes = Buffer.from(`${new Date().toISOString()} ${line}\n`);
    try {
      size ??= begin(file);
      if (size > MAX_BYTES) {
        renameSync(file, `${file}.old`);
        size = 0;
      }
      appendFileSync(file, bytes);
      size += bytes.length;
    } catch (error) {
      size = null;
      console.error(`The log ${file} cannot be written: ${String(error)}`);
    }
  };
  return {
    info: write,
    error(message, cause) {
      const text = `${message}${cause === undefined ? '' : `: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}`}`;
      write(`ERROR ${text}`);
      console.error(text);
    },
  };
}

/** Make the folder if there is none. @returns the file's size */
function begin(file: string): number {
  mkdirSync(dirname(file), { recursive: true });
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}

/** Tells which lines were said within the last minute. */
function repeats() {
  const said = new Map<string, { at: number; times: number }>();
  return {
    /** @returns the line as it is to be written, or null when it was only just */
    toWrite(text: string, now: number): string | null {
      const before = said.get(text);
      if (before && now - before.at < SAME_LINE_MS) {
        before.times++;
        return null;
      }
      if (said.size >= MAX_REMEMBERED) said.clear();
      said.set(text, { at: now, times: 0 });
      return before && before.times > 0 ? `(${before.times} more times before this) ${text}` : text;
    },
  };
}

/** For the command line: only errors, on the terminal. */
export const terminalLog: Log = {
  info: () => undefined,
  error: (message, cause) => console.error(cause === undefined ? message : `${message}: ${String(cause)}`),
};
