import { randomUUID } from 'node:crypto';
import { availableParallelism } from 'node:os';
import type { SearchState } from '../../core/contract/search.ts';
import { NEWEST_WORK } from '../../core/report/chances.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { gistOf, type PlanGist } from '../../core/planning/figures.ts';
import type { Problem, Queues, Schedule } from '../../core/schedule/problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import type { Instant } from '../../core/units/brand.ts';
import type { Store } from '../db/open.ts';
import type { Log } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import { startJoins } from './join-run.ts';
import type { Clock } from './clock.ts';
import type { EditService } from './edit.ts';
import type { Pushes } from './pushes.ts';
import type { Dues } from './pulled-in.ts';
import type { Reckoner } from './reckoner.ts';
import { startRun, type RunEnd, type RunProgress } from './search-run.ts';
import { readShop } from './shop.ts';

const LABEL = 'Plan the week';
const PUSH_MS = 100;
const CURVE_POINTS = 200;

/** How many searches run side by side: two where the machine has the cores. */
export const searchProcesses = (): number => Math.min(2, availableParallelism());

interface Deps {
  readonly store: Store;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly edit: EditService;
  readonly launch: LaunchSolver;
  readonly reckon: Reckoner;
  readonly log: Log;
}

/** Plans the week: one run at a time; its best plan is checked and becomes one step of the history. */
export const searchService = (deps: Deps) => {
  const { store, clock, pushes, edit, launch } = deps;
  let state: SearchState | null = null;
  let stop: () => void = () => undefined;
  let pushedAt = -Infinity;
  let starting = false;

  const tell = (next: SearchState): void => {
    state = next;
    pushedAt = performance.now();
    pushes.send({ kind: 'search', state });
  };

  return {
    /** The run that is going, or the last one. */
    read: (): SearchState | null => state,

    /** @throws Refused when a run is going, there is nothing to plan, or too little finished work to protect by */
    async start(seconds: number, seed: number, protect: number | null = null): Promise<{ jobId: string }> {
      if (starting || state?.phase === 'running')
        throw new Refused('busy', 'The week is being planned already. Wait until that is done, or stop it.');
      const shop = store.run('read the shop', readShop);
      const now = clock.now();
      const mark = edit.mark();
      const { problem: plain, queues } = valueOf(toSearchProblem(shop, now));
      starting = true;
      const problem = await pulledIn(plain, shop, now, protect, deps).finally(() => (starting = false));
      if (problem.input.jobs.length === 0)
        throw new Refused(
          'refused',
          'There is nothing to plan: no open work order has a line that can be made.',
        );
      const jobId = randomUUID();
      const present = valueOf(decode(problem, queues));
      let running = firstState(jobId, seconds, protect, present, gistOf(shop, present));
      const gistNow = gistKeeper(shop, problem, running.startGist);
      const onProgress = (progress: RunProgress): void => {
        running = withProgress(running, progress);
        if (performance.now() - pushedAt >= PUSH_MS) tell({ ...running, gist: gistNow(progress.best) });
      };
      const run = startRun({
        jobId,
        problem: problem.input,
        queues,
        seconds,
        seed,
        processes: searchProcesses(),
        launch,
        onProgress,
      });
      stop = run.stop;
      tell(running);
      void run.end
        .then((end) => withJoins(end, { jobId, shop, now, launch, log: deps.log }, (end) => (stop = end)))
        .then(({ end, joins }) => {
          const last = { ...withProgress(running, end), joins, gist: gistNow(end.best) };
          tell(endState(last, problem, mark, end, deps));
        });
      return { jobId };
    },

    /** The best plan so far is kept. A run that is over already is left alone. */
    stop(jobId: string): void {
      if (state?.jobId === jobId && state.phase === 'running') stop();
    },
  };
};

