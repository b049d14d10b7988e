import type { Problem } from '../problem.ts';
import type { WorkingTime } from '../working-time.ts';
import type { LiveQueues } from './live-queues.ts';

/**
 * Bounds on what the rest of each committed queue costs when it shifts in time, by position, so that a move can be
 * rejected without timing that rest. Each operation has a slope: what each second costs that it ends later, at the
 * least, or gains when it ends sooner, at the most; its job's weight × the weight of tardiness once it is late, plus the
 * weight of flow time. An operation is tight when it starts as soon as its machine is ready for it: made later by t,
 * the machine makes it and all tight ones behind it later by t.
 *
 *     leastLoss(p, t) = t × sum of slopes from position p up to the first operation that is not tight
 *     mostGain(p, t)  = t × sum of slopes from position p to the end of the queue
 *
 * Worked out by hand, one machine always open, weights of jobs 1, 2, 3, only tardiness counts: X ends at 10, due 8: slope 1.
 * Y 10 to 14, due 20: slope 0. Z, released at 16, 16 to 18, due 15: slope 3; it is not tight, the machine idled before it.
 * The slopes before each position are 0, 1, 1, 4. All 5 s later loses at least 5 × (1 − 0) = 5 (in truth 5 by X, 0 by
 * Y, and 3 × 3 by Z, which then starts at 19: 14). All 5 s sooner gains at most 5 × (4 − 0) = 20 (in truth 2, as X is
 * not late any more from 8 on, and Z waits for its release).
 *
 * Where a job's next step starts the moment the one before ends, its slope and those of the tight ones behind it count
 * with the one before: X, if another step of its job waited for it, would have its own slope and
 * theirs.
 */
export class SuffixBound {
  /** Per operation: what each second costs that it ends later at the least, or gains sooner at the most. */
  readonly slope: Float64Array;
  /** Per operation: 1 when it ends exactly its work after the machine was ready for it. */
  readonly tight: Uint8Array;
  /** Per operation: 1 when it starts the moment the step before it ends, having waited for that. */
  readonly waits: Uint8Array;
  readonly #live: LiveQueues;
  readonly #hours: readonly WorkingTime[];
  /** Per machine and open interval, the open seconds before it. */
  readonly #opened: readonly Float64Array[];
  /** Do all machines have the same open hours? Else a step that ends later may let the next start no later in open seconds. */
  readonly #oneCalendar: boolean;
  /** Per machine and position, the sum of the slopes before it. */
  readonly #sums: readonly Float64Array[];
  /** Per machine and position, the first position from there on whose operation is not tight. */
  readonly #nextLoose: readonly Int32Array[];
  /** Length of each queue as committed. */
  readonly #lengths: Int32Array;

  constructor(problem: Problem, live: LiveQueues) {
    const { machines, operations, open } = problem;
    this.#live = live;
    this.#hours = open;
    this.#opened = open.map(openedBefore);
    this.#oneCalendar = open.every((hours) => sameHours(hours, open[0]!));
    this.#sums = Array.from({ length: machines }, () => new Float64Array(operations + 1));
    this.#nextLoose = Array.from({ length: machines }, () => new Int32Array(operations + 1));
    this.#lengths = new Int32Array(machines);
    this.slope = new Float64Array(operations);
    this.tight = new Uint8Array(operations);
    this.waits = new Uint8Array(operations + 1);
  }

  /** Sums up a queue committed again from position `from` on; the queues it feeds have to come first. */
  renew(m: number, from: number, feeds: boolean): void {
    const { tight, slope } = this;
    const queue = this.#live.queues[m]!;
    const length = this.#live.lengths[m]!;
    const sums = this.#sums[m]!;
    const nextLoose = this.#nextLoose[m]!;
    this.#lengths[m] = length;
    for (let p = from; p < length; p++) {
      const o = queue[p]!;
      sums[p + 1] = sums[p]! + slope[o]! + (feeds ? this.#slopeOfNext(o) : 0);
    }
    let next = length;
    nextLoose[length] = length;
    for (let p = length - 1; p >= 0; p--) {
      if (tight[queue[p]!] === 0) next = p;
      if (p < from && nextLoose[p] === next) return;
      nextLoose[p] = next;
    }
  }

  /** Slope of the next step and the tight ones behind it, where it starts the moment o ends. */
  #slopeOfNext(o: number): number {
    if (!this.#oneCalendar || this.waits[o + 1] === 0) return 0;
    const { machineOf, positionOf } = this.#live;
    const m = machineOf[o + 1]!;
    const position = positionOf[o + 1]!;
    return this.#sums[m]![this.#nextLoose[m]![position + 1]!]! - this.#sums[m]![position]!;
  }

  /** The position, as committed, of the operation now at a position behind all changes. */
  committedPosition(m: number, position: number): number {
    return position + this.#lengths[m]! - this.#live.lengths[m]!;
  }

  /** Does the machine close at times? Then nothing is known of what ending sooner gains: it may save a night. */
  closes(m: number): boolean {
    return this.#opened[m]!.length > 1;
  }

  /** Open seconds from an instant in one open interval to a later one in another. */
  openBetween(m: number, interval: number, from: number, laterInterval: number, to: number): number {
    const [opened, opens] = [this.#opened[m]!, this.#hours[m]!.start];
    return (
      opened[laterInterval]! + to - opens[laterInterval]! - (opened[interval]! + from - opens[interval]!)
    );
  }

  /** The most that a queue can gain when everything from a position on ends sooner by up to so many seconds. */
  mostGain(m: number, position: number, seconds: number): number {
    const sums = this.#sums[m]!;
    return seconds * (sums[this.#lengths[m]!]! - sums[position]!);
  }

  /** The least that the operation at a position and the tight ones behind it lose when they end so many open seconds later. */
  leastLoss(m: number, position: number, seconds: number): number {
    const sums = this.#sums[m]!;
    return seconds * (sums[this.#nextLoose[m]![position]!]! - sums[position]!);
  }
}

function openedBefore({ start, end }: WorkingTime): Float64Array {
  const opened = new Float64Array(start.length);
  for (let k = 1; k < start.length; k++) opened[k] = opened[k - 1]! + end[k - 1]! - start[k - 1]!;
  return opened;
}

function sameHours(one: WorkingTime, other: WorkingTime): boolean {
  return (
    one.start.length === other.start.length &&
    one.start.every((start, k) => start === other.start[k] && one.end[k] === other.end[k])
  );
}
