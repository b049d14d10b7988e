import type { Rng } from '../rng.ts';
import type { Sequence } from './sequence.ts';

/** Longest stretch moved along the order. */
const LONGEST = 13;
const TINY = 1e-6;

/**
 * Makes the best change of one kind, then of another by lot, until no kind holds a gain: two jobs change places, or a
 * stretch of a given length moves anywhere. (Variable neighbourhood descent in random order: A. Subramanian, M. Battarra
 * and C. N. Potts, International Journal of Production Research 52, 2014, pp. 2729-2742, from memory.)
 * Yields after every kind, with about how many changes it evaluated.
 */
export function* descend(sequence: Sequence, rng: Rng): Generator<number, void> {
  const longest = Math.min(LONGEST, sequence.jobs - 1);
  const every = Array.from({ length: longest + 1 }, (_, length) => length);
  for (let kinds = [...every]; kinds.length > 0;) {
    const [kind] = kinds.splice(rng.below(kinds.length), 1);
    if (kind === 0 ? bestSwap(sequence) : bestMove(sequence, kind!)) kinds = [...every];
    yield sequence.jobs * sequence.jobs;
  }
}

/** Lets the two jobs change places that gain most so. @returns false when none gain */
function bestSwap(sequence: Sequence): boolean {
  const { jobs } = sequence;
  let least = -TINY;
  let first = -1;
  let second = -1;
  for (let from = 0; from < jobs; from++)
    for (let to = from + 2; to < jobs; to++) {
      const delta = sequence.swapDelta(from, to, least);
      if (delta >= least) continue;
      least = delta;
      first = from;
      second = to;
    }
  if (first >= 0) sequence.swap(first, second);
  return first >= 0;
}

/** Moves the stretch of this length that gains most so. @returns false when none gains */
function bestMove(sequence: Sequence, length: number): boolean {
  const { jobs } = sequence;
  let least = -TINY;
  let best: readonly [number, number, number] | null = null;
  const consider = (from: number, middle: number, until: number) => {
    const delta = sequence.exchangeDelta(from, middle, until, least);
    if (delta >= least) return;
    least = delta;
    best = [from, middle, until];
  };
  for (let at = 0; at + length <= jobs; at++) {
    for (let until = at + length + 1; until <= jobs; until++) consider(at, at + length, until);
    for (let from = at - 1; from >= 0; from--) consider(from, at, at + length);
  }
  if (best === null) return false;
  sequence.exchange(...(best as readonly [number, number, number]));
  return true;
}
