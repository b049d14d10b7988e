import { buildProblem } from '../../core/schedule/build.ts';
import { improve } from '../../core/schedule/improve.ts';
import { sentence } from '../../core/result.ts';
import { answer } from './answer.ts';
import { cut } from './cut.ts';
import { join } from './join.ts';
import type { Best, ToSolver } from './messages.ts';
import { hostPort } from './port.ts';
import { pause, REPORT_MS } from './pace.ts';
import { reckon } from './question.ts';

/**
 * The search in a process of its own: core yields the best plan so far, this file keeps the clock, reports at most
 * ten times a second, and stops when told or when the time is up.
 */

type Start = Extract<ToSolver, { kind: 'start' }>;

const port = hostPort();
/** The one run that may go on: a newer start replaces it, a stop clears it. */
let wanted = '';

port.listen((message) => {
  if (message.kind === 'stop') {
    if (message.jobId === wanted) wanted = '';
    return;
  }
  wanted = message.jobId;
  const going = begin(message, () => wanted === message.jobId);
  going.catch((error: unknown) => {
    port.send({ kind: 'failed', jobId: message.jobId, message: String(error) });
  });
});

function begin(message: Exclude<ToSolver, { kind: 'stop' }>, isWanted: () => boolean): Promise<void> {
  switch (message.kind) {
    case 'start':
      return run(message);
    case 'ask':
      return answer(message, port, isWanted);
    case 'cut':
      return cut(message, port, isWanted);
    case 'join':
      return join(message, port, isWanted);
    case 'question':
      return reckon(message, port, isWanted);
  }
}

async function run({ jobId, problem: input, queues, seed, budgetMs }: Start): Promise<void> {
  const startedAt = performance.now();
  const built = buildProblem(input);
  if (!built.ok) return port.send({ kind: 'failed', jobId, message: sentence(built.issues) });
  await pause();
  let lastReport = -Infinity;
  let unsent: Best | null = null;
  let count = { step: 0, evaluations: 0, bound: null as number | null };
  let objective = Infinity;
  const report = (kind: 'progress' | 'done') => {
    lastReport = performance.now();
    port.send({ kind, jobId, seconds: (lastReport - startedAt) / 1000, ...count, best: unsent });
    unsent = null;
  };
  for (const found of improve(built.value, { seed, start: queues })) {
    count = { step: found.step, evaluations: found.evaluations, bound: found.bound };
    if (found.objective < objective) {
      objective = found.objective;
      unsent = { queues: found.queues, objective, terms: found.schedule.terms };
    }
    const now = performance.now();
    if (now - startedAt >= budgetMs) break;
    if (now - lastReport >= REPORT_MS) report('progress');
    await pause();
    if (wanted !== jobId) break;
  }
  report('done');
}
