import type { Problem } from '../problem.ts';
import type { WorkingTime } from '../working-time.ts';
import type { LiveQueues } from './live-queues.ts';

/**
 * What the rest of each kept queue costs when it moves as a whole, by position, so that a change can be refused without
 * timing that rest. Each operation has a slope, what each second costs that it ends later, at the least. Where a
 * job's next step starts the moment the one before ends, its slope and those of the steps that follow it without a wait
 * count with the one before.
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
  /** Do all machines have the same open hours? Else a step that ends later may hand on no later in open seconds. */
  readonly #oneCalendar: boolean;
  /** Per machine and position, slopes before it, summed. */
  readonly #sums: readonly Float64Array[];
  /** Per machine and position, the first position from there on whose operation does not simply follow the one before. */
  readonly #loose: readonly Int32Array[];
  /** Length of each queue as committed. */
  readonly #lengths: Int32Array;

  constructor(problem: Problem, live: LiveQueues) {
    const { machines, operations, open } = problem;
    this.#live = live;
    this.#hours = open;
    this.#opened = open.map(openedBefore);
    this.#oneCalendar = open.every((hours) => sameHours(hours, open[0]!));
    this.#sums = Array.from({ length: machines }, () => new Float64Array(operations + 1));
    this.#loose = Array.from({ length: machines }, () => new Int32Array(operations + 1));
    this.#lengths = new Int32Array(machines);
    this.slope = new Float64Array(operations);
    this.tight = new Uint8Array(operations);
    this.waits = new Uint8Array(operations + 1);
  }

  /** Sums up a queue whose operations were written again from position `from` on; the queues it feeds first. */
  renew(m: number, from: number, feeds: boolean): void {
    const { tight, slope } = this;
    const queue = this.#live.queues[m]!;
    const length = this.#live.lengths[m]!;
    const sums = this.#sums[m]!;
    const loose = this.#loose[m]!;
    this.#lengths[m] = length;
    for (let p = from; p < length; p++) {
      const o = queue[p]!;
      sums[p + 1] = sums[p]! + slope[o]! + (feeds ? this.#passedOn(o) : 0);
    }
    let next = length;
    loose[length] = length;
    for (let p = length - 1; p >= 0; p--) {
      if (tight[queue[p]!] === 0) next = p;
      if (p < from && loose[p] === next) return;
      loose[p] = next;
    }
  }

  #passedOn(o: number): number {
    if (!this.#oneCalendar || this.waits[o + 1] === 0) return 0;
    const { machineOf, positionOf } = this.#live;
    const m = machineOf[o + 1]!;
    const position = positionOf[o + 1]!;
    return this.#sums[m]![this.#loose[m]![position + 1]!]! - this.#sums[m]![position]!;
  }

  /** The position as committed of what now stands at a position behind all changes. */
  positionKept(m: number, position: number): number {
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
  gain(m: number, position: number, seconds: number): number {
    const sums = this.#sums[m]!;
    return seconds * (sums[this.#lengths[m]!]! - sums[position]!);
  }

  /** The least that the operation at a position and those that follow it without a wait lose, so many open seconds later. */
  loss(m: number, position: number, seconds: number): number {
    const sums = this.#sums[m]!;
    return seconds * (sums[this.#loose[m]![position]!]! - sums[position]!);
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
