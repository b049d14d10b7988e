import type { Material, Temper } from '../material/material.ts';
import { MM_PER_INCH } from '../units/length.ts';

/** The thicknesses of the table's columns. */
const COLUMNS_MM = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4].map((inches) => inches * MM_PER_INCH);

/**
 * Least inside radius of a square bend made cold, as a multiple of the thickness, by column. Where nothing is printed for a
 * thicker column the last figure stands.
 * Source: Aluminum Design Manual, January 2005, table 3-1; 6061-T6 from a designer's bend table.
 */
const TIMES_THICKNESS: Readonly<Record<Temper, readonly number[]>> = {
  '3003-H14': [0, 0, 0, 1],
  '3003-H16': [0.5, 1, 1, 1.5],
  '3003-H18': [1, 1.5, 2, 2.5],
  '3105-H25': [0.5, 0.5, 0.5],
  '5052-H32': [0, 0, 1, 1.5],
  '5052-H34': [0, 1, 1.5, 2, 2.5],
  '6061-T6': [1, 1, 1.5, 2.5, 3.5],
};

/** An air bend in steel turns "sharp", the punch digging in, below this share of the thickness (trade press). */
const SHARP_RADIUS = 0.63;

/**
 * Full-hard structural steel, grade 80 (82 ksi at least), is known by its strength. It stretches so little that its bends
 * need two thicknesses at least (common practice, no source); the supplier's figure stands above it.
 */
const FULL_HARD = { fromMpa: 550, radius: 2 } as const;

/** A rolled thickness differs from its name by this much at most before the next column counts. */
const GRACE_MM = 0.02;

/** The column for a thickness: the first that is as thick; the last for anything thicker. */
function columnOf(thicknessMm: number): number {
  const at = COLUMNS_MM.findIndex((column) => thicknessMm <= column + GRACE_MM);
  return at === -1 ? COLUMNS_MM.length - 1 : at;
}

/**
 * Least inside radius that a metal stands. Steel and stainless: 0.63 T, full-hard steel 2 T; aluminium by alloy and temper,
 * 3003-H14 where none is named.
 * @returns millimetres, 0 or more
 */
export function leastRadiusMm(
  { metal, temper, tensileMpa }: Pick<Material, 'metal' | 'temper' | 'tensileMpa'>,
  thicknessMm: number,
): number {
  if (metal === 'aluminium') {
    const row = TIMES_THICKNESS[temper ?? '3003-H14'];
    return (row[columnOf(thicknessMm)] ?? row.at(-1) ?? 0) * thicknessMm;
  }
  const fullHard = metal !== 'stainless' && tensileMpa >= FULL_HARD.fromMpa;
  return (fullHard ? FULL_HARD.radius : SHARP_RADIUS) * thicknessMm;
}
