import { MM_PER_FOOT, MM_PER_INCH } from '../units/length.ts';
import { MILD_STEEL_MPA } from './radius.ts';

/** One US ton-force in kilonewtons. */
export const KN_PER_US_TON = 8.896443;
/** One metric tonne-force in kilonewtons. */
export const KN_PER_TONNE = 9.80665;

/** A straight line in a metal that a brake presses along. */
export interface Pressing {
  readonly thicknessMm: number;
  readonly lengthMm: number;
  readonly tensileMpa: number;
}

/** How much more force a metal takes than mild steel: in proportion to tensile strength. */
export const strengthShare = (tensileMpa: number): number => tensileMpa / MILD_STEEL_MPA;

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
  strengthShare(tensileMpa) *
  KN_PER_US_TON;
