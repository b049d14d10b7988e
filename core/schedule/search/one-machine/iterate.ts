import type { Problem } from '../../problem.ts';
import type { Incumbent } from '../incumbent.ts';
import type { NumberedQueues } from '../../numbered-queues.ts';
import type { Rng } from '../rng.ts';
import { descend } from './descent.ts';
import { kick, shuffle } from './kick.ts';
import { Sequence } from './sequence.ts';

/** Kicks in vain, per job, before the search begins again from an order by lot. */
const PATIENCE = 4;
/**
 * How a round goes on. Without changeovers kicks reach as far as they may (`longest` stretch) and nothing worse is gone on
 * from; with them kicks stay near, and a descent that ends above the one before by about this share of it is taken now
 * and then.
 */
const PLAIN = { longest: Infinity, tolerance: 0 };
const WITH_SETUPS = { longest: 5, tolerance: 0.006 };
/** Changes evaluated between two looks at the outside. */
const BREATH = 20_000;
const TINY = 1e-6;

/**
 * Iterated local search for one machine: descend, kick, descend again, go on from the better of the two; after many kicks
 * in vain begin again, until the caller stops.
 * Sources: R. K. Congram, C. N. Potts and S. L. van de Velde, INFORMS Journal on Computing 14, 2002, pp. 52-67; with
 * changeovers A. Subramanian, M. Battarra and C. N. Potts, International Journal of Production Research 52, 2014,
 * pp. 2729-2742 (both from memory).
 */
export function* iterateSequence(
  problem: Problem,
  first: NumberedQueues,
  rng: Rng,
): Generator<Incumbent, void> {
  const { longest, tolerance } = problem.setups[0]!.free ? PLAIN : WITH_SETUPS;
  const sequence = new Sequence(problem, first[0]!);
  let best: Incumbent = { queues: first, objective: sequence.objective, evaluations: 0 };
  let evaluations = 0;
  let budget = 0;
  let home = sequence.order.slice();
  let value = sequence.objective;
  let least = value;
  for (let idle = 0; ; idle++) {
    for (const evaluated of descend(sequence, rng)) {
      evaluations += evaluated;
      if (evaluations < budget) continue;
      budget = evaluations + BREATH;
      yield { ...best, evaluations };
    }
    if (sequence.objective <= value - tolerance * value * Math.log(1 - rng.next())) {
      value = sequence.objective;
      home = sequence.order.slice();
    } else sequence.load(home);
    if (value < least - TINY) {
      least = value;
      idle = 0;
    }
    if (value < best.objective - TINY) best = { queues: [home], objective: value, evaluations };
    if (idle < PATIENCE * sequence.jobs) kick(sequence, longest, rng);
    else {
      shuffle(sequence, rng);
      idle = 0;
      value = sequence.objective;
      least = value;
    }
  }
}
