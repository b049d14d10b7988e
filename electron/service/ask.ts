import { randomUUID } from 'node:crypto';
import type { Why } from '../../core/planning/answers.ts';
import type { AskState, PromiseAnswer } from '../../core/contract/ask.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { decode } from '../../core/schedule/decode.ts';
import type { Schedule } from '../../core/schedule/problem.ts';
import { insertRush } from '../../core/schedule/rush.ts';
import { withoutTimes } from '../../core/schedule/what-if/without-times.ts';
import type { OrderLine, WorkOrder } from '../../core/shop/order.ts';
import { outageRow, withoutOutage, type Outage } from '../../core/shop/outage.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import type { Store } from '../db/open.ts';
import type { Log } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { AskSolver, Found } from '../solver/messages.ts';
import { startAsk } from './ask-run.ts';
import type { Clock } from './clock.ts';
import type { Pushes } from './pushes.ts';
import type { Reckoner } from './reckoner.ts';
import { readShop } from './shop.ts';

const PUSH_MS = 100;

interface Deps {
  readonly store: Store;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly launch: LaunchSolver;
  readonly reckon: Reckoner;
  readonly log: Log;
}

interface Search {
  readonly seconds: number;
  readonly seed: number;
}

/** Answers questions about the plan. Nothing is stored; one longer question runs at a time. */
export const askService = (deps: Deps) => {
  const { store, clock, reckon } = deps;
  const shop = (): Shop => store.run('read the shop', readShop);
  const longer = longerQuestions(deps);

  return {
    /** @throws Refused for a line that is not in the plan */
    why: (lineId: string): Promise<Why> =>
      reckon.ask(randomUUID(), shop(), clock.now(), { kind: 'why', lineId }),

    /** @throws Refused naming a line that is not in the plan */
    rush(lineIds: readonly string[], { seconds, seed }: Search) {
      const { problem, queues } = valueOf(toSearchProblem(shop(), clock.now()));
      const ways = valueOf(insertRush(problem, queues, lineIds));
      const cheaper = ways.reduce((a, b) => (b.objectiveAdded < a.objectiveAdded ? b : a));
      const jobId = longer.start({
        problem: problem.input,
        queues: cheaper.queues,
        seed,
        budgetMs: seconds * 1000,
        about: { kind: 'rush', jobs: lineIds },
      });
      return { jobId, ways: ways.map(withoutTimes) };
    },

    /** @throws Refused when the hours out of service are gone */
    repair(outage: Outage, { seconds, seed }: Search) {
      const { input, queues, machines, published } = afterOutage(shop(), outage, clock);
      const lateBefore = input.jobs
        .filter(({ id, due }) => due !== null && (published.ends[id] ?? due) > due)
        .map(({ id }) => id);
      const jobId = longer.start({
        problem: input,
        queues,
        seed,
        budgetMs: seconds * 1000,
        about: { kind: 'repair', machines },
      });
      return { jobId, lateBefore };
    },

    /** @throws Refused for an order that could not be saved, or when it was stopped */
    promise: (order: WorkOrder, lines: readonly OrderLine[], jobId: string): Promise<PromiseAnswer> =>
      reckon.ask(jobId, shop(), clock.now(), { kind: 'promise', order, lines }),

    stop(jobId: string): void {
      longer.stop(jobId);
      reckon.stop(jobId);
    },
    read: longer.read,
  };
};

/** The shop with its new hours; what disturbs is measured from the plan as it was without them. */
function afterOutage(shop: Shop, outage: Outage, clock: Clock) {
  const row = outageRow(shop, outage);
  if (!row)
    throw new Refused(
      'refused',
      'This downtime is not in the shop any more. Nothing was changed; enter it again.',
    );
  const { problem, queues } = valueOf(toSearchProblem(shop, clock.now()));
  const before = valueOf(toSearchProblem(withoutOutage(shop, outage), clock.now()));
  const published: Schedule = valueOf(decode(before.problem, before.queues));
  const { input } = valueOf(buildProblem({ ...problem.input, reference: before.problem.input.reference }));
  // A machine that never opens again is not in the problem: its work is spread over the others. People may be missing anywhere.
  const machines = input.machines
    .map(({ id }) => id)
    .filter((id) => !('machineId' in row) || id === row.machineId);
  return { input, queues, machines, published };
}

/** The longer questions: one at a time, a newer one ends the older. */
function longerQuestions({ pushes, launch, log }: Deps) {
  let state: AskState | null = null;
  let stop: () => void = () => undefined;

  const start = (question: Omit<AskSolver, 'kind' | 'jobId'>): string => {
    stop();
    const jobId = randomUUID();
    let pushedAt = -Infinity;
    let own: AskState = firstState(jobId, question.budgetMs / 1000);
    const tell = (next: AskState): void => {
      own = next;
      if (state?.jobId !== jobId) return;
      state = own;
      if (own.phase === 'running' && performance.now() - pushedAt < PUSH_MS) return;
      pushedAt = performance.now();
      pushes.send({ kind: 'ask', state: own });
    };
    state = own;
    let stopped = false;
    const run = startAsk(launch, { kind: 'ask', jobId, ...question }, (found) => tell(withFound(own, found)));
    stop = () => {
      stopped = true;
      run.stop();
    };
    void run.end.then((failure) => {
      if (failure && !stopped) log.error(`the question ${jobId} had trouble`, failure);
      const failed = failure !== null && !stopped;
      const message = failed ? 'The search stopped working. The plan stays as it is; ask again.' : null;
      tell({ ...own, phase: failed ? 'failed' : stopped ? 'stopped' : 'finished', message });
    });
    return jobId;
  };

  return {
    start,
    /** The best so far is kept. A question that is over already is left alone. */
    stop(jobId: string): void {
      if (state?.jobId === jobId && state.phase === 'running') stop();
    },
    read: (jobId: string): AskState | null => (state?.jobId === jobId ? state : null),
  };
}

const firstState = (jobId: string, budgetSeconds: number): AskState => ({
  jobId,
  phase: 'running',
  seconds: 0,
  budgetSeconds,
  way: null,
  repair: null,
  message: null,
});

const withFound = (state: AskState, { seconds, way, repair }: Found): AskState => ({
  ...state,
  seconds,
  way: way ? withoutTimes(way) : state.way,
  repair: repair ? withoutTimes(repair) : state.repair,
});
