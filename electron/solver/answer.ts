import { buildProblem } from '../../core/schedule/build.ts';
import type { Problem } from '../../core/schedule/problem.ts';
import { repair, type Repair } from '../../core/schedule/repair.ts';
import { replanRush } from '../../core/schedule/rush.ts';
import type { RushWay } from '../../core/schedule/rush/way.ts';
import { sentence, type Result } from '../../core/result.ts';
import type { AskSolver } from './messages.ts';
import { pause, REPORT_MS } from './pace.ts';
import type { Port } from './port.ts';

/** Answers a longer question: the best so far at most ten times a second, until told to stop or the time is up. */
export async function answer(ask: AskSolver, port: Port, isWanted: () => boolean): Promise<void> {
  const { jobId, budgetMs } = ask;
  const startedAt = performance.now();
  const built = buildProblem(ask.problem);
  const found = built.ok ? searchFor(ask, built.value) : built;
  if (!found.ok) return port.send({ kind: 'failed', jobId, message: sentence(found.issues) });
  let lastReport = -Infinity;
  let best: RushWay | Repair | null = null;
  let unsent = false;
  const report = (kind: 'found' | 'answered') => {
    lastReport = performance.now();
    const fresh = unsent ? best : null;
    const way = fresh && 'way' in fresh ? fresh : null;
    const mended = fresh && 'reach' in fresh ? fresh : null;
    port.send({ kind, jobId, seconds: (lastReport - startedAt) / 1000, way, repair: mended });
    unsent = false;
  };
  for (const next of found.value) {
    unsent ||= next !== best;
    best = next;
    const now = performance.now();
    if (now - startedAt >= budgetMs) break;
    if (now - lastReport >= REPORT_MS) report('found');
    await pause();
    if (!isWanted()) break;
  }
  report('answered');
}

function searchFor(
  { about, queues, seed }: AskSolver,
  problem: Problem,
): Result<Generator<RushWay | Repair, void>> {
  return about.kind === 'rush'
    ? replanRush(problem, queues, about.jobs, { seed })
    : repair(problem, queues, { seed, machines: about.machines });
}
