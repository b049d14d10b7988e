import { MM_PER_FOOT, type Units } from './length.ts';
import { writeFixed, writeNumber, type Decimals } from './number.ts';

/** Kilopounds per square inch, from the exact pound-force and inch. */
export const MPA_PER_KSI = 6.894757;

/** A brake's force as machines are rated for it here: "90 metric tonnes". Named in full, for a US ton is less. */
export const formatTonnes = (tonnes: number, { decimals }: Decimals): string =>
  `${writeNumber(tonnes, decimals)} metric tonnes`;

/** A force that is worked out: "about 12.4 metric tonnes". */
export const formatReckonedTonnes = (tonnes: number, style: Decimals, places = 1): string =>
  `${writeFixed(tonnes, places, style)} metric tonnes`;

/** A force spread over a length: "5.1 metric tonnes a foot" in a shop of inches, else a metre. */
export const formatTonnesPerLength = (tonnesPerMm: number, units: Units): string =>
  units.units === 'in'
    ? `${formatReckonedTonnes(tonnesPerMm * MM_PER_FOOT, units)} a foot`
    : `${formatReckonedTonnes(tonnesPerMm * 1000, units, 0)} a metre`;
