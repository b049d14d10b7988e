import type { LengthUnits } from '../../core/units/length.ts';

/** What a sentence in a shop of these units must not hold: figures in the other system, or a tonne that is not named. */
export const foreignTo: Readonly<Record<LengthUnits, RegExp>> = {
  in: /\d\s*(mm|cm|m|kg|MPa|N|kN|t)\b|\b(mm|MPa|kN)\b|kg\//,
  mm: /\d\s*(in|ft|lb|ksi|t)\b|\d"|\bksi\b|lb\//,
};
