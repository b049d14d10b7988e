import { z } from 'zod';
import { isTakenWord } from './input-limits.ts';
import type { LengthUnits } from './units/length.ts';

/** Field types shared by the shop's nouns. Limits are generous: they catch slips, not unusual shops. */

/** A short code a person types and reads aloud: letters, digits, dash, dot, underscore. It is the row's key. */
export const code = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/, 'use 1 to 40 letters, digits, dots, dashes or underscores')
  .refine((word) => !isTakenWord(word), 'the app keeps this word for itself; choose another code');
export const name = z.string().trim().min(1, 'must not be empty').max(120, 'at most 120 characters');
export const note = z.string().max(2000, 'at most 2000 characters');
/** The longest that a length may be, as a shop reads it. */
export const LONGEST: Readonly<Record<LengthUnits, string>> = { in: '164 ft', mm: '50 m' };
/** Millimetres above zero, up to 50 m. */
export const lengthMm = z.number().positive('must be above 0').max(50_000, 'longer than any machine takes');
/** Whole seconds of duration, up to 90 days. */
export const durationS = z
  .int()
  .min(0, 'must not be negative')
  .max(90 * 86_400, 'at most 90 days');
/** Epoch seconds between the years 2000 and 2100. */
export const instantS = z
  .int()
  .min(946_684_800, 'before the year 2000')
  .max(4_102_444_800, 'after the year 2099');
/** A wall-clock time of day, 24 h, "07:30"; "24:00" closes a day. */
export const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'a time like 07:30');
/** A calendar date in the shop's time zone, "2026-11-26". */
export const localDate = z.iso.date('a date like 2026-11-26');
export const hexColour = z.string().regex(/^#[0-9a-f]{6}$/, 'a colour like #2f5d3a');
export const gaugeLabel = z.string().regex(/^[0-9A-Za-z./-]{1,12}$/, 'a gauge label like 24 or .040');
export const cents = z.int().min(0).max(1_000_000_000);
/** Importance of a work order: 1 usual, up to 10. */
export const importance = z.number().min(0.1, 'at least 0.1').max(10, 'at most 10');
/** Grows by one with every change of the row; a write names the revision it read. */
export const revision = z.int().min(0);
