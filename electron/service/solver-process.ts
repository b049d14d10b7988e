import type { LaunchSolver, Solver } from '../solver/launch.ts';
import type { FromSolver, Start, TaskKind } from '../solver/messages.ts';

/** How long past its budget a process may take to answer; its start on a busy machine is part of that. */
const GRACE_MS = 12_000;

/** How the work of one process ended. */
export interface WorkEnd {
  /** What went wrong, for the log; null when it was done, or told to stop. */
  readonly failure: string | null;
  /** The sentence with which the task itself was refused. */
  readonly refusal: string | null;
}

interface ProcessOptions<K extends TaskKind> {
  readonly start: Start<K>;
  readonly launch: LaunchSolver;
  /** How long it may go on after it was told to stop. */
  readonly stopGraceMs: number;
  readonly onFound: (message: Extract<FromSolver, { kind: 'progress' | 'done' }>) => void;
  /** It died and was started once more. */
  readonly onRetry: () => void;
  /** Called once; the process is gone then. */
  readonly onEnd: (end: WorkEnd) => void;
}

/**
 * One process at its part of a job, until it is done, is told to stop, fails, goes silent or dies. Nothing is stored while it
 * works, so one that dies is started once more, for what is left of its time.
 */
export class SolverProcess<K extends TaskKind> {
  readonly #options: ProcessOptions<K>;
  readonly #endsAt: number;
  readonly #late: NodeJS.Timeout;
  #solver: Solver | null = null;
  #retried = false;
  #stopping = false;

  constructor(options: ProcessOptions<K>) {
    this.#options = options;
    const { budgetMs } = options.start;
    this.#endsAt = performance.now() + budgetMs;
    this.#late = setTimeout(() => this.#end('it did not answer in time'), budgetMs + GRACE_MS).unref();
    this.#work(budgetMs);
  }

  /** Its best so far is still heard, if it tells it in time; then its process is ended. */
  stop(): void {
    const { start, stopGraceMs } = this.#options;
    this.#stopping = true;
    if (stopGraceMs === 0) return this.#end(null);
    this.#solver?.send({ kind: 'stop', jobId: start.jobId });
    if (Number.isFinite(stopGraceMs)) setTimeout(() => this.#end(null), stopGraceMs).unref();
  }

  #work(budgetMs: number): void {
    const { start, launch } = this.#options;
    const solver = launch();
    this.#solver = solver;
    solver.onMessage((message) => {
      if (solver === this.#solver && message.jobId === start.jobId) this.#hear(message);
    });
    solver.onExit(() => {
      if (solver === this.#solver) this.#died();
    });
    solver.send({ ...start, budgetMs });
  }

  #hear(message: FromSolver): void {
    if ('message' in message)
      return message.kind === 'refused' ? this.#end(null, message.message) : this.#end(message.message);
    this.#options.onFound(message);
    if (message.kind === 'done') this.#end(null);
  }

  #died(): void {
    const leftMs = this.#endsAt - performance.now();
    if (this.#stopping || this.#retried || leftMs <= 0) return this.#end('its process ended');
    this.#retried = true;
    this.#options.onRetry();
    this.#work(leftMs);
  }

  #end(failure: string | null, refusal: string | null = null): void {
    const solver = this.#solver;
    if (!solver) return;
    clearTimeout(this.#late);
    this.#solver = null;
    solver.kill();
    // What was told to stop and had to be ended has not failed.
    this.#options.onEnd({ failure: this.#stopping ? null : failure, refusal });
  }
}
