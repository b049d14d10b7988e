import type { Gauge } from '../material/material.ts';
import type { Tool } from './tool.ts';

/** Openings this close are the same V. */
const SAME_MM = 0.05;

export const sameV = (a: number | null, b: number | null): boolean =>
  a !== null && b !== null && Math.abs(a - b) < SAME_MM;

/** How many thicknesses wide the V is, by the thickest sheet that it holds for; wider ones above. */
const TIMES_THICKNESS = [
  [2.6, 6],
  [8, 8],
  [10, 10],
] as const;
const TIMES_ABOVE = 12;

/**
 * The V for a thickness, millimetres: 6 T up to 2.6 mm, 8 T up to 8 mm, 10 T up to 10 mm, 12 T above.
 * Source: a metric selection guide of the trade for V openings.
 */
export const usualVMm = (thicknessMm: number): number =>
  thicknessMm * (TIMES_THICKNESS.find(([most]) => thicknessMm <= most)?.[1] ?? TIMES_ABOVE);

/**
 * The V that a shop bends a gauge in, whichever brake it goes to: its house V; else, of the dies on record, the one nearest
 * to the usual rule, the wider of two as near; else the V usually set up on the first brake.
 * @returns millimetres; null when the shop has neither dies nor a brake
 */
export function houseVMm(
  gauge: Pick<Gauge, 'thicknessMm' | 'vMm'>,
  { tools, dieOpeningMm }: { readonly tools: readonly Tool[]; readonly dieOpeningMm: number | null },
): number | null {
  if (gauge.vMm !== undefined) return gauge.vMm;
  const usual = usualVMm(gauge.thicknessMm);
  const openings = tools.flatMap(({ openingMm }) => openingMm ?? []);
  return openings.toSorted((a, b) => Math.abs(a - usual) - Math.abs(b - usual) || b - a)[0] ?? dieOpeningMm;
}
