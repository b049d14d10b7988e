import type { CutsFound, Improving } from '../../core/contract/cuts.ts';
import type { CutAnswer } from '../../core/cutting/answer.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { Clock } from './clock.ts';
import type { StoredAnswers } from './cut-answers.ts';
import { keptChoices } from './kept-choices.ts';
import type { LivingShop } from './living-shop.ts';
import type { Pushes } from './pushes.ts';
import { SolverJob } from './solver-job.ts';

/** Nothing was changed and nothing else is worked out for so long: then the app is idle. */
const IDLE_MS = 10_000;
/** For one run, and for all of them together. */
const SECONDS_EACH = 5;
const BUDGET_MS = 10 * 60_000;

/** Better sheets are told no more often: with each, a screen looks at all runs anew, for one leaves other stock to the next. */
const TELL_MS = 5_000;

export interface ImproverDeps {
  readonly living: LivingShop;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly launch: LaunchSolver;
  readonly log: Log;
  /** Other than usual in tests. */
  readonly idleMs?: number;
  readonly secondsEach?: number;
}

/**
 * Works on all runs of the plan that may be cut better, in a process of low priority, while the app is idle. Any change, and
 * any search, question or run that somebody waits for, ends it; it begins again when that is over.
 */
export class CutImprover {
  readonly #deps: ImproverDeps;
  readonly #answers: StoredAnswers;
  readonly #idleMs: number;
  readonly #kept: ReturnType<typeof keptChoices>;
  #job: SolverJob<'cutAll'> | null = null;
  #waiting: NodeJS.Timeout | undefined;
  /** Jobs that somebody waits for, by their ids. */
  readonly #others = new Set<string>();
  #state: Improving = { phase: 'waiting', left: 0 };
  /** Found and kept, but not told yet. */
  readonly #untold: CutsFound['answers'][number][] = [];
  #toldAt = -Infinity;

  constructor(deps: ImproverDeps, answers: StoredAnswers) {
    this.#deps = deps;
    this.#answers = answers;
    this.#idleMs = deps.idleMs ?? IDLE_MS;
    this.#kept = keptChoices(deps.living.store.file);
    if (!this.#kept.read().idleCutting) this.#state = { phase: 'stopped', left: 0 };
    deps.pushes.listen((push) => {
      if (push.kind === 'changes') this.#again();
      else if (push.kind === 'search' || push.kind === 'ask' || push.kind === 'cut') {
        const { jobId, phase } = push.state;
        if (phase === 'running') this.#others.add(jobId);
        else this.#others.delete(jobId);
        this.#again();
      }
    });
    this.#again();
  }

  get state(): Improving {
    return this.#state;
  }

  /** Until the other is wanted, also after the next start. @throws Refused when it holds only until then */
  improve(on: boolean): void {
    if (on === (this.#state.phase !== 'stopped')) return;
    this.#tell({ ...this.#state, phase: on ? 'waiting' : 'stopped' });
    this.#again(on ? 0 : this.#idleMs);
    try {
      this.#kept.write({ idleCutting: on });
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      throw new Refused(
        error.code,
        `Runs are ${on ? '' : 'not '}worked on until Foldweek is started again, but not after that. ${error.message}`,
      );
    }
  }

  /** What was worked on is kept; it begins again when the app has been idle for a while. */
  #again(afterMs = this.#idleMs): void {
    const job = this.#job;
    this.#job = null;
    job?.stop();
    clearTimeout(this.#waiting);
    if (this.#state.phase === 'stopped') return;
    if (this.#state.phase !== 'waiting') this.#tell({ phase: 'waiting', left: this.#state.left });
    if (this.#others.size === 0) this.#waiting = setTimeout(() => this.#begin(), afterMs).unref();
  }

  #begin(): void {
    const { living, clock, launch, log, secondsEach = SECONDS_EACH } = this.#deps;
    try {
      const task = { shop: living.shop, now: clock.now(), known: this.#answers.all(), secondsEach };
      let taken = 0;
      this.#job = new SolverJob({
        name: 'the cutting of all runs',
        sorry: 'The cutting of all runs stopped working. The sheets shown are the best found so far.',
        tasks: [{ kind: 'cutAll', ...task }],
        budgetMs: BUDGET_MS,
        // An integer solver at work hears nothing: its process is ended, what it found is here already.
        stopGraceMs: 0,
        launch,
        log,
        onChange: (job) => {
          this.#hear(job, job.best?.answers.slice(taken) ?? []);
          taken = job.best?.answers.length ?? 0;
        },
      });
    } catch (error) {
      // A fresh file has no shop yet, and one that is away comes back with a change.
      log.info(`the runs are not worked on: ${String(error)}`);
    }
  }

  #hear(job: SolverJob<'cutAll'>, fresh: readonly CutAnswer[]): void {
    const { phase } = job.state;
    for (const { key, plan, settled } of fresh) this.#answers.better(key, plan, settled);
    this.#answers.keep(fresh.map(({ key }) => key));
    if (phase === 'finished' && job.best) this.#answers.inUse(job.best.keys);
    const own = job === this.#job;
    if (phase !== 'running' && own) this.#job = null;
    const state: Improving = own
      ? { phase: phase === 'running' ? 'running' : 'finished', left: job.best?.left ?? 0 }
      : this.#state;
    const found = fresh.map(({ key, plan }) => ({ key, plan }));
    if (found.length > 0 || state.phase !== this.#state.phase || state.left !== this.#state.left)
      this.#tell(state, found);
  }

  #tell(improving: Improving, found: CutsFound['answers'] = []): void {
    this.#state = improving;
    this.#untold.push(...found);
    const now = performance.now();
    const wait = improving.phase === 'running' && now < this.#toldAt + TELL_MS;
    const answers = wait ? [] : this.#untold.splice(0);
    if (answers.length > 0) this.#toldAt = now;
    this.#deps.pushes.send({ kind: 'cutsFound', improving, answers });
  }
}
