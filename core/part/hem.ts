import type { Hem } from './profile.ts';
import { bendAllowance, type BendShape } from './bend.ts';

/**
 * K inside a fold pressed flat. With no radius left the deduction becomes 2T − πT/2 = 0.43 T, the shop rule
 * "43 % of the thickness" (common practice, no source).
 */
const CLOSED_HEM_K = 0.5;

/** A hem is made in two hits: folded past square, then flattened (common practice, no source). */
export const HITS_PER_HEM = 2;

/**
 * A hem as a bend of 180°. A closed hem has no inside radius; an open one keeps a gap of one thickness, so R = T/2
 * (common practice, no source).
 */
export function hemShape(kind: Hem['kind'], thickness: number, kFactor: number): BendShape {
  return kind === 'closed'
    ? { angle: 180, radius: 0, thickness, kFactor: CLOSED_HEM_K }
    : { angle: 180, radius: thickness / 2, thickness, kFactor };
}

/**
 * What to take off the lip and the flange beside it, both measured over the outside of the fold: 2(R + T) − π(R + K·T).
 */
export const hemDeduction = (fold: BendShape): number =>
  2 * (fold.radius + fold.thickness) - bendAllowance(fold);
