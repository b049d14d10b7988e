import { randomUUID } from 'node:crypto';
import type { Why } from '../../core/planning/answers.ts';
import type { AskState, PromiseAnswer } from '../../core/contract/ask.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { decode } from '../../core/schedule/decode.ts';
import type { Schedule } from '../../core/schedule/problem.ts';
import { withoutTimes } from '../../core/schedule/what-if/without-times.ts';
import type { OrderLine, WorkOrder } from '../../core/shop/order.ts';
import { outageRow, withoutOutage, type Outage } from '../../core/shop/outage.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import { weighRush } from '../../core/planning/weigh-rush.ts';
import type { Log } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { TaskOf } from '../solver/messages.ts';
import type { Clock } from './clock.ts';
import type { LivingShop } from './living-shop.ts';
import type { Pushes } from './pushes.ts';
import type { QuestionWorker } from './question-worker.ts';
import { SolverJob } from './solver-job.ts';

interface Deps {
  readonly living: LivingShop;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly launch: LaunchSolver;
  readonly questions: QuestionWorker;
  readonly log: Log;
}

interface Search {
  readonly seconds: number;
  readonly seed: number;
}

/** Answers questions about the plan. Nothing is stored; one longer question runs at a time. */
export const askService = (deps: Deps) => {
  const { living, clock, questions } = deps;
  const shop = (): Shop => living.shop;
  const longer = longerQuestions(deps);

  return {
    /** @throws Refused for a line that is not in the plan */
    why: (lineId: string): Promise<Why> =>
      questions.ask(randomUUID(), { kind: 'why', shop: shop(), now: clock.now(), lineId }),

    /** @throws Refused naming a line that is not in the plan */
    rush(lineIds: readonly string[], intoFrozen: boolean, { seconds, seed }: Search) {
      const { problem, asPlanned, ways, start, frozen } = valueOf(
        weighRush(shop(), clock.now(), lineIds, intoFrozen),
      );
      const from = { problem: problem.input, asPlanned: asPlanned.input, queues: start, seed };
      const task = { kind: 'rush', ...from, jobs: lineIds } as const;
      const jobId = longer.start(task, seconds);
      return { jobId, ways: ways.map(withoutTimes), frozen };
    },

    /** @throws Refused when the hours out of service are gone */
    repair(outage: Outage, most: number, { seconds, seed }: Search) {
      const { input, queues, machines, published } = afterOutage(shop(), outage, clock);
      const lateBefore = input.jobs
        .filter(({ id, due }) => due !== null && (published.ends[id] ?? due) > due)
        .map(({ id }) => id);
      const jobId = longer.start({ kind: 'repair', problem: input, queues, seed, machines, most }, seconds);
      return { jobId, lateBefore };
    },

    /** @throws Refused for an order that could not be saved, or when it was stopped */
    promise: (order: WorkOrder, lines: readonly OrderLine[], jobId: string): Promise<PromiseAnswer> =>
      questions.ask(jobId, { kind: 'promise', shop: shop(), now: clock.now(), order, lines }),

    stop(jobId: string): void {
      longer.stop(jobId);
      questions.stop(jobId);
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
  let job: SolverJob<Longer> | null = null;
  let state: AskState | null = null;
  const tell = (next: AskState): void => {
    state = next;
    pushes.send({ kind: 'ask', state });
  };

  return {
    start(task: TaskOf<Longer>, seconds: number): string {
      job?.stop();
      const own = new SolverJob<Longer>({
        name: 'the question',
        sorry: 'The search stopped working. The plan stays as it is; ask again.',
        tasks: [task],
        budgetMs: seconds * 1000,
        launch,
        log,
        onChange: (changed) => changed === job && tell(stateOf(changed)),
      });
      job = own;
      state = stateOf(own);
      return own.jobId;
    },
    /** The best so far is kept. A question that is over already is left alone. */
    stop(jobId: string): void {
      if (job?.jobId === jobId) job.stop();
    },
    read: (jobId: string): AskState | null => (state?.jobId === jobId ? state : null),
  };
}

type Longer = 'rush' | 'repair';

const stateOf = ({ state, best }: SolverJob<Longer>): AskState => ({
  ...state,
  way: best && 'way' in best ? best : null,
  repair: best && 'few' in best ? best : null,
});
