import { randomUUID } from 'node:crypto';
import type { JobState } from '../../core/contract/job.ts';
import type { SearchState } from '../../core/contract/search.ts';
import { seenQueues } from '../../core/edit/stale.ts';
import { NEWEST_WORK } from '../../core/learn/plan-chances.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { gistOf, type PlanGist } from '../../core/planning/figures.ts';
import type { Problem, Queues } from '../../core/schedule/problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import type { Instant } from '../../core/units/brand.ts';
import type { Log } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { Plan } from '../solver/messages.ts';
import type { Clock } from './clock.ts';
import type { EditService } from './edit.ts';
import type { LivingShop } from './living-shop.ts';
import type { Pushes } from './pushes.ts';
import type { QuestionWorker } from './question-worker.ts';
import { searchJob } from './search-job.ts';
import { SolverJob } from './solver-job.ts';

const LABEL = 'Plan the week';
const CURVE_POINTS = 200;
/** The joins that cost least time are tried first, so what is not reached by then matters least. */
const JOIN_MS = 2000;

interface Deps {
  readonly living: LivingShop;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly edit: EditService;
  readonly launch: LaunchSolver;
  readonly questions: QuestionWorker;
  readonly log: Log;
}

/** Plans the week: one search at a time; its best plan is checked and becomes one step of the history. */
export const searchService = (deps: Deps) => {
  const { living, clock, pushes, launch, log } = deps;
  let state: SearchState | null = null;
  let job: Pick<SolverJob<'search'>, 'stop'> | null = null;
  let starting = false;

  const tell = (next: SearchState): void => {
    state = next;
    pushes.send({ kind: 'search', state });
  };

  return {
    /** The search that is going, or the last one. */
    read: (): SearchState | null => state,

    /** @throws Refused when a search is going, there is nothing to plan, or too little finished work to protect by */
    async start(
      seconds: number,
      seed: number,
      protect: number | null = null,
      by = '',
    ): Promise<{ jobId: string }> {
      if (starting || state?.phase === 'running')
        throw new Refused('busy', 'The week is being planned already. Wait until that is done, or stop it.');
      const { shop, revision: mark } = living.read();
      const now = clock.now();
      const { problem: plain, queues } = valueOf(toSearchProblem(shop, now));
      starting = true;
      const problem = await pulledIn(plain, shop, now, protect, deps).finally(() => (starting = false));
      if (problem.input.jobs.length === 0)
        throw new Refused(
          'refused',
          'There is nothing to plan: no open work order has a line that can be made.',
        );
      const present = valueOf(decode(problem, queues));
      const gistNow = gistKeeper(shop, problem, gistOf(shop, present));
      const search = searchJob({
        problem: problem.input,
        queues,
        seconds,
        seed,
        launch,
        log,
        onChange({ state: { phase }, best }) {
          if (phase === 'running')
            tell((running = { ...withProgress(running, search), gist: gistNow(best) }));
        },
      });
      let running = firstState(search.state, protect, present.objective, gistNow(null));
      job = search;
      tell(running);
      void search.end
        .then(() => withJoins(search, shop, now, deps, (joining) => (job = joining)))
        .then(({ best, joins }) => {
          const last = { ...withProgress(running, search), joins, gist: gistNow(best) };
          tell({ ...last, ...outcome(search.state.phase, problem, mark, best, by, deps) });
        });
      return { jobId: search.jobId };
    },

    /** The best plan so far is kept. A search that is over already is left alone. */
    stop(jobId: string): void {
      if (state?.jobId === jobId) job?.stop();
    },
  };
};

/** Tells the best plan so far at a glance, worked out once for each plan; what cannot be timed leaves the one before. */
function gistKeeper(shop: Shop, problem: Problem, first: PlanGist): (best: Plan | null) => PlanGist {
  let gist = first;
  let told: Queues | null = null;
  return (best) => {
    if (best === null || best.queues === told) return gist;
    told = best.queues;
    const schedule = decode(problem, best.queues);
    if (schedule.ok) gist = gistOf(shop, schedule.value);
    return gist;
  };
}

