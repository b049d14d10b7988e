import { CrewBoard } from './crew.ts';
import { HeldBoard } from './held.ts';
import type { Problem } from './problem.ts';
import type { Timing } from './timing.ts';
import { finish, nextOpen, rewind } from './working-time.ts';

/** Do machines wait for each other's people or tools? Then a change on one moves any other, and timing takes longer. */
export const isContended = (problem: Problem): boolean =>
  Boolean(problem.input.crew?.length) || problem.held !== null;

/** People at work and things held over time, as operations are placed one by one. */
export class Contention {
  readonly #problem: Problem;
  readonly #crew: CrewBoard | null;
  readonly #held: HeldBoard | null;

  constructor(problem: Problem) {
    this.#problem = problem;
    this.#crew = problem.input.crew?.length ? new CrewBoard(problem.input.crew) : null;
    this.#held = problem.held === null ? null : new HeldBoard();
  }

  /**
   * Delays a timed operation to the first instant from which enough people and all it holds are free, for all of its
   * changeover and work, and takes them. What has started keeps its people and, from now on, what it holds.
   */
  place(timing: Timing, o: number, m: number): void {
    const { seconds, machines, startedAt, input } = this.#problem;
    const open = this.#problem.open[m]!;
    const work = seconds[o * machines + m]!;
    const changeover = timing.changeover[o]!;
    const started = !Number.isNaN(startedAt[o]!);
    for (;;) {
      const from = rewind(open, timing.start[o]!, changeover);
      const until = started ? -Infinity : this.#conflict(o, m, from, timing.end[o]!);
      if (until === -Infinity) {
        this.#crew?.take(open, from, timing.end[o]!, this.#problem.crew[o]!);
        this.#held?.take(this.#things(o, m), m, Math.max(from, input.now), timing.end[o]!);
        return;
      }
      const stretched = timing.end[o]! - finish(open, timing.start[o]!, work);
      timing.start[o] = nextOpen(open, finish(open, nextOpen(open, until), changeover));
      const end = finish(open, timing.start[o]!, work);
      timing.end[o] = stretched > 0 ? Math.max(end, timing.end[o]!) : end;
    }
  }

  /** The last instant in [from, to) until which people or things are missing; −∞ if nothing is. */
  #conflict(o: number, m: number, from: number, to: number): number {
    return Math.max(
      this.#crew?.conflict(this.#problem.open[m]!, from, to, this.#problem.crew[o]!) ?? -Infinity,
      this.#held?.conflict(this.#things(o, m), m, from, to) ?? -Infinity,
    );
  }

  #things(o: number, m: number): readonly number[] {
    return this.#problem.held![o * this.#problem.machines + m]!;
  }
}
