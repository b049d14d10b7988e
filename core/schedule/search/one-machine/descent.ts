import type { Rng } from '../../../rng.ts';
import { bestInsertion } from './block-insertion.ts';
import type { Sequence } from './sequence.ts';
import { bestSwap } from './swap.ts';

/** Longest stretch moved along the order. */
const LONGEST = 13;

/**
 * Variable neighbourhood descent in random order: applies the best move of one neighbourhood drawn at random, then of
 * another, until none holds a gain. The neighbourhoods are the swap of two jobs, and the insertion of a block of each
 * length. (A. Subramanian, M. Battarra and C. N. Potts, International Journal of Production Research 52, 2014,
 * pp. 2729-2742, from memory.)
 * Yields after every neighbourhood, with about how many moves it evaluated.
 */
export function* descend(sequence: Sequence, rng: Rng): Generator<number, void> {
  const longest = Math.min(LONGEST, sequence.jobs - 1);
  /** 0 is the swap. */
  const every = Array.from({ length: longest + 1 }, (_, length) => length);
  for (let left = [...every]; left.length > 0;) {
    const [length] = left.splice(rng.below(left.length), 1);
    if (length === 0 ? bestSwap(sequence) : bestInsertion(sequence, length!)) left = [...every];
    yield sequence.jobs * sequence.jobs;
  }
}
