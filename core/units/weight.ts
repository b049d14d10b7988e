import type { LengthUnits } from './length.ts';

/** The pound, exact by definition. */
export const KG_PER_LB = 0.45359237;

/** A weight in the shop's units: pounds in a shop that works in inches. */
export const formatWeight = (weightKg: number, units: LengthUnits): string =>
  units === 'in' ? `${(weightKg / KG_PER_LB).toFixed(2)} lb` : `${weightKg.toFixed(2)} kg`;
