import type { CrewInterval } from './problem.ts';
import { intervalAt, type WorkingTime } from './working-time.ts';

/**
 * People at work over time, as steps: from instant `at[k]` up to the next, `busy[k]` people work.
 * Limits hold only inside the given intervals.
 */
export class CrewBoard {
  readonly #at: number[] = [-Infinity];
  readonly #busy: number[] = [0];
  /** How many may work in the step. */
  readonly #people: number[] = [Infinity];

  constructor(limits: readonly CrewInterval[]) {
    for (const limit of limits) {
      const first = this.#cut(limit.start);
      const last = this.#cut(limit.end);
      this.#people.fill(limit.people, first, last);
    }
  }

  /** End of the last step in [from, to) at which the machine is open and too few people are free; −∞ if none. */
  conflict(open: WorkingTime, from: number, to: number, people: number): number {
    if (people === 0) return -Infinity;
    for (let k = this.#step(to); k >= 0 && this.#stepEnd(k) > from; k--) {
      const start = Math.max(this.#at[k]!, from);
      const end = Math.min(this.#stepEnd(k), to);
      if (start >= end || this.#busy[k]! + people <= this.#people[k]!) continue;
      if (open.start[intervalAt(open, start)]! < end) return this.#stepEnd(k);
    }
    return -Infinity;
  }

  take(open: WorkingTime, from: number, to: number, people: number): void {
    if (people === 0) return;
    for (let k = intervalAt(open, from); k < open.start.length && open.start[k]! < to; k++) {
      const first = this.#cut(Math.max(from, open.start[k]!));
      const last = this.#cut(Math.min(to, open.end[k]!));
      for (let step = first; step < last; step++) this.#busy[step]! += people;
    }
  }

  /** Index of the step that holds the instant. */
  #step(instant: number): number {
    let low = 0;
    let high = this.#at.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#at[middle]! <= instant) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  #stepEnd(k: number): number {
    return this.#at[k + 1] ?? Infinity;
  }

  /** Makes a step start at the instant; returns its index. */
  #cut(instant: number): number {
    const k = this.#step(instant);
    if (this.#at[k] === instant) return k;
    this.#at.splice(k + 1, 0, instant);
    this.#busy.splice(k + 1, 0, this.#busy[k]!);
    this.#people.splice(k + 1, 0, this.#people[k]!);
    return k + 1;
  }
}
