import type { Rng } from '../../../rng.ts';
import type { BlockMove } from './block-move.ts';

/** Which operation must not come ahead of which again, and until which step of the search. */
export class TabuList {
  readonly #until: Int32Array;
  readonly #size: number;
  readonly #rng: Rng;

  constructor(operations: number, rng: Rng) {
    this.#size = operations;
    this.#until = new Int32Array(operations * operations);
    this.#rng = rng;
  }

  clear(): void {
    this.#until.fill(0);
  }

  /**
   * Would the moved operation pass one that it must not pass again?
   * @param order the operations that the move touches
   */
  forbids({ first, last, forward }: BlockMove, order: readonly number[], step: number): boolean {
    const moved = forward ? first : last;
    return order.some(
      (o) => o !== moved && this.#until[forward ? o * this.#size + moved : moved * this.#size + o]! > step,
    );
  }

  /** Forbids the way back of a move for some ten steps: tabu tenure 10 to 17, drawn at random. */
  forbid({ first, last, forward }: BlockMove, order: readonly number[], step: number): void {
    const moved = forward ? first : last;
    const until = step + 10 + this.#rng.below(8);
    for (const o of order)
      if (o !== moved) this.#until[forward ? moved * this.#size + o : o * this.#size + moved] = until;
  }
}
