import type { Sheet } from '../material/material.ts';
import type { Blank } from './blank.ts';

/** What a piece's metal costs in the stock kept, cheapest and dearest, in whole cents. */
export interface MaterialCost {
  readonly lowCents: number;
  readonly highCents: number;
}

/**
 * The metal of one blank at the stock's price by area: its own area only, since what a sheet leaves over depends on the
 * other blanks of the run (core/cutting). Remnants are paid for already and left out.
 * @returns null when no sheet or coil of that material and gauge is kept
 */
export function materialCost(
  { areaM2 }: Pick<Blank, 'areaM2'>,
  sheets: readonly Sheet[],
  materialId: string,
  gauge: string,
): MaterialCost | null {
  const costs = sheets
    .filter((s) => s.materialId === materialId && s.gauge === gauge && s.form !== 'remnant')
    .map((s) => (s.costCents * areaM2 * 1e6) / (s.widthMm * s.lengthMm));
  if (costs.length === 0) return null;
  return { lowCents: Math.round(Math.min(...costs)), highCents: Math.round(Math.max(...costs)) };
}
