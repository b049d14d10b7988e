import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { BestOf, Question, TaskOf } from '../solver/messages.ts';
import { keptSolvers } from './kept-solvers.ts';
import { SolverJob } from './solver-job.ts';

/** The process is kept for the next question so long. */
const KEPT_MS = 60_000;
/** Far longer than any question takes, so that none is answered by half. */
const BUDGET_MS = 30_000;
const SORRY = 'The answer could not be worked out: its process stopped. Nothing was changed; ask again.';
const NOT_WANTED = 'This question was withdrawn.';

type Kind = Question['kind'];

type Asked = Pick<SolverJob<Kind>, 'jobId' | 'stop'>;

interface Waiting {
  readonly jobId: string;
  begin(): Asked;
  withdraw(): void;
}

/** Questions that take longer than a window may wait for its host, answered one after the other by one process. */
export class QuestionWorker {
  readonly #kept: ReturnType<typeof keptSolvers>;
  readonly #log: Log;
  #job: Asked | null = null;
  readonly #waiting: Waiting[] = [];

  constructor(launch: LaunchSolver, log: Log) {
    this.#kept = keptSolvers(launch, KEPT_MS);
    this.#log = log;
  }

  /**
   * @param jobId names the question, so that it can be withdrawn
   * @throws Refused as the answer itself is refused, or when the question was withdrawn or its process died
   */
  ask<K extends Kind>(jobId: string, task: TaskOf<K>): Promise<BestOf<K>> {
    return new Promise((resolve, reject) => {
      const begin = () =>
        new SolverJob<K>({
          name: 'the question',
          jobId,
          tasks: [task],
          budgetMs: BUDGET_MS,
          // One that is withdrawn is at its next step soon; its process is worth waiting for.
          stopGraceMs: Infinity,
          launch: this.#kept.launch,
          log: this.#log,
          sorry: SORRY,
          onChange: ({ state: { phase, message }, best, refusal }) => {
            if (phase === 'running') return;
            if (message !== null) reject(new Refused(refusal === null ? 'internal' : 'refused', message));
            else if (best === null) reject(new Refused('refused', NOT_WANTED));
            else resolve(best);
            this.#next();
          },
        });
      const withdraw = () => reject(new Refused('refused', NOT_WANTED));
      this.#waiting.push({ jobId, begin, withdraw });
      if (this.#job === null) this.#next();
    });
  }

  /** Nobody waits for this answer any more. One that is over, or unknown, is left alone. */
  stop(jobId: string): void {
    if (this.#job?.jobId === jobId) this.#job.stop();
    const at = this.#waiting.findIndex((one) => one.jobId === jobId);
    if (at >= 0) this.#waiting.splice(at, 1)[0]!.withdraw();
  }

  /** Ends the process; the next question starts another. */
  close(): void {
    this.#kept.close();
  }

  #next(): void {
    this.#job = this.#waiting.shift()?.begin() ?? null;
  }
}
