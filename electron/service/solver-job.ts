import { randomUUID } from 'node:crypto';
import type { JobState } from '../../core/contract/job.ts';
import type { Log } from '../log.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { BestOf, Counts, Found, TaskKind, TaskOf } from '../solver/messages.ts';
import { SolverProcess, type WorkEnd } from './solver-process.ts';

/** Changes are told at most so often. */
const TELL_MS = 100;
/**
 * A stop is obeyed within a tenth of a second, so a process that is deep in a step is ended; what it found was told before.
 */
const STOP_GRACE_MS = 80;

/** `stopping`: told to stop; its best so far may still come. The last three are the ends. */
type Phase = 'running' | 'stopping' | 'finished' | 'stopped' | 'failed';

export interface JobOptions<K extends TaskKind> {
  /** As the log calls it: "the search". */
  readonly name: string;
  /** Worked on side by side, each in a process of its own; the first that is done ends the others. */
  readonly tasks: readonly TaskOf<K>[];
  readonly budgetMs: number;
  readonly launch: LaunchSolver;
  readonly log: Pick<Log, 'error'>;
  /** Told to the user when the job fails: what happened, what was kept, what to do. */
  readonly sorry: string;
  readonly jobId?: string;
  /** 0: its process hears nothing while it works and is ended at once. Infinity: it is waited for. */
  readonly stopGraceMs?: number;
  /** Where several are found; else the newest is the best. */
  readonly isBetter?: (a: BestOf<K>, b: BestOf<K>) => boolean;
  /** After progress, at most ten times a second, and once at the end. */
  readonly onChange?: (job: SolverJob<K>) => void;
}

/** Work that a window cannot wait for, in processes of its own: how far it is, its best so far, how it ended. */
export class SolverJob<K extends TaskKind> implements Found<K> {
  readonly jobId: string;
  /** Resolves with this job when it is over, however that came. */
  readonly end: Promise<this>;
  readonly #options: JobOptions<K>;
  readonly #processes: readonly SolverProcess<K>[];
  readonly #counts: Counts[] = [];
  readonly #ends: WorkEnd[] = [];
  readonly #startedAt = performance.now();
  #phase: Phase = 'running';
  #best: BestOf<K> | null = null;
  #endedAt: number | null = null;
  #toldAt = -Infinity;
  #telling: NodeJS.Timeout | undefined;
  #resolve: (job: this) => void = () => undefined;

  constructor(options: JobOptions<K>) {
    const { tasks, budgetMs, launch, jobId = randomUUID(), stopGraceMs = STOP_GRACE_MS } = options;
    this.#options = options;
    this.jobId = jobId;
    this.end = new Promise((resolve) => (this.#resolve = resolve));
    this.#processes = tasks.map(
      (task, at) =>
        new SolverProcess<K>({
          start: { kind: 'start', jobId, task, budgetMs },
          launch,
          stopGraceMs,
          onFound: ({ kind, best, counts }) => this.#hear(at, kind === 'done', best as BestOf<K>, counts),
          onRetry: () => this.#note('its process ended and was started once more'),
          onEnd: (end) => this.#ended(end),
        }),
    );
  }

  get best(): BestOf<K> | null {
    return this.#best;
  }

  /** Of all its processes together. */
  get counts(): Counts | null {
    if (this.#counts.length === 0) return null;
    return this.#counts.reduce((a, b) => ({
      step: a.step + b.step,
      evaluations: a.evaluations + b.evaluations,
      bound: a.bound === null || b.bound === null ? (a.bound ?? b.bound) : Math.max(a.bound, b.bound),
    }));
  }

  /** What a process said before it was given up, for the log. */
  get failure(): string | null {
    return this.#ends.find(({ failure }) => failure !== null)?.failure ?? null;
  }

  /** The sentence with which the task was refused. */
  get refusal(): string | null {
    return this.#ends.find(({ refusal }) => refusal !== null)?.refusal ?? null;
  }

  /** As the screens are told; while it is stopping it still runs. */
  get state(): JobState {
    const phase = this.#phase === 'stopping' ? 'running' : this.#phase;
    return {
      jobId: this.jobId,
      phase,
      seconds: ((this.#endedAt ?? performance.now()) - this.#startedAt) / 1000,
      budgetSeconds: this.#options.budgetMs / 1000,
      message: phase === 'failed' ? (this.refusal ?? this.#options.sorry) : null,
    };
  }

  /** Its best so far is kept. One that is over already is left alone. */
  stop(): void {
    if (this.#phase !== 'running') return;
    this.#phase = 'stopping';
    this.#processes.forEach((process) => process.stop());
  }

  #hear(at: number, done: boolean, best: BestOf<K> | null, counts: Counts | null): void {
    if (counts) this.#counts[at] = counts;
    const { isBetter = () => true } = this.#options;
    if (best !== null && (this.#best === null || isBetter(best, this.#best))) this.#best = best;
    if (done) this.#processes.forEach((other, i) => i !== at && other.stop());
    else
      this.#telling ??= setTimeout(
        () => this.#tell(),
        Math.max(0, this.#toldAt + TELL_MS - performance.now()),
      );
  }

  #tell(): void {
    clearTimeout(this.#telling);
    this.#telling = undefined;
    this.#toldAt = performance.now();
    this.#options.onChange?.(this);
  }

  #note(trouble: string): void {
    this.#options.log.error(`${this.#options.name} ${this.jobId} had trouble`, trouble);
  }

  #ended(end: WorkEnd): void {
    if (end.failure !== null) this.#note(end.failure);
    this.#ends.push(end);
    if (this.#ends.length < this.#options.tasks.length) return;
    const failed = this.#ends.every(({ failure, refusal }) => failure !== null || refusal !== null);
    this.#phase = this.#phase === 'stopping' ? 'stopped' : failed ? 'failed' : 'finished';
    this.#endedAt = performance.now();
    this.#tell();
    this.#resolve(this);
  }
}
