import type { Sheet } from './material.ts';

/** What a sheet's edges make of it. */
export type SheetEdges = Pick<Sheet, 'widthMm' | 'lengthMm' | 'trimMm'>;

/**
 * What blanks can be cut from: the sheet less its trim, which comes off one side and one end. The one figure for trim, for
 * times, cut lists and the choice of a sheet alike. Off a coil, `lengthMm` is what is cut off it.
 */
export const usableSize = ({
  widthMm,
  lengthMm,
  trimMm,
}: SheetEdges): { widthMm: number; lengthMm: number } => ({
  widthMm: widthMm - trimMm,
  lengthMm: lengthMm - trimMm,
});

/** A blank so near the usable size of a sheet is that size already: ± 1/64 in, what a back gauge holds (common practice, no source). */
const SAME_AS_SHEET_MM = 0.5;

/** A blank's width or length, or that of the sheet that it is taken for. @param usable of the sheets that it may be cut from */
export function asStocked(sizeMm: number, usable: readonly number[]): number {
  const off = (mm: number): number => Math.abs(mm - sizeMm);
  const nearest = usable.toSorted((a, b) => off(a) - off(b))[0];
  return nearest !== undefined && off(nearest) <= SAME_AS_SHEET_MM ? nearest : sizeMm;
}
