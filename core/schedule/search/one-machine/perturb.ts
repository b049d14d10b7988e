import type { Rng } from '../../../rng.ts';
import type { Sequence } from './sequence.ts';

/**
 * The perturbation of the iterated local search: two short stretches exchange their positions, wherever they are, which
 * no single block insertion takes back.
 *
 *     A [B C] d e [F] g   →   A [F] d e [B C] g
 *
 * It is the double bridge of travelling-salesman searches (O. Martin, S. W. Otto and E. W. Felten, Complex Systems 5,
 * 1991, pp. 299-326, from memory).
 * @param longest the most jobs of a stretch, and of what stays between the two
 */
export function perturb(sequence: Sequence, longest: number, rng: Rng): void {
  const { jobs } = sequence;
  const most = Math.max(1, Math.min(longest, jobs >> 2));
  const first = 1 + rng.below(most);
  const second = Math.min(1 + rng.below(most), jobs - first);
  const between = rng.below(Math.min(longest, jobs - first - second) + 1);
  const from = rng.below(jobs - first - second - between + 1);
  const until = from + first + between + second;
  sequence.exchange(from, from + first, until);
  if (between > 0) sequence.exchange(from, from + between, until - first);
}

/** Puts all jobs in an order drawn at random. */
export function shuffle(sequence: Sequence, rng: Rng): void {
  const order = sequence.order.slice();
  for (let k = order.length - 1; k > 0; k--) {
    const other = rng.below(k + 1);
    [order[k], order[other]] = [order[other]!, order[k]!];
  }
  sequence.load(order);
}
