import type { Problem } from '../problem.ts';
import { finish } from '../working-time.ts';
import type { LiveQueues } from './live-queues.ts';

/**
 * When each step of a job hands on to the next: as tried, with a log to take it back. Where a step feels that it
 * becomes ready at another time, its queue is marked to be timed again from there.
 */
export class ReadyTimes {
  /** When the job lets the operation start. */
  readonly ready: Float64Array;
  /** End of the step before, where the operation may start on its first lots; else −Infinity. */
  readonly before: Float64Array;
  /** Does a next step follow? */
  readonly hasNext: Uint8Array;
  /** Does the next step begin on the first lots? */
  readonly lots: Uint8Array;
  /** Per machine, the last position whose operation became ready at another time and feels it. */
  readonly reach: Int32Array;
  /** Per machine, by how much at most one of its operations became ready sooner and feels it. */
  readonly sooner: Float64Array;
  readonly #problem: Problem;
  readonly #live: LiveQueues;
  readonly #able: Float64Array;
  readonly #logOperation: Int32Array;
  readonly #logReady: Float64Array;
  readonly #logBefore: Float64Array;
  #logged = 0;

  /** @param able when its machine was ready for each operation, as committed */
  constructor(problem: Problem, live: LiveQueues, able: Float64Array) {
    const n = problem.operations;
    this.#problem = problem;
    this.#live = live;
    this.#able = able;
    this.hasNext = Uint8Array.from({ length: n }, (_, o) =>
      Number(o + 1 < problem.firstOf[problem.jobOf[o]! + 1]!),
    );
    this.lots = Uint8Array.from({ length: n }, (_, o) =>
      Number(this.hasNext[o] === 1 && problem.transferShare[o]! < 1),
    );
    this.ready = new Float64Array(n).fill(NaN);
    this.before = new Float64Array(n).fill(-Infinity);
    this.reach = new Int32Array(problem.machines).fill(-1);
    this.sooner = new Float64Array(problem.machines);
    this.#logOperation = new Int32Array(n);
    this.#logReady = new Float64Array(n);
    this.#logBefore = new Float64Array(n);
    for (let j = 0; j < problem.jobs; j++) this.ready[problem.firstOf[j]!] = problem.release[j]!;
  }

  /** Tells the job's next step when it may start. */
  propagate(o: number, m: number, start: number, end: number): void {
    const next = o + 1;
    const lots = this.lots[o] === 1;
    const handed = lots ? finish(this.#problem.open[m]!, start, this.#lot(o, o, m)) : end;
    const ready = Math.max(this.#problem.release[this.#problem.jobOf[o]!]!, handed);
    const before = lots ? end : -Infinity;
    const old = this.ready[next]!;
    const oldBefore = this.before[next]!;
    if (ready === old && before === oldBefore) return;
    this.#logOperation[this.#logged] = next;
    this.#logReady[this.#logged] = old;
    this.#logBefore[this.#logged] = oldBefore;
    this.#logged += 1;
    this.ready[next] = ready;
    this.before[next] = before;
    if (!lots && ready <= this.#able[next]! && old <= this.#able[next]!) return;
    const n = this.#live.machineOf[next]!;
    this.sooner[n] = Math.max(this.sooner[n]!, old - ready, lots ? oldBefore - before : 0);
    const positionOf = this.#live.positionOf[next]!;
    if (positionOf < this.#live.from[n]!) this.#live.from[n] = positionOf;
    if (positionOf > this.reach[n]!) this.reach[n] = positionOf;
  }

  /** When the last lot of an operation that began on its first lots is done at the earliest. */
  lastLot(o: number, m: number): number {
    return finish(this.#problem.open[m]!, this.before[o]!, this.#lot(o - 1, o, m));
  }

  /** Work on machine m for one lot of operation `o`, when the lots are those of operation `of`. */
  #lot(of: number, o: number, m: number): number {
    const { transferShare, seconds, machines } = this.#problem;
    return Math.ceil(transferShare[of]! * seconds[o * machines + m]!);
  }

  /** Makes what was told final. */
  commit(): void {
    this.#logged = 0;
    this.reach.fill(-1);
    this.sooner.fill(0);
  }

  /** Takes back what was told since the last `commit`. */
  rollback(): void {
    while (this.#logged > 0) {
      this.#logged -= 1;
      const o = this.#logOperation[this.#logged]!;
      this.ready[o] = this.#logReady[this.#logged]!;
      this.before[o] = this.#logBefore[this.#logged]!;
    }
    this.reach.fill(-1);
    this.sooner.fill(0);
  }
}
