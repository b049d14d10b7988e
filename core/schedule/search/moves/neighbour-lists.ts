import type { Problem } from '../../problem.ts';
import type { SetupTable } from '../../setup.ts';

/** So many neighbours an operation has. */
export const NEIGHBOURS = 16;

/**
 * Per operation, up to NEIGHBOURS movable others that change over to it fastest on the first machine that can do it; of equally
 * fast ones those due at about the same time. Computed when first needed: a long search needs all, a short one
 * for few.
 */
export function neighbourLists(problem: Problem, movable: Int32Array): (o: number) => Int32Array {
  const known: (Int32Array | undefined)[] = [];
  const groups = new Map<SetupTable, SetupGroups>();
  return (o) => {
    const setup = problem.setups[problem.eligible[o]![0]!]!;
    if (!groups.has(setup)) groups.set(setup, new SetupGroups(problem, setup, movable));
    return (known[o] ??= groups.get(setup)!.of(o));
  };
}

/** The due date an operation works towards; a far one where there is none. */
const dueOf = (problem: Problem, o: number) => Math.min(1e12, problem.due[problem.jobOf[o]!]!);

/** Operations by what they ask for, each group by due date, so that only the ends of a few groups need be looked at. */
class SetupGroups {
  readonly #problem: Problem;
  readonly #setup: SetupTable;
  /** Operations of each class by due date; classes that none asks for are missing. */
  readonly #groups = new Map<number, number[]>();
  /** Per class, the classes with operations by their changeover to it. */
  readonly #byChangeover = new Map<number, number[]>();

  constructor(problem: Problem, setup: SetupTable, movable: Int32Array) {
    this.#problem = problem;
    this.#setup = setup;
    for (const o of movable) {
      const kind = setup.classOf[o]!;
      if (kind < 0) continue;
      if (!this.#groups.has(kind)) this.#groups.set(kind, []);
      this.#groups.get(kind)!.push(o);
    }
    for (const group of this.#groups.values())
      group.sort((a, b) => dueOf(problem, a) - dueOf(problem, b) || a - b);
  }

  of(o: number): Int32Array {
    const to = this.#setup.classOf[o]!;
    const order = this.#orderFor(to);
    const found: number[] = [];
    for (let k = 0; k < order.length && found.length < NEIGHBOURS;) {
      const seconds = this.#setup.row(order[k]!)[to]!;
      const equal: number[] = [];
      for (; k < order.length && this.#setup.row(order[k]!)[to] === seconds; k++)
        equal.push(...this.#around(this.#groups.get(order[k]!)!, o));
      const due = dueOf(this.#problem, o);
      const apart = (other: number) => Math.abs(dueOf(this.#problem, other) - due);
      found.push(...equal.sort((a, b) => apart(a) - apart(b) || a - b).slice(0, NEIGHBOURS - found.length));
    }
    return Int32Array.from(found);
  }

  #orderFor(to: number): number[] {
    const known = this.#byChangeover.get(to);
    if (known !== undefined) return known;
    const seconds = (from: number) => this.#setup.row(from)[to]!;
    const order = [...this.#groups.keys()].sort((a, b) => seconds(a) - seconds(b) || a - b);
    this.#byChangeover.set(to, order);
    return order;
  }

  /** Up to NEIGHBOURS of a group on either side of the operation's due date, itself left out. */
  #around(group: readonly number[], o: number): number[] {
    const due = dueOf(this.#problem, o);
    let low = 0;
    let high = group.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (dueOf(this.#problem, group[middle]!) < due) low = middle + 1;
      else high = middle;
    }
    return group.slice(Math.max(0, low - NEIGHBOURS), low + NEIGHBOURS + 1).filter((other) => other !== o);
  }
}
