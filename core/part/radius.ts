import type { Metal } from '../material/material.ts';

/**
 * Inside radius of a bend that the drawing leaves open: one thickness, what a V of about eight thicknesses makes
 * (common practice, no source).
 */
export const defaultRadiusMm = (thicknessMm: number): number => thicknessMm;

/** Tensile strength of the mild steel that machine ratings and force charts refer to: 60 ksi. */
export const MILD_STEEL_MPA = 413.7;

/** Inside radius of an air bend as a share of the V opening. */
const SHARE_OF_OPENING: Readonly<Record<Metal, number>> = {
  steel: 0.16,
  galvanized: 0.16,
  stainless: 0.21,
  aluminium: 0.15,
};

/**
 * The radius an air bend takes from its V opening, whatever the punch.
 * Source: the "20 % rule" of air forming as taught in trade magazines: mild steel 15–17 %, stainless 20–22 % (both from
 * memory), aluminium 13–15 %.
 */
export const airBendRadiusMm = (dieOpeningMm: number, metal: Metal): number =>
  SHARE_OF_OPENING[metal] * dieOpeningMm;
