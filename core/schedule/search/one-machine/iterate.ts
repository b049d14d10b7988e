import type { Problem } from '../../problem.ts';
import type { Incumbent } from '../incumbent.ts';
import type { NumberedQueues } from '../../numbered-queues.ts';
import type { Rng } from '../../../rng.ts';
import { descend } from './descent.ts';
import { perturb, shuffle } from './perturb.ts';
import { Sequence } from './sequence.ts';
import { TINY } from './tiny.ts';

/** Perturbations in vain, per job, before the search restarts from an order drawn at random. */
const PATIENCE = 4;
/**
 * Perturbation and acceptance. Without changeovers perturbations reach as far as they may (`longest` stretch) and no worse
 * order is accepted; with them they stay near, and a local optimum above the one before by about this share of it is
 * accepted now and then.
 */
const PLAIN = { longest: Infinity, tolerance: 0 };
const WITH_SETUPS = { longest: 5, tolerance: 0.006 };
/** Moves evaluated between two yields. */
const YIELD_EVERY = 20_000;

/**
 * Iterated local search for one machine: descend, perturb, descend again, go on from the local optimum accepted; restart
 * after many perturbations in vain, until the caller stops.
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
  let nextYield = 0;
  let accepted = sequence.order.slice();
  let value = sequence.objective;
  let least = value;
  for (let idle = 0; ; idle++) {
    for (const evaluated of descend(sequence, rng)) {
      evaluations += evaluated;
      if (evaluations < nextYield) continue;
      nextYield = evaluations + YIELD_EVERY;
      yield { ...best, evaluations };
    }
    if (sequence.objective <= value - tolerance * value * Math.log(1 - rng.next())) {
      value = sequence.objective;
      accepted = sequence.order.slice();
    } else sequence.load(accepted);
    if (value < least - TINY) {
      least = value;
      idle = 0;
    }
    if (value < best.objective - TINY) best = { queues: [accepted], objective: value, evaluations };
    if (idle < PATIENCE * sequence.jobs) perturb(sequence, longest, rng);
    else {
      shuffle(sequence, rng);
      idle = 0;
      value = sequence.objective;
      least = value;
    }
  }
}
