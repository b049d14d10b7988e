import { lotWarning } from '../planning/line-lot.ts';
import type { ShearRun } from '../planning/runs.ts';

/**
 * What to say of a run for which no single lot on hand suffices: of each of its lines that needs more than there is, or of
 * all of them together where only cutting them showed it.
 */
export function lotWarnings({ lot, operations }: Pick<ShearRun, 'lot' | 'operations'>): string[] {
  if (lot?.from !== 'purchase') return [];
  const bought = operations.filter((one) => one.lot?.from === 'purchase');
  if (bought.length > 0) return bought.flatMap((one) => lotWarning([one.line.id], one.lot) ?? []);
  const lines = operations.map(({ line }) => line.id);
  return [lotWarning(lines, lot) ?? []].flat();
}
