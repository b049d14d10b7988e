import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { cents, code, gaugeLabel, hexColour, lengthMm, name, revision } from '../fields.ts';
import { lotFields } from './lot.ts';

export const metal = z.enum(['steel', 'galvanized', 'stainless', 'aluminium']);
export type Metal = z.infer<typeof metal>;

/** The thickest sheet that is kept. Generous: it catches slips. */
export const MAX_THICKNESS_MM = 25;

/**
 * A thickness class the shop buys. The label alone does not fix the thickness (prefinished coil is ordered to a
 * stated decimal), so the record keeps its own thickness and weight; core/material has the published tables.
 */
export const gauge = z.strictObject({
  label: gaugeLabel,
  thicknessMm: z.number().positive('must be above 0').max(MAX_THICKNESS_MM),
  kgPerM2: z.number().positive('must be above 0').max(250),
  /** The house V: what the shop bends it in on every brake; left out: by the usual rule (core/part/house-v.ts). */
  vMm: z.number().positive('must be above 0').max(500).optional(),
});
export type Gauge = DeepReadonly<z.infer<typeof gauge>>;

/** Aluminium alloys and tempers that core/part/min-radius.ts has figures for. */
export const temper = z.enum([
  '3003-H14',
  '3003-H16',
  '3003-H18',
  '3105-H25',
  '5052-H32',
  '5052-H34',
  '6061-T6',
]);
export type Temper = DeepReadonly<z.infer<typeof temper>>;

/**
 * What the shop measured on its own test pieces: how much shorter the blank is than the two flanges beside a bend,
 * measured over the outside. It beats the formula for bends whose radius is left to the die.
 */
const measuredDeduction = z.strictObject({
  gauge: gaugeLabel,
  /** Degrees turned through; 180 is a closed hem. */
  angle: z.number().gt(0, 'above 0°').max(180, 'at most 180°'),
  /** The V it was bent in; null: any. */
  dieOpeningMm: z.number().positive('must be above 0').max(500).nullable(),
  deductionMm: z.number().min(-20).max(200),
});
export type MeasuredDeduction = DeepReadonly<z.infer<typeof measuredDeduction>>;

/** A metal as the shop buys it: one gauge table, one strength, one K-factor. */
export const material = z.strictObject({
  id: code,
  name,
  metal,
  /** Ultimate tensile strength, MPa: derates machine capacity. */
  tensileMpa: z.number().positive().max(2000),
  /** Alloy and temper, where the least bend radius depends on it; null: the usual one of the metal. */
  temper: temper.nullable(),
  /** Where the neutral line lies inside a bend, share of the thickness. */
  kFactor: z.number().min(0.2, 'at least 0.2').max(0.6, 'at most 0.6'),
  gauges: z.array(gauge).min(1, 'needs at least one gauge').max(100, 'at most 100'),
  deductions: z.array(measuredDeduction).max(500),
  revision,
});
export type Material = DeepReadonly<z.infer<typeof material>>;

/** A finish. `hex` is what the board paints the bars with. */
export const colour = z.strictObject({ id: code, name, hex: hexColour, revision });

/**
 * A sheet size, a coil or a remnant in stock, of one material, gauge and colour. Where the shop tells lots apart each lot of
 * a size is a row of its own; the row without one is the size as it is bought.
 */
export const sheet = z.strictObject({
  id: code,
  /** A coil is counted and priced by the stretch: `lengthMm` is one stretch (a metre, say), `onHand` how many are left. */
  form: z.enum(['sheet', 'coil', 'remnant']),
  materialId: code,
  gauge: gaugeLabel,
  colourId: code,
  ...lotFields,
  widthMm: lengthMm,
  lengthMm,
  /** Cut off one side and one end before a piece is measured; 0 where the edges can be trusted. */
  trimMm: z.number().min(0, 'at least 0').max(100),
  costCents: cents,
  onHand: z.int().min(0).max(1_000_000),
  revision,
});
export type Sheet = DeepReadonly<z.infer<typeof sheet>>;
