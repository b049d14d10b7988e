import { worthyJoins, type Joins } from '../../core/planning/join-search.ts';
import { sentence } from '../../core/result.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import { instant } from '../../core/units/brand.ts';
import type { JoinSolver } from './messages.ts';
import { pause } from './pace.ts';
import type { Port } from './port.ts';

/** Joins runs for the sake of the stock, until no join gains, the time is up or nobody asks any more. */
export async function join(ask: JoinSolver, port: Port, isWanted: () => boolean): Promise<void> {
  const { jobId, shop, now, queues, budgetMs } = ask;
  const startedAt = performance.now();
  const made = toSearchProblem(shop, instant(now));
  if (!made.ok) return port.send({ kind: 'failed', jobId, message: sentence(made.issues) });
  let joins: Joins | null = null;
  for (const next of worthyJoins(shop, made.value, queues)) {
    joins = next;
    await pause();
    if (performance.now() - startedAt >= budgetMs || !isWanted()) break;
  }
  port.send({ kind: 'joined', jobId, joins });
}
