import type { NumberedQueues } from '../numbered-queues.ts';
import type { Problem } from '../problem.ts';

/**
 * The shop with each shared thing at one machine, that which works longest with it in these queues: what holds it goes
 * nowhere else, so nothing is ever waited for. Operations that are fixed, or hold things of different homes, may go where
 * they may; their waits are left out. Plans of it are plans of the shop.
 */
export function atHome(problem: Problem, queues: NumberedQueues): Problem {
  const { held, machines } = problem;
  if (held === null) return problem;
  const homes = homesOf(problem, held, queues);
  const seconds = Int32Array.from(problem.seconds);
  const eligible = problem.eligible.map((able, o) => {
    const atHomes = able.filter((m) => held[o * machines + m]!.every((thing) => homes.get(thing) === m));
    if (problem.fixed[o] || atHomes.length === 0) return able;
    for (const m of able) if (!atHomes.includes(m)) seconds[o * machines + m] = -1;
    return atHomes;
  });
  return { ...problem, eligible, seconds, held: null };
}

/** Per thing, the machine that works longest with it; the first of equal ones. */
function homesOf(
  { machines, seconds }: Problem,
  held: readonly (readonly number[])[],
  queues: NumberedQueues,
): Map<number, number> {
  const worked = new Map<number, number[]>();
  queues.forEach((queue, m) => {
    for (const o of Array.from(queue))
      for (const thing of held[o * machines + m]!) {
        if (!worked.has(thing)) worked.set(thing, new Array<number>(machines).fill(0));
        worked.get(thing)![m]! += seconds[o * machines + m]!;
      }
  });
  return new Map([...worked].map(([thing, on]) => [thing, on.indexOf(Math.max(...on))]));
}
