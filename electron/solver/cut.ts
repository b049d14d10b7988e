import { improveRun } from '../../core/cutting/plan-run.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { sentence } from '../../core/result.ts';
import { loadHighs, mipWith } from './highs.ts';
import type { CutSolver } from './messages.ts';
import { pause, REPORT_MS } from './pace.ts';
import type { Port } from './port.ts';

/** Cuts one run: the best so far at most ten times a second, until it is proven, the time is up or nobody asks any more. */
export async function cut(ask: CutSolver, port: Port, isWanted: () => boolean): Promise<void> {
  const { jobId, input, budgetMs } = ask;
  const startedAt = performance.now();
  const secondsLeft = (): number => (budgetMs - (performance.now() - startedAt)) / 1000;
  const improving = improveRun(input, { solveMip: mipWith(await loadHighs(), secondsLeft) });
  if (!improving.ok) return port.send({ kind: 'failed', jobId, message: sentence(improving.issues) });
  let lastReport = -Infinity;
  let unsent: CutPlan | null = null;
  const report = (kind: 'cutting' | 'cut') => {
    lastReport = performance.now();
    port.send({ kind, jobId, seconds: (lastReport - startedAt) / 1000, plan: unsent });
    unsent = null;
  };
  for (;;) {
    const step = improving.value.next();
    if (step.done && !step.value.ok)
      return port.send({ kind: 'failed', jobId, message: sentence(step.value.issues) });
    unsent = (step.done ? (step.value.ok ? step.value.value : null) : step.value.plan) ?? unsent;
    if (step.done || step.value.done || secondsLeft() <= 0) break;
    if (performance.now() - lastReport >= REPORT_MS) report('cutting');
    await pause();
    if (!isWanted()) break;
  }
  report('cut');
}
