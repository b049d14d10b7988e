import type { Material } from '../shop/material.ts';

/**
 * Inside radius of a bend that the drawing leaves open: one thickness, what a V of about eight thicknesses makes
 * (common practice, no source).
 */
export const defaultRadiusMm = (thicknessMm: number): number => thicknessMm;

/** Tensile strength of the mild steel that the 16 % figure and machine ratings refer to: 60 ksi. */
export const MILD_STEEL_MPA = 413.7;

/**
 * The radius an air bend takes from its V opening, whatever the punch: 16 % of the opening in mild steel, in
 * proportion to tensile strength for other metals.
 * Source: the "20 % rule" of air forming as taught in trade magazines (15–17 % mild steel, 20–22 % stainless).
 */
export const airBendRadiusMm = (dieOpeningMm: number, { tensileMpa }: Pick<Material, 'tensileMpa'>): number =>
  0.16 * dieOpeningMm * (tensileMpa / MILD_STEEL_MPA);
