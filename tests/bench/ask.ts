import { buildProblem } from '../../core/schedule/build.ts';
import type { Problem, Queues } from '../../core/schedule/problem.ts';
import { promiseDate } from '../../core/schedule/promise.ts';
import { dispatch } from '../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../core/schedule/rules/edd.ts';
import { insertRush, replanRush } from '../../core/schedule/rush.ts';
import { sentence, type Result } from '../../core/result.ts';
import { inventedWeek } from './week.ts';

type Print = (what: string, figure: string) => void;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
}

/** Milliseconds of processor time, which other work on the machine does not lengthen: the median of `times` runs. */
function cpuMs(times: number, work: () => void): number {
  const spent = Array.from({ length: times }, () => {
    const from = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1000;
  });
  return spent.sort((a, b) => a - b)[times >> 1]!;
}

const LINES = 300;
const REPLAN_MS = 2000;

/** Questions about a plan of 600 operations, by due date: two ways for a rush, the third after 2 s, a date to promise. */
export function benchAsk(print: Print): void {
  const problem = must(buildProblem(inventedWeek(LINES, 1)));
  const queues = dispatch(problem, dueDateRule(problem));
  const some = ['L40', 'L150', 'L260'];
  const middle = (ask: (line: string) => void) =>
    `${Math.max(...some.map((line) => cpuMs(3, () => ask(line)))).toFixed(0)} ms of CPU`;
  print(
    `rush, two ways, ${problem.operations} operations (slowest of 3 lines)`,
    middle((line) => void must(insertRush(problem, queues, [line]))),
  );
  print(
    'date to promise, the same plan',
    middle((line) => void must(promiseDate(problem, queues, line))),
  );
  print('rush, all re-planned for 2 s: cost against the better quick way', replanned(problem, queues));
}

function replanned(problem: Problem, queues: Queues): string {
  const quick = must(insertRush(problem, queues, ['L150']));
  const best = quick.reduce((a, b) => (b.objectiveAdded < a.objectiveAdded ? b : a));
  const until = performance.now() + REPLAN_MS;
  const started = performance.now();
  let firstMs = 0;
  let found = best;
  for (const way of must(replanRush(problem, best.queues, ['L150'], { seed: 1 }))) {
    firstMs ||= performance.now() - started;
    found = way;
    if (performance.now() > until) break;
  }
  const gain = (1 - found.schedule.objective / best.schedule.objective) * 100;
  return `${gain.toFixed(1)} % better, first after ${firstMs.toFixed(0)} ms`;
}
