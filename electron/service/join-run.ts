import type { Joins } from '../../core/planning/join-search.ts';
import type { Queues } from '../../core/schedule/problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import type { Log } from '../log.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import { untilDone } from './solver-run.ts';

/** The joins that cost least time are tried first, so what is not reached by then matters least. */
const BUDGET_MS = 2000;

interface JoinOptions {
  readonly jobId: string;
  readonly shop: Shop;
  readonly now: Instant;
  readonly queues: Queues;
  readonly launch: LaunchSolver;
  readonly log: Log;
}

export interface JoinRun {
  /** Null when no join gains, or none was reckoned: the plan of the search stands. */
  readonly end: Promise<Joins | null>;
  /** Give up; `end` then resolves with null. */
  stop(): void;
}

/** Joins of runs that the stock they save is worth, reckoned in a process of its own (core/planning/join-search.ts). */
export function startJoins({ jobId, shop, now, queues, launch, log }: JoinOptions): JoinRun {
  const solver = launch();
  let found: Joins | null = null;
  let stopped = false;
  const end = untilDone(solver, { kind: 'join', jobId, shop, now, queues, budgetMs: BUDGET_MS }, (answer) => {
    if (answer.kind !== 'joined') return false;
    found = answer.joins;
    return true;
  }).then((failure) => {
    if (failure && !stopped) log.error(`joining runs for ${jobId} had trouble`, failure);
    return !stopped && found && found.count > 0 ? found : null;
  });
  return {
    end,
    stop() {
      stopped = true;
      solver.kill();
    },
  };
}
