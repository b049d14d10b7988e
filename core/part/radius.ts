import type { Material } from '../material/material.ts';

/**
 * Inside radius of a bend that the drawing leaves open: one thickness, what a V of about eight thicknesses makes
 * (common practice, no source).
 */
export const defaultRadiusMm = (thicknessMm: number): number => thicknessMm;

/** Tensile strength of the mild steel that machine ratings and force charts refer to: 60 ksi. */
export const MILD_STEEL_MPA = 413.7;

/** Inside radius of an air bend as a share of the V opening: mild steel of 60 ksi, stainless, aluminium. */
const SHARE = { mildSteel: 0.16, stainless: 0.21, aluminium: 0.15 } as const;

/** Aluminium is soft, annealed, up to this tensile strength (16 ksi; common practice, no source). */
const SOFT_MPA = 110;

/** What the metal makes of the V: the share that its own kind has in print, else 16 % in proportion to tensile strength. */
function shareOf({ metal, tensileMpa }: Pick<Material, 'metal' | 'tensileMpa'>): number {
  if (metal === 'stainless') return SHARE.stainless;
  if (metal === 'aluminium' && tensileMpa > SOFT_MPA) return SHARE.aluminium;
  return (SHARE.mildSteel * tensileMpa) / MILD_STEEL_MPA;
}

/**
 * The radius an air bend takes from its V opening, whatever the punch; in the unit of the opening.
 * Sources: the "20 % rule" of air forming as taught in trade magazines: aluminium 13–15 %; mild steel 15–17 % and stainless
 * 20–22 % (both from memory); other steels, and soft aluminium, 16 % × tensile strength / 60 ksi.
 */
export const airBendRadiusMm = (
  dieOpeningMm: number,
  material: Pick<Material, 'metal' | 'tensileMpa'>,
): number => shareOf(material) * dieOpeningMm;

/**
 * The inside radius that a bend really gets: of what the V makes and the tip of the punch the larger, since a tip that is
 * rounder presses its own radius into the metal. Millimetres; a tip of null is not known and leaves the V's.
 * Source: articles of the trade press on air forming (from memory).
 */
export const formedRadiusMm = (
  dieOpeningMm: number,
  tipRadiusMm: number | null,
  material: Pick<Material, 'metal' | 'tensileMpa'>,
): number => Math.max(airBendRadiusMm(dieOpeningMm, material), tipRadiusMm ?? 0);
