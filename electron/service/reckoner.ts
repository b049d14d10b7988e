import type { Shop } from '../../core/shop/state.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import type { LaunchSolver, Solver } from '../solver/launch.ts';
import type { AnswerTo, Question, QuestionSolver, Replied } from '../solver/messages.ts';

/** The process is kept for the next question so long. */
const KEPT_MS = 60_000;
/** Far longer than any question takes; the start of the process on a busy machine is part of it. */
const LATE_MS = 30_000;
const LOST = 'The answer could not be worked out: its process stopped. Nothing was changed; ask again.';
const NOT_WANTED = 'This question was withdrawn.';

interface Asked {
  readonly work: QuestionSolver;
  settle(reply: Replied['reply']): void;
  fail(error: Refused): void;
}

/**
 * Questions that take longer than a window may wait for its host are reckoned in a process of their own, one after the
 * other. It starts with the first one and is kept for the next.
 */
export class Reckoner {
  readonly #launch: LaunchSolver;
  readonly #log: Log;
  #solver: Solver | null = null;
  #timer: NodeJS.Timeout | undefined;
  /** The first is being answered. */
  readonly #asked: Asked[] = [];

  constructor(launch: LaunchSolver, log: Log) {
    this.#launch = launch;
    this.#log = log;
  }

  /**
   * @param jobId names the question, so that it can be taken back
   * @throws Refused as the reckoning itself would refuse, or when it was taken back or its process died
   */
  ask<Q extends Question>(jobId: string, shop: Shop, now: number, about: Q): Promise<AnswerTo<Q>> {
    return new Promise((resolve, reject) => {
      this.#asked.push({
        work: { kind: 'question', jobId, shop, now, about },
        settle: (reply) =>
          reply.ok ? resolve(reply.answer as AnswerTo<Q>) : reject(new Refused('refused', reply.message)),
        fail: reject,
      });
      if (this.#asked.length === 1) this.#next();
    });
  }

  /** Nobody waits for this answer any more. One that is over, or unknown, is left alone. */
  stop(jobId: string): void {
    const at = this.#asked.findIndex(({ work }) => work.jobId === jobId);
    if (at === 0) this.#solver?.send({ kind: 'stop', jobId });
    if (at > 0) this.#asked.splice(at, 1)[0]!.fail(new Refused('refused', NOT_WANTED));
  }

  /** Ends the process; the next question starts another. */
  close(): void {
    clearTimeout(this.#timer);
    const gone = this.#solver;
    this.#solver = null;
    gone?.kill();
  }

  #next(): void {
    clearTimeout(this.#timer);
    const [first] = this.#asked;
    if (!first) {
      this.#timer = setTimeout(() => this.close(), KEPT_MS).unref();
      return;
    }
    this.#timer = setTimeout(() => this.#lose('it did not answer in time'), LATE_MS);
    this.#solver ??= this.#begin();
    this.#solver.send(first.work);
  }

  #begin(): Solver {
    const solver = this.#launch();
    solver.onMessage((message) => {
      const [first] = this.#asked;
      if (solver !== this.#solver || message.jobId !== first?.work.jobId) return;
      if (message.kind === 'failed') return this.#lose(message.message);
      if (message.kind !== 'replied') return;
      first.settle(message.reply);
      this.#asked.shift();
      this.#next();
    });
    solver.onExit(() => solver === this.#solver && this.#lose('its process ended'));
    return solver;
  }

  #lose(why: string): void {
    this.close();
    const first = this.#asked.shift();
    if (first) this.#log.error(`the question ${first.work.jobId} had trouble`, why);
    first?.fail(new Refused('internal', LOST));
    this.#next();
  }
}
