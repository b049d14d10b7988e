import type { OperationInput, Problem, ProblemInput } from './problem.ts';

/** Names of what an operation holds on a machine: everywhere, and there besides. */
export function holdsOn(
  operation: Pick<OperationInput, 'holds' | 'machines'>,
  machine: string,
): readonly string[] {
  const own = operation.machines?.find(({ id }) => id === machine)?.holds ?? [];
  return [...new Set([...(operation.holds ?? []), ...own])];
}

/**
 * What is held, by operation and machine at [o × machines + m], and what each thing is part of: numbers of the things that
 * two machines could want. One that a single machine holds is never waited for.
 * @param able can operation o be done on machine m, at the same index
 * @returns `held` is null when no machine can ever wait for another
 */
export function heldTable(
  operations: readonly OperationInput[],
  { machines, partOf = {} }: Pick<ProblemInput, 'machines' | 'partOf'>,
  able: (at: number) => boolean,
): Pick<Problem, 'held' | 'heldPartOf'> {
  const none = { held: null, heldPartOf: [] };
  if (!operations.some((o) => o.holds?.length || o.machines?.some((m) => m.holds?.length))) return none;
  const names = operations.flatMap((operation, o) =>
    machines.map((machine, m) => (able(o * machines.length + m) ? holdsOn(operation, machine.id) : [])),
  );
  const wantedOn = new Map<string, Set<number>>();
  names.forEach((held, at) =>
    held.forEach((name) => wantedOn.set(name, (wantedOn.get(name) ?? new Set()).add(at % machines.length))),
  );
  const shared = [...wantedOn].filter(([, on]) => on.size > 1).map(([name]) => name);
  if (shared.length === 0) return none;
  const number = new Map(shared.map((name, k) => [name, k]));
  return {
    held: names.map((held) => held.flatMap((name) => number.get(name) ?? [])),
    heldPartOf: shared.map((name) => partOf[name] ?? []),
  };
}

interface Hold {
  readonly machine: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Which machine holds which thing from when to when, closed hours included: what is set up stays on the machine. Holds of
 * a thing never overlap, those of started operations excepted, which all come first; so their ends ascend as their starts do.
 */
export class HeldBoard {
  readonly #holds = new Map<number, Hold[]>();

  /** End of the last hold of these things that another machine has in [from, to); −∞ if none. */
  conflict(things: readonly number[], machine: number, from: number, to: number): number {
    let until = -Infinity;
    for (const thing of things) {
      const holds = this.#holds.get(thing) ?? [];
      for (let k = holds.length - 1; k >= 0 && holds[k]!.to > from; k--) {
        const hold = holds[k]!;
        if (hold.machine === machine || Math.max(hold.from, from) >= Math.min(hold.to, to)) continue;
        until = Math.max(until, hold.to);
        break;
      }
    }
    return until;
  }

  /**
   * Since when a thing has stood on a machine unused, as of `from`: the end of the machine's last hold; −∞ if nobody has
   * held it yet. @returns null when it was on another machine last, so that it has to be fetched
   */
  standingSince(thing: number, machine: number, from: number): number | null {
    const holds = this.#holds.get(thing) ?? [];
    let last = -Infinity;
    for (let k = holds.length - 1; k >= 0; k--) {
      const hold = holds[k]!;
      if (hold.to > from) continue;
      if (hold.to < last) break;
      if (hold.machine === machine) return hold.to;
      last = hold.to;
    }
    return last === -Infinity ? last : null;
  }

  take(things: readonly number[], machine: number, from: number, to: number): void {
    if (from >= to) return;
    for (const thing of things) {
      if (!this.#holds.has(thing)) this.#holds.set(thing, []);
      const holds = this.#holds.get(thing)!;
      let k = holds.length;
      while (k > 0 && (holds[k - 1]!.from - from || holds[k - 1]!.to - to) > 0) k -= 1;
      holds.splice(k, 0, { machine, from, to });
    }
  }
}
