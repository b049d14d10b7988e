import { CrewBoard } from './crew.ts';
import { HeldBoard } from './held.ts';
import type { Problem } from './problem.ts';
import { timeOperation, type Timing } from './timing.ts';
import { rewind } from './working-time.ts';

/** Do machines wait for each other's people or tools? Then a change on one moves any other, and timing takes longer. */
export const isContended = (problem: Problem): boolean =>
  Boolean(problem.input.crew?.length) || problem.held !== null;

/** People at work and things held over time, as operations are placed one by one. */
export class Contention {
  readonly #problem: Problem;
  readonly #crew: CrewBoard | null;
  readonly #held: HeldBoard | null;
  /** Does any thing cost something to fetch? */
  readonly #fetches: boolean;

  constructor(problem: Problem) {
    this.#problem = problem;
    this.#crew = problem.input.crew?.length ? new CrewBoard(problem.input.crew) : null;
    this.#held = problem.held === null ? null : new HeldBoard();
    this.#fetches = problem.held !== null && problem.heldPartOf.some((attributes) => attributes.length > 0);
  }

  /**
   * Delays a timed operation to the first instant from which enough people and all it holds are free, for all of its
   * changeover and work, and takes them. What another machine held last is fetched, by a longer changeover; what stands
   * ready from the machine's own last work stays there until this one has used it. What has started keeps its people and,
   * from now on, what it holds.
   * @param free when the machine is free for its changeover
   * @param state the machine's before it
   */
  place(timing: Timing, o: number, m: number, free: number, state: number): void {
    const { startedAt, input } = this.#problem;
    const open = this.#problem.open[m]!;
    if (!Number.isNaN(startedAt[o]!)) {
      this.#take(o, m, timing.start[o]!, Math.max(timing.start[o]!, input.now), timing.end[o]!);
      return;
    }
    for (let earliest = free; ;) {
      const from = rewind(open, timing.start[o]!, timing.changeover[o]!);
      const changeover = this.#fetches ? this.#fetching(o, m, state, from) : 0;
      // Fetched once it is fetched for good: its longer changeover cannot end before the other machine's work with it.
      const until =
        changeover > timing.changeover[o]! ? earliest : this.#conflict(o, m, from, timing.end[o]!);
      if (until === -Infinity) {
        if (this.#fetches) this.#keep(o, m, state, from);
        this.#take(o, m, from, from, timing.end[o]!);
        return;
      }
      earliest = until;
      timeOperation(this.#problem, timing, o, m, until, Math.max(changeover, timing.changeover[o]!));
    }
  }

  #take(o: number, m: number, from: number, holdFrom: number, to: number): void {
    this.#crew?.take(this.#problem.open[m]!, from, to, this.#problem.crew[o]!);
    this.#held?.take(this.#things(o, m), m, holdFrom, to);
  }

  /** The last instant in [from, to) until which people or things are missing; −∞ if nothing is. */
  #conflict(o: number, m: number, from: number, to: number): number {
    return Math.max(
      this.#crew?.conflict(this.#problem.open[m]!, from, to, this.#problem.crew[o]!) ?? -Infinity,
      this.#held?.conflict(this.#things(o, m), m, from, to) ?? -Infinity,
    );
  }

  /** Seconds of a changeover that begins at `from`; 0 when nothing has to be fetched for it. */
  #fetching(o: number, m: number, state: number, from: number): number {
    const away = this.#parts(o, m).filter(({ thing }) => this.#held!.standingSince(thing, m, from) === null);
    return away.length === 0 ? 0 : this.#changeover(o, m, state, away);
  }

  /** Holds what would cost more if it had to be fetched, from the machine's last work with it. */
  #keep(o: number, m: number, state: number, from: number): void {
    const standing = this.#problem.setups[m]!.row(state)[this.#problem.setups[m]!.classOf[o]!]!;
    for (const part of this.#parts(o, m)) {
      const since = this.#held!.standingSince(part.thing, m, from);
      if (since !== null && this.#changeover(o, m, state, [part]) > standing)
        this.#held!.take([part.thing], m, since, from);
    }
  }

  #changeover(o: number, m: number, state: number, fetched: readonly Part[]): number {
    const setup = this.#problem.setups[m]!;
    const attributes = new Set(fetched.flatMap((part) => part.attributes));
    return setup.fetching(state, setup.classOf[o]!, attributes);
  }

  /** What it holds of which fetching costs something; nothing for work of no seconds. */
  #parts(o: number, m: number): Part[] {
    const { seconds, machines, heldPartOf } = this.#problem;
    if (seconds[o * machines + m] === 0) return [];
    return this.#things(o, m)
      .map((thing) => ({ thing, attributes: heldPartOf[thing]! }))
      .filter(({ attributes }) => attributes.length > 0);
  }

  #things(o: number, m: number): readonly number[] {
    return this.#problem.held![o * this.#problem.machines + m]!;
  }
}

/** A thing and the attributes that it is part of. */
interface Part {
  readonly thing: number;
  readonly attributes: readonly string[];
}
