import { Refused } from '../refused.ts';
import type { Found, FromSolver, Start } from './messages.ts';
import { stepsOf } from './tasks.ts';

/** A process reports at most so often. */
const REPORT_MS = 100;

/** Lets a message in. */
const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/**
 * One job in a process of its own: core yields the best so far; here the clock is kept, progress told at most ten times a
 * second, and the work ended when it is done, its time is up or nobody wants it any more.
 */
export async function work(
  { jobId, task, budgetMs }: Start,
  send: (message: FromSolver) => void,
  isWanted: () => boolean,
): Promise<void> {
  const endsAt = performance.now() + budgetMs;
  const left = (): number => endsAt - performance.now();
  let found: Found = { best: null, counts: null };
  let sent: Found['best'] = null;
  let reportedAt = -Infinity;
  const report = (kind: 'progress' | 'done'): void => {
    reportedAt = performance.now();
    send({ kind, jobId, counts: found.counts, best: found.best === sent ? null : found.best });
    sent = found.best;
  };
  try {
    const steps = await stepsOf(task, () => left() / 1000);
    await pause();
    for (found of steps) {
      if (left() <= 0) break;
      if (performance.now() - reportedAt >= REPORT_MS) report('progress');
      await pause();
      if (!isWanted()) break;
    }
    report('done');
  } catch (error) {
    const refused = error instanceof Refused;
    send({ kind: refused ? 'refused' : 'failed', jobId, message: refused ? error.message : String(error) });
  }
}
