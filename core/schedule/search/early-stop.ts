import type { Clock } from './clock.ts';
import type { Layers } from './layers.ts';
import type { LiveQueues } from './live-queues.ts';
import type { ReadyTimes } from './ready-times.ts';
import type { SuffixBound } from './suffix-bound.ts';

/** What a layered evaluation has at hand. */
interface Evaluated {
  readonly live: LiveQueues;
  readonly layers: Layers;
  readonly readyTimes: ReadyTimes;
  readonly suffixBound: SuffixBound;
  /** Per operation as committed: its end, and the open interval of its machine that holds it. */
  readonly end: Float64Array;
  readonly interval: Int32Array;
}

/**
 * Says when a move surely costs more than a limit, so that its evaluation can stop. With delta the cost added by what is
 * timed already, the move is rejected where
 *
 *     delta + least loss of the rest of this queue − most gain of that rest and of the queues still to time > limit
 *
 * both bounds from `SuffixBound`. Worked out by hand: a move has added 2 so far and makes the rest of its queue 5 s later,
 * which costs at least 1 a second; the other queue that it touches can gain 4 at most. 2 + 5 × 1 − 4 = 3: with a limit of
 * 1 it is rejected, the rest of its queue and the other queue are not timed.
 */
export class EarlyStop {
  #limit = Infinity;
  readonly #evaluated: Evaluated;
  /** Per machine: was its queue shifted? Else its operations can only become ready at another time. */
  readonly #shifted: Uint8Array;
  /** Per machine with nothing behind it, the most it may gain by what changed. */
  readonly #mostOf: Float64Array;
  /** What the queues still to time may gain together, at most. */
  #rest = 0;

  constructor(machines: number, evaluated: Evaluated) {
    this.#evaluated = evaluated;
    this.#shifted = new Uint8Array(machines);
    this.#mostOf = new Float64Array(machines);
  }

  /** The shifts of a move are made, nothing is timed yet. */
  begin(limit: number): void {
    this.#limit = limit;
    for (let m = 0; m < this.#shifted.length; m++)
      this.#shifted[m] = Number(this.#evaluated.live.isTouched(m));
  }

  /** Bounds what the queues can gain that nothing waits for. @returns how many of them have no bound */
  boundLast(): number {
    const { live, layers } = this.#evaluated;
    let unbounded = 0;
    this.#rest = 0;
    for (const m of layers.last) {
      if (!live.isTouched(m)) continue;
      const most = this.#mostGain(m);
      this.#mostOf[m] = most;
      if (most === Infinity) unbounded += 1;
      else this.#rest += most;
    }
    return unbounded;
  }

  isBounded(m: number): boolean {
    return this.#mostOf[m] !== Infinity;
  }

  /** Queue m is timed next: what it may gain is a bound no longer. @returns false when the move is rejected before that */
  proceedTo(m: number, delta: number): boolean {
    if (delta - this.#rest > this.#limit) return false;
    this.#rest -= this.#mostOf[m]!;
    return true;
  }

  /**
   * Is the move rejected, with operation o at position p of queue m timed up to where the clock is, and the order as
   * before from there on?
   */
  rejects(delta: number, o: number, m: number, p: number, { now, interval }: Clock): boolean {
    const { suffixBound, readyTimes, end: committed, interval: intervalOf } = this.#evaluated;
    const end = committed[o]!;
    const position = suffixBound.committedPosition(m, p + 1);
    let least = delta;
    if (now > end) {
      const later = suffixBound.openBetween(m, intervalOf[o]!, end, interval, now);
      least += suffixBound.leastLoss(m, position, later);
    }
    if (least <= this.#limit) return false;
    const sooner = p < readyTimes.affectedUntil[m]! ? readyTimes.mostSooner[m]! : 0;
    return least - this.#mostBehind(m, position, Math.max(end - now, sooner)) > this.#limit;
  }

  /** The most that may still be gained from a position on, sooner by up to so many seconds, and in queues still to time. */
  #mostBehind(m: number, position: number, seconds: number): number {
    const { layers, suffixBound } = this.#evaluated;
    const feeds = layers.feeds[m] === 1;
    if (seconds > 0 && (feeds || suffixBound.closes(m))) return Infinity;
    let most = feeds ? 0 : this.#rest;
    if (feeds) for (const n of layers.last) most += this.#mostGain(n);
    return seconds > 0 ? most + suffixBound.mostGain(m, position, seconds) : most;
  }

  /** What a queue can gain by operations that are ready sooner; no bound is known where its machine closes in between. */
  #mostGain(m: number): number {
    const { live, readyTimes, suffixBound } = this.#evaluated;
    if (this.#shifted[m] === 1) return Infinity;
    if (readyTimes.mostSooner[m] === 0) return 0;
    if (suffixBound.closes(m)) return Infinity;
    return suffixBound.mostGain(m, live.from[m]!, readyTimes.mostSooner[m]!);
  }
}
