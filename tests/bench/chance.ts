import { performance } from 'node:perf_hooks';
import { spreadOf, timedOf } from '../../core/learn/spread.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { chances } from '../../core/learn/chance.ts';
import { toProblem } from '../../core/planning/to-problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import { sentence, type Result } from '../../core/result.ts';
import type { Instant } from '../../core/units/brand.ts';
import {
  asHappened,
  observations,
  ORIGINS,
  percent,
  rollingOrigin,
  together,
} from '../core/learn/past-plans.ts';

const RUNS = 500;
const LINES = 300;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
}

/** What chances cost on so many lines (the demo's, repeated), and how they were kept in the months held out. */
export function benchChance(shop: Shop, now: Instant, print: (what: string, figure: string) => void): void {
  const { problem, queues } = must(toProblem(shop, now));
  const spread = must(spreadOf(timedOf(shop, observations)));
  const { jobs } = problem.input;
  const more = Array.from({ length: LINES - jobs.length }, (_, k) => copyOf(jobs[k % jobs.length]!, k));
  const larger = must(buildProblem({ ...problem.input, jobs: [...jobs, ...more] }));
  const longer = Object.fromEntries(
    Object.entries(queues).map(([machine, ids]) => [
      machine,
      [
        ...ids,
        ...more.flatMap((job) =>
          job.operations.filter((o) => homeOf(queues, o.id) === machine).map((o) => o.id),
        ),
      ],
    ]),
  );
  const [from, cpuFrom] = [performance.now(), process.cpuUsage()];
  must(chances(larger, longer, spread, { runs: RUNS, seed: 1 }));
  const { user, system } = process.cpuUsage(cpuFrom);
  const took = `${Math.round(performance.now() - from)} ms, ${Math.round((user + system) / 1000)} ms of processor`;
  print(`chances of ${LINES} lines, ${RUNS} runs`, took);
  for (const horizon of ['day', 'week'] as const) {
    const cuts = rollingOrigin(horizon, asHappened, RUNS);
    const each = cuts.map((cut) => percent(cut).toFixed(1)).join(', ');
    print(
      `kept of 80 %, plans of a ${horizon}, after ${ORIGINS.join(', ')} weeks`,
      `${each}; together ${percent(together(cuts)).toFixed(1)} %`,
    );
  }
}

type Job = Parameters<typeof buildProblem>[0]['jobs'][number];

/** The same work again, under another name. */
const copyOf = (job: Job, k: number): Job => ({
  ...job,
  id: `${job.id}~${k}`,
  operations: job.operations.map(({ started: _, ...o }) => ({ ...o, id: `${o.id}~${k}` })),
});

const homeOf = (queues: Readonly<Record<string, readonly string[]>>, copy: string): string | undefined =>
  Object.keys(queues).find((machine) => queues[machine]!.includes(copy.replace(/~\d+$/, '')));
