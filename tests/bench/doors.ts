import { fork } from 'node:child_process';
import { join } from 'node:path';
import type { Verdict } from '../support/doors/case.ts';

export interface ToChild {
  readonly door: 'file' | 'request';
  readonly from: number;
  readonly to: number;
  readonly seed: number;
}
export type FromChild =
  | { readonly kind: 'begun'; readonly k: number }
  | { readonly kind: 'verdict'; readonly k: number; readonly verdict: Verdict }
  | { readonly kind: 'end' };

/** A process that is silent for so long hangs, and is ended. */
const SILENT_MS = 20_000;

/** What came of the cases so far. */
class Tally {
  readonly counts = { crashed: 0, hung: 0, partial: 0 };
  accepted = 0;
  slowestMs = 0;

  add(door: string, k: number, { fault, what, ms, accepted }: Verdict): void {
    if (accepted) this.accepted += 1;
    this.slowestMs = Math.max(this.slowestMs, ms);
    if (fault === null) return;
    this.counts[fault] += 1;
    process.stderr.write(`${door} ${k} ${fault}\n  ${what}\n`);
  }
}

/**
 * Broken files and requests at the doors of a host with a small shop, in another process, since they are meant to break
 * it: after each the host must still answer, and its file hold what it held, or the whole of what was accepted. Prints one
 * JSON line; faults go to stderr with their number, and `--seed` so much more tries one again.
 */
export async function benchDoors(files: number, requests: number, seed: number): Promise<void> {
  const tally = new Tally();
  for (const [door, count] of [
    ['file', files],
    ['request', requests],
  ] as const)
    for (let from = 0; from < count;) from = await stretch({ door, from, to: count, seed }, tally);
  const { counts, accepted, slowestMs } = tally;
  process.stdout.write(
    `${JSON.stringify({ files, requests, accepted, ...counts, slowestMs: Math.round(slowestMs) })}\n`,
  );
  if (counts.crashed + counts.hung + counts.partial > 0) process.exitCode = 1;
}

/** Cases until the end, or until one takes the process along. @returns the case to go on with */
function stretch(work: ToChild, tally: Tally): Promise<number> {
  const { door, to } = work;
  const child = fork(join(import.meta.dirname, 'doors-child.ts'), { serialization: 'advanced' });
  let at = work.from;
  let hung = false;
  const silent = () => {
    hung = true;
    child.kill('SIGKILL');
  };
  let watch = setTimeout(silent, SILENT_MS);
  child.on('message', (message: FromChild) => {
    clearTimeout(watch);
    if (message.kind === 'end') at = to;
    else watch = setTimeout(silent, SILENT_MS);
    if (message.kind === 'begun') at = message.k;
    if (message.kind === 'verdict') tally.add(door, message.k, message.verdict);
    if (message.kind === 'begun' && message.k % 1000 === 0) process.stderr.write(`${door} ${message.k}\n`);
  });
  child.send(work);
  return new Promise((resolve) => {
    child.once('exit', () => {
      clearTimeout(watch);
      if (at === to) return resolve(to);
      const fault = hung ? 'hung' : 'crashed';
      tally.add(door, at, { fault, what: 'the process was lost', ms: hung ? SILENT_MS : 0, accepted: false });
      resolve(at + 1);
    });
  });
}
