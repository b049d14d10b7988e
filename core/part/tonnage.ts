import { MM_PER_FOOT, MM_PER_INCH } from '../units/length.ts';
import { MILD_STEEL_MPA } from './radius.ts';

/** One US ton-force in kilonewtons. */
export const KN_PER_US_TON = 8.896443;
/** One metric tonne-force in kilonewtons. */
export const KN_PER_TONNE = 9.80665;

/** US tons a foot and inch of thickness at V = 8 T, mild steel: to air-bend, and to close a curl (die makers' rule of thumb). */
const AIR_BEND_TONS = 60;
const CLOSE_CURL_TONS = 300;
/** Flattening a hem takes about two and a half times an air bend. */
const FLATTEN_FACTOR = 2.5;

interface Pressing {
  readonly thicknessMm: number;
  readonly lengthMm: number;
  readonly tensileMpa: number;
}

const strength = (tensileMpa: number): number => tensileMpa / MILD_STEEL_MPA;

/**
 * Force to air-bend a straight line, in kN: 575 × T²/V US tons a foot in 60 ksi steel (inches), in proportion to
 * tensile strength. Charts differ by a fifth either way.
 * Source: the bending-force formula of trade handbooks; Groover's textbook form F = K·TS·w·t²/D with K = 1.60.
 */
export const airBendKn = ({
  thicknessMm,
  lengthMm,
  tensileMpa,
  dieOpeningMm,
}: Pressing & { dieOpeningMm: number }): number =>
  ((575 * thicknessMm ** 2) / (dieOpeningMm * MM_PER_INCH)) *
  (lengthMm / MM_PER_FOOT) *
  strength(tensileMpa) *
  KN_PER_US_TON;

/**
 * Force to press a hem flat, in kN, as the range that published rules span: from 2.5 air bends at V = 8 T (60 T tons a
 * foot) to the figure for closing a curl (300 T tons a foot). No single value is published.
 * Sources: a sheet-metal design guide on hems (2.5 ×) and a die maker's rule of thumb (60 T, 300 T).
 */
export function flattenHemKn({ thicknessMm, lengthMm, tensileMpa }: Pressing): { low: number; high: number } {
  const perTon =
    (thicknessMm / MM_PER_INCH) * (lengthMm / MM_PER_FOOT) * strength(tensileMpa) * KN_PER_US_TON;
  return { low: FLATTEN_FACTOR * AIR_BEND_TONS * perTon, high: CLOSE_CURL_TONS * perTon };
}