/** Tells the best plan so far at a glance, worked out once for each plan; what cannot be timed leaves the one before. */
function gistKeeper(shop: Shop, problem: Problem, first: PlanGist): (best: RunProgress['best']) => PlanGist {
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
  end: RunEnd,
  options: Omit<Parameters<typeof startJoins>[0], 'queues'>,
  onStop: (stop: () => void) => void,
): Promise<{ end: RunEnd; joins: SearchState['joins'] }> {
  const { best } = end;
  if (best === null || end.phase !== 'finished' || options.shop.settings.weights.material === 0)
    return { end, joins: null };
  const run = startJoins({ ...options, queues: best.queues });
  onStop(run.stop);
  const found = await run.end;
  if (!found) return { end, joins: null };
  const { count, savedCents } = found;
  return {
    end: { ...end, best: { ...best, queues: found.queues } },
    joins: { count, savedCents },
  };
}

/** Where a run ended, its plan stored or the reason why not. Never throws. */
function endState(
  last: SearchState,
  problem: Problem,
  mark: number,
  end: RunEnd,
  { edit, log }: Deps,
): SearchState {
  if (end.failure) log.error(`the search ${last.jobId} had trouble`, end.failure);
  try {
    return { ...last, phase: end.phase, ...adopt(problem, mark, end, edit) };
  } catch (error) {
    if (!(error instanceof Refused)) log.error('the plan found could not be stored', error);
    const why =
      error instanceof Refused
        ? error.message
        : 'The plan found could not be stored; the log file has the details.';
    return { ...last, phase: 'failed', message: `${why} The plan stays as it was.` };
  }
}

/** Store the best plan. @returns the step it became, and the sentence for the screen, null when all went as it should. @throws Refused */
function adopt(
  problem: Problem,
  mark: number,
  { best, phase }: RunEnd,
  edit: EditService,
): Pick<SearchState, 'stepId' | 'message'> {
  const kept = (message: string) => ({ stepId: null, message });
  const failed = phase === 'failed' ? 'The search stopped working. ' : '';
  const retry = phase === 'failed' ? ' You can plan again.' : '';
  if (!best) return kept(`${failed}The plan stays as it was.${retry}`);
  if (edit.mark() !== mark)
    return kept(
      `${failed}You changed the shop while the week was being planned, so the plan found was dropped and yours was kept. Plan again to improve it.`,
    );
  const violations = check(problem, valueOf(decode(problem, best.queues)));
  if (violations.length > 0) throw new Error(`the search broke a rule: ${violations[0]?.message}`);
  const { changes } = edit.apply({ do: 'plan.replace', queues: best.queues, label: LABEL });
  if (changes.length === 0)
    return kept(`${failed}No better plan was found; the plan stays as it was.${retry}`);
  return {
    stepId: edit.mark(),
    message: failed ? `${failed}The best plan found until then was kept.${retry}` : null,
  };
}

/** The problem with due dates pulled in by what plans like this one usually need beyond their times, where that is wished. */
async function pulledIn(
  problem: Problem,
  shop: Shop,
  now: Instant,
  confidence: number | null,
  { store, reckon }: Deps,
): Promise<Problem> {
  if (confidence === null) return problem;
  const { records } = store.run('read records', ({ rows }) => rows.finishedRecords(null, NEWEST_WORK));
  const dues: Dues = await reckon.ask(randomUUID(), shop, now, { kind: 'protect', confidence, records });
  const jobs = problem.input.jobs.map((job) => ({ ...job, due: dues[job.id] ?? job.due }));
  return valueOf(buildProblem({ ...problem.input, jobs }));
}

const firstState = (
  jobId: string,
  budgetSeconds: number,
  protect: number | null,
  { objective }: Pick<Schedule, 'objective'>,
  gist: PlanGist,
): SearchState => ({
  jobId,
  phase: 'running',
  seconds: 0,
  budgetSeconds,
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
  message: null,
  protect,
});

function withProgress(
  state: SearchState,
  { seconds, step, evaluations, bound, best }: RunProgress,
): SearchState {
  const better = best !== null && best.objective < (state.objective ?? Infinity);
  return {
    ...state,
    seconds,
    step,
    evaluations,
    bound,
    objective: better ? best.objective : state.objective,
    curve: better ? thinned([...state.curve, { seconds, objective: best.objective }]) : state.curve,
  };
}

/** At most so many points: every second one of the older ones goes, first and last stay. */
const thinned = (curve: SearchState['curve']): SearchState['curve'] =>
  curve.length <= CURVE_POINTS
    ? curve
    : curve.filter((_, i) => i === 0 || i % 2 === 0 || i === curve.length - 1);
