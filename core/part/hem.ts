import type { Hem } from './profile.ts';
import { formatLength, formatThickness, type Units } from '../units/length.ts';
import { bendAllowance, degrees, type BendShape } from './bend.ts';

/**
 * K inside a fold pressed flat. With no radius left the deduction becomes 2T − πT/2 = 0.43 T, the shop rule
 * "43 % of the thickness" (common practice, no source).
 */
const CLOSED_HEM_K = 0.5;

/** A hem is made in two hits: folded past square, then flattened (common practice, no source). */
export const HITS_PER_HEM = 2;

/** A hem as far as its fold depends on it. */
export type HemFold = Pick<Hem, 'kind' | 'lengthMm' | 'gapMm'>;

/**
 * Clear space inside a hem, in the unit of the thickness: none in a closed one, else as drawn, else one thickness (common
 * practice, no source).
 */
export const hemGap = ({ kind, gapMm }: Pick<Hem, 'kind' | 'gapMm'>, thickness: number): number =>
  kind === 'closed' ? 0 : (gapMm ?? thickness);

/** What a hem's words depend on. */
export interface HemMetal {
  readonly thicknessMm: number;
  readonly units: Units;
}

/** The clear space in a shop's units, to the finer figure of a thickness where it is one: "1/8 in", "0.028 in". */
export const hemGapWords = (hem: Pick<Hem, 'kind' | 'gapMm'>, { thicknessMm, units }: HemMetal): string =>
  hem.gapMm === undefined ? formatThickness(thicknessMm, units) : formatLength(hem.gapMm, units);

/** How it ends, for drawings: "closed", "gap 1/8 in" of an open one, "eye 1/8 in" of a teardrop. */
export function hemEndWords(hem: Pick<Hem, 'kind' | 'gapMm'>, metal: HemMetal): string {
  if (hem.kind === 'closed') return hem.kind;
  return `${hem.kind === 'open' ? 'gap' : 'eye'} ${hemGapWords(hem, metal)}`;
}

/** "closed", "open, gap 1/8 in", "teardrop, eye 1/8 in" */
export const hemWords = (hem: Pick<Hem, 'kind' | 'gapMm'>, metal: HemMetal): string =>
  hem.kind === 'closed' ? hem.kind : `${hem.kind}, ${hemEndWords(hem, metal)}`;

/**
 * A hem as a bend; lengths all in one unit. Closed: 180° with no inside radius. Open: 180° round its gap, R = gap/2.
 * Teardrop: R = gap/2 too, and the fold goes on until the inner corner of the lip's edge touches the flange. Lip and flange
 * are then the two tangents from that point to the inside of the fold, both s = lip − R − T long, so it turns through
 * 180° + 2·arctan(R/s). Its lip, measured along the flange over the outside of the fold, is s + R + T as an open hem's.
 * Teardrop: plane geometry (both tangents from a point to a circle are equally long); common practice, no source: use a
 * test piece.
 * @returns never NaN; a teardrop whose lip is too short to come back turns by 360° (core/part/strip.ts refuses it)
 */
export function hemShape(hem: HemFold, thickness: number, kFactor: number): BendShape {
  if (hem.kind === 'closed') return { angle: 180, radius: 0, thickness, kFactor: CLOSED_HEM_K };
  const radius = hemGap(hem, thickness) / 2;
  const straight = Math.max(0, hem.lengthMm - radius - thickness);
  const beyond = hem.kind === 'open' ? 0 : 2 * degrees(Math.atan2(radius, straight));
  return { angle: 180 + beyond, radius, thickness, kFactor };
}

/**
 * What to take off the lip and the flange beside it, both measured over the outside of the fold: 2(R + T) − A·(R + K·T), with
 * A = π but for a teardrop.
 */
export const hemDeduction = (fold: BendShape): number =>
  2 * (fold.radius + fold.thickness) - bendAllowance(fold);
