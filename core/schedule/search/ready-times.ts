import type { Problem } from '../problem.ts';
import { finish } from '../working-time.ts';
import type { LiveQueues } from './live-queues.ts';

/**
 * The ready time of every operation: when its job lets it start. An operation timed again propagates its end to the next
 * step of its job; where that changes when the next step can start, its queue is marked to be timed from there. Ready
 * times are those of the move being evaluated, with a log to roll them back.
 *
 *     all at once            ready(o + 1) = max(release, end(o))
 *     transfer lots          ready(o + 1) = max(release, end of the first lot of o); o + 1 cannot end before its own
 *                            last lot, which it can begin at end(o)
 */
export class ReadyTimes {
  readonly ready: Float64Array;
  /** End of the step before, where the operation may start on its first transfer lot; else −Infinity. */
  readonly endBefore: Float64Array;
  /** Does a next step follow? */
  readonly hasNext: Uint8Array;
  /** Does the next step start on the first transfer lot? */
  readonly inLots: Uint8Array;
  /** Per machine, the last position whose operation can start at another time than before; −1: none. */
  readonly affectedUntil: Int32Array;
  /** Per machine, by how much at most one of its operations can start sooner than before. */
  readonly mostSooner: Float64Array;
  readonly #problem: Problem;
  readonly #live: LiveQueues;
  readonly #machineReady: Float64Array;
  readonly #logOperation: Int32Array;
  readonly #logReady: Float64Array;
  readonly #logEndBefore: Float64Array;
  #logged = 0;

  /** @param machineReady when its machine was ready for each operation, as committed */
  constructor(problem: Problem, live: LiveQueues, machineReady: Float64Array) {
    const n = problem.operations;
    this.#problem = problem;
    this.#live = live;
    this.#machineReady = machineReady;
    this.hasNext = Uint8Array.from({ length: n }, (_, o) =>
      Number(o + 1 < problem.firstOf[problem.jobOf[o]! + 1]!),
    );
    this.inLots = Uint8Array.from({ length: n }, (_, o) =>
      Number(this.hasNext[o] === 1 && problem.transferShare[o]! < 1),
    );
    this.ready = new Float64Array(n).fill(NaN);
    this.endBefore = new Float64Array(n).fill(-Infinity);
    this.affectedUntil = new Int32Array(problem.machines).fill(-1);
    this.mostSooner = new Float64Array(problem.machines);
    this.#logOperation = new Int32Array(n);
    this.#logReady = new Float64Array(n);
    this.#logEndBefore = new Float64Array(n);
    for (let j = 0; j < problem.jobs; j++) this.ready[problem.firstOf[j]!] = problem.release[j]!;
  }

  /** Gives the job's next step its ready time, after o was timed on machine m. */
  propagate(o: number, m: number, start: number, end: number): void {
    const next = o + 1;
    const inLots = this.inLots[o] === 1;
    const passedOn = inLots ? finish(this.#problem.open[m]!, start, this.#lotSeconds(o, o, m)) : end;
    const ready = Math.max(this.#problem.release[this.#problem.jobOf[o]!]!, passedOn);
    const endBefore = inLots ? end : -Infinity;
    const oldReady = this.ready[next]!;
    const oldEndBefore = this.endBefore[next]!;
    if (ready === oldReady && endBefore === oldEndBefore) return;
    this.#logOperation[this.#logged] = next;
    this.#logReady[this.#logged] = oldReady;
    this.#logEndBefore[this.#logged] = oldEndBefore;
    this.#logged += 1;
    this.ready[next] = ready;
    this.endBefore[next] = endBefore;
    // It waits for its machine, not for the step before, then as now.
    if (!inLots && ready <= this.#machineReady[next]! && oldReady <= this.#machineReady[next]!) return;
    const n = this.#live.machineOf[next]!;
    this.mostSooner[n] = Math.max(
      this.mostSooner[n]!,
      oldReady - ready,
      inLots ? oldEndBefore - endBefore : 0,
    );
    const position = this.#live.positionOf[next]!;
    if (position < this.#live.from[n]!) this.#live.from[n] = position;
    if (position > this.affectedUntil[n]!) this.affectedUntil[n] = position;
  }

  /** When the last lot of an operation that began on its first lot is done at the earliest. */
  lastLotEnd(o: number, m: number): number {
    return finish(this.#problem.open[m]!, this.endBefore[o]!, this.#lotSeconds(o - 1, o, m));
  }

  /** Work of operation `o` on machine m for one lot, when the lots are those of operation `of`. */
  #lotSeconds(of: number, o: number, m: number): number {
    const { transferShare, seconds, machines } = this.#problem;
    return Math.ceil(transferShare[of]! * seconds[o * machines + m]!);
  }

  /** Makes the ready times final. */
  commit(): void {
    this.#logged = 0;
    this.affectedUntil.fill(-1);
    this.mostSooner.fill(0);
  }

  /** Restores the ready times of the last `commit`. */
  rollback(): void {
    while (this.#logged > 0) {
      this.#logged -= 1;
      const o = this.#logOperation[this.#logged]!;
      this.ready[o] = this.#logReady[this.#logged]!;
      this.endBefore[o] = this.#logEndBefore[this.#logged]!;
    }
    this.affectedUntil.fill(-1);
    this.mostSooner.fill(0);
  }
}
