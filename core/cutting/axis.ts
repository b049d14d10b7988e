import type { AxisRule } from './knapsack.ts';
import { NARROWEST_CUT_MM, type ShearLimits } from './run.ts';

/** One cut along an axis: what is taken off, and how its size is set. */
export interface AxisCut {
  readonly gives: 'trim' | 'offcut' | 'piece';
  readonly sizeMm: number;
  /** `back`: against the back gauge. `line`: to a scribed line, for what is too narrow or too wide for the gauge. */
  readonly gauge: 'back' | 'line';
}

/** The cuts that divide one length, and what remains in hand after the last. */
interface AxisPlan {
  readonly cuts: readonly AxisCut[];
  readonly remains: 'piece' | 'offcut';
  readonly remainsMm: number;
}

/** Differences below this are rounding, not metal. */
const sameMm = 0.005;

/** What the shear asks of the pieces along one axis; held by every pattern the search proposes. */
export const axisRule = (shear: ShearLimits): AxisRule => ({
  wideAbove: shear.scribe ? Infinity : shear.backGaugeMm.max,
  narrowBelow: shear.minStripMm,
  thinBelow: Math.max(NARROWEST_CUT_MM, shear.offcutFromMm ?? 0),
});

/**
 * Divides a length into pieces on a shear with a back gauge. Each cut takes one piece off behind the blade; what remains
 * stays in the hold-downs and must be wide enough for them. So a piece beyond the gauge's travel, or the last one where
 * there is no offcut to hold, is the piece that remains. A second piece beyond the gauge takes a scribed line.
 * Large settings come first: the sheet is steadiest while it is whole. Common practice, no source.
 * @param totalMm the whole length, trim included
 * @param piecesMm sizes, any order, as `axisRule` allows
 */
export function planAxis(
  totalMm: number,
  trimMm: number,
  piecesMm: readonly number[],
  shear: ShearLimits,
): AxisPlan {
  const sum = piecesMm.reduce((a, b) => a + b, 0);
  const offcut = Math.max(0, Math.round((totalMm - trimMm - sum) * 100) / 100);
  const last = remainingPiece(piecesMm, offcut, shear);
  const cuts: AxisCut[] = trimMm > sameMm ? [{ gives: 'trim', sizeMm: trimMm, gauge: 'line' }] : [];
  const others = piecesMm.toSorted((a, b) => b - a);
  if (last !== null) {
    others.splice(others.lastIndexOf(last), 1);
    cuts.push(...offcutPieces(offcut, shear));
  }
  for (const sizeMm of others) cuts.push({ gives: 'piece', sizeMm, gauge: gaugeFor(sizeMm, shear) });
  return { cuts, remains: last === null ? 'offcut' : 'piece', remainsMm: last ?? offcut };
}

/** The size that is left in hand at the end, or null when that is the offcut. */
function remainingPiece(piecesMm: readonly number[], offcut: number, shear: ShearLimits): number | null {
  const wide = piecesMm.find((piece) => piece > shear.backGaugeMm.max + sameMm);
  if (wide !== undefined) return wide;
  if (offcut >= shear.minStripMm && offcut > sameMm) return null;
  const held = piecesMm.filter((piece) => piece + sameMm >= shear.minStripMm);
  return held.length > 0 ? Math.min(...held) : null;
}

/** How a size is set: against the back gauge where that reaches, else to a scribed line. */
export const gaugeFor = (sizeMm: number, { backGaugeMm: { min, max } }: ShearLimits): AxisCut['gauge'] =>
  sizeMm + sameMm >= min && sizeMm <= max + sameMm ? 'back' : 'line';

/** An offcut in one piece where the shear can, else in lengths of the gauge's travel, the rest last and not too thin to cut. */
function offcutPieces(offcut: number, shear: ShearLimits): AxisCut[] {
  const longest = shear.scribe ? offcut : shear.backGaugeMm.max;
  const cuts: AxisCut[] = [];
  for (let left = offcut; left > sameMm;) {
    const most = left > longest ? Math.min(longest, left - NARROWEST_CUT_MM) : left;
    const sizeMm = Math.round(most * 100) / 100;
    cuts.push({ gives: 'offcut', sizeMm, gauge: gaugeFor(sizeMm, shear) });
    left -= sizeMm;
  }
  return cuts;
}
