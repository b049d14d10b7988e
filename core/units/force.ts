import { MM_PER_FOOT, type LengthUnits } from './length.ts';

/** Kilopounds per square inch, from the exact pound-force and inch. */
export const MPA_PER_KSI = 6.894757;

/** A brake's force as machines are rated for it here: "90 metric tonnes". Named in full, for a US ton is less. */
export const formatTonnes = (tonnes: number | string): string => `${tonnes} metric tonnes`;

/** A force spread over a length: "5.1 metric tonnes a foot" in a shop of inches, else a metre. */
export const formatTonnesPerLength = (tonnesPerMm: number, units: LengthUnits): string =>
  units === 'in'
    ? `${formatTonnes((tonnesPerMm * MM_PER_FOOT).toFixed(1))} a foot`
    : `${formatTonnes((tonnesPerMm * 1000).toFixed(0))} a metre`;
