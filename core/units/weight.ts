import { MM_PER_FOOT, type Units } from './length.ts';
import { writeFixed } from './number.ts';

/** The pound, exact by definition. */
export const KG_PER_LB = 0.45359237;

/** Of a pound a square foot. */
export const KG_M2_PER_LB_FT2 = (KG_PER_LB * 1e6) / MM_PER_FOOT ** 2;

/** A weight in the shop's units: pounds in a shop that works in inches. */
export const formatWeight = (weightKg: number, units: Units): string =>
  units.units === 'in'
    ? `${writeFixed(weightKg / KG_PER_LB, 2, units)} lb`
    : `${writeFixed(weightKg, 2, units)} kg`;