/** After a search that ended by itself: its plan with the runs joined that the stock is worth. Told to stop, it is left at once. */
async function withJoins(
  { best, state }: SolverJob<'search'>,
  shop: Shop,
  now: Instant,
  { launch, log }: Deps,
  onStart: (joining: SolverJob<'join'>) => void,
): Promise<{ best: Plan | null; joins: SearchState['joins'] }> {
  if (best === null || state.phase !== 'finished' || shop.settings.weights.material === 0)
    return { best, joins: null };
  const joining = new SolverJob<'join'>({
    name: 'joining runs',
    sorry: 'Runs could not be joined; the plan of the search stands.',
    tasks: [{ kind: 'join', shop, now, queues: best.queues }],
    budgetMs: JOIN_MS,
    stopGraceMs: 0,
    launch,
    log,
  });
  onStart(joining);
  const { best: found, state: end } = await joining.end;
  if (end.phase !== 'finished' || !found || found.count === 0) return { best, joins: null };
  const { queues, count, savedCents } = found;
  return { best: { ...best, queues }, joins: { count, savedCents } };
}

type Outcome = Pick<SearchState, 'phase' | 'stepId' | 'message'>;

/** How a search ended: its plan stored, or the reason why not. Never throws. */
function outcome(
  phase: SearchState['phase'],
  problem: Problem,
  mark: number,
  best: Plan | null,
  by: string,
  deps: Deps,
): Outcome {
  try {
    return { phase, ...adopt(phase === 'failed', problem, mark, best, by, deps) };
  } catch (error) {
    if (!(error instanceof Refused)) deps.log.error('the plan found could not be stored', error);
    const why =
      error instanceof Refused
        ? error.message
        : 'The plan found could not be stored; the log file has the details.';
    return { phase: 'failed', stepId: null, message: `${why} The plan stays as it was.` };
  }
}

/** Store the best plan. @returns the step it became, and the sentence for the screen, null when all went as it should. @throws Refused */
function adopt(
  crashed: boolean,
  problem: Problem,
  mark: number,
  best: Plan | null,
  by: string,
  { edit, living }: Deps,
): Omit<Outcome, 'phase'> {
  const kept = (message: string) => ({ stepId: null, message });
  const failed = crashed ? 'The search stopped working. ' : '';
  const retry = crashed ? ' You can plan again.' : '';
  if (!best) return kept(`${failed}The plan stays as it was.${retry}`);
  if (living.revision !== mark)
    return kept(
      `${failed}You changed the shop while the week was being planned, so the plan found was dropped and yours was kept. Plan again to improve it.`,
    );
  const violations = check(problem, valueOf(decode(problem, best.queues)));
  if (violations.length > 0) throw new Error(`the search broke a rule: ${violations[0]?.message}`);
  // Nothing was changed since the search began, so these are the queues that it began from.
  const seen = seenQueues(living.shop);
  const { stepId } = edit.apply({ do: 'plan.replace', queues: best.queues, label: LABEL, seen }, by);
  if (stepId === null) return kept(`${failed}No better plan was found; the plan stays as it was.${retry}`);
  return {
    stepId,
    message: failed ? `${failed}The best plan found until then was kept.${retry}` : null,
  };
}

/** The problem with due dates pulled in by what plans like this one usually need beyond their times, where that is wished. */
async function pulledIn(
  problem: Problem,
  shop: Shop,
  now: Instant,
  confidence: number | null,
  { living, questions }: Deps,
): Promise<Problem> {
  if (confidence === null) return problem;
  const { records } = living.store.run('read records', ({ rows }) => rows.finishedRecords(null, NEWEST_WORK));
  const dues = await questions.ask(randomUUID(), { kind: 'protect', shop, now, confidence, records });
  const jobs = problem.input.jobs.map((job) => ({ ...job, due: dues[job.id] ?? job.due }));
  return valueOf(buildProblem({ ...problem.input, jobs }));
}

const firstState = (
  job: JobState,
  protect: number | null,
  objective: number,
  gist: PlanGist,
): SearchState => ({
  ...job,
  step: 0,
  evaluations: 0,
  objective,
  startObjective: objective,
  gist,
  startGist: gist,
  bound: null,
  curve: [{ seconds: 0, objective }],
  stepId: null,
  joins: null,
  protect,
});

function withProgress(last: SearchState, { state, best, counts }: SolverJob<'search'>): SearchState {
  const better = best !== null && best.objective < (last.objective ?? Infinity);
  const { seconds } = state;
  return {
    ...last,
    ...counts,
    seconds,
    objective: better ? best.objective : last.objective,
    curve: better ? thinned([...last.curve, { seconds, objective: best.objective }]) : last.curve,
  };
}

/** At most so many points: every second one of the older ones goes, first and last stay. */
const thinned = (curve: SearchState['curve']): SearchState['curve'] =>
  curve.length <= CURVE_POINTS
    ? curve
    : curve.filter((_, i) => i === 0 || i % 2 === 0 || i === curve.length - 1);
