import { formatCutLength, inchesToMm, type LengthUnits, type Units } from '../units/length.ts';
import { freeCode } from '../code.ts';
import { NO_LOT } from './lot.ts';
import type { Sheet } from './material.ts';

/** A width and a length. */
export type SheetSize = Pick<Sheet, 'widthMm' | 'lengthMm'>;

/** What a sheet is of. */
export type SheetMetal = Pick<Sheet, 'materialId' | 'gauge' | 'colourId'>;

const inches = (width: number, length: number): SheetSize => ({
  widthMm: inchesToMm(width),
  lengthMm: inchesToMm(length),
});
const millimetres = (widthMm: number, lengthMm: number): SheetSize => ({ widthMm, lengthMm });

/** Sheet sizes that suppliers usually keep, the smallest first. Common practice, no source. */
export const USUAL_SHEETS: Readonly<Record<LengthUnits, readonly SheetSize[]>> = {
  in: [inches(48, 96), inches(48, 120), inches(48, 144)],
  mm: [millimetres(1000, 2000), millimetres(1250, 2500), millimetres(1250, 3000), millimetres(1500, 3000)],
};

/** The size proposed first: pieces of ten feet are the usual trim length, and 1250 × 2500 mm the usual metric sheet. */
export const usualSheet = (units: LengthUnits): SheetSize => USUAL_SHEETS[units][1]!;

/** "48 × 120 in": the width, across which girths lie, first. */
export const sizeName = ({ widthMm, lengthMm }: SheetSize, units: Units): string =>
  `${formatCutLength(widthMm, units).replace(` ${units.units}`, '')} × ${formatCutLength(lengthMm, units)}`;

/**
 * A new sheet row of a metal in a size. Nothing of it is on hand.
 * @param costCents 0: not known yet
 * @param taken codes that are in use; the new one differs from each
 */
export function newSheet(
  { materialId, gauge, colourId }: SheetMetal,
  { widthMm, lengthMm }: SheetSize,
  units: LengthUnits,
  taken: Iterable<string>,
  costCents = 0,
): Sheet {
  const inUnits = (mm: number): number => Math.round(units === 'in' ? mm / inchesToMm(1) : mm);
  const size = `${inUnits(widthMm)}x${inUnits(lengthMm)}`;
  const id = freeCode(`${materialId}-${gauge}-${colourId}-${size}`, taken);
  return {
    id,
    form: 'sheet',
    materialId,
    gauge,
    colourId,
    ...NO_LOT,
    widthMm,
    lengthMm,
    trimMm: 0,
    costCents,
    onHand: 0,
    revision: 0,
  };
}
