import type { Extra } from '../planning/blanks.ts';

/**
 * Blanks with what of them is beyond the pieces: "40 + 1 to set up + 2 spare", else only their number.
 * @param quantity all of them
 */
export function blanksWords(quantity: number, { setUp, spare }: Extra): string {
  const beyond = [setUp > 0 ? `${setUp} to set up` : '', spare > 0 ? `${spare} spare` : ''];
  return [String(quantity - setUp - spare), ...beyond.filter(Boolean)].join(' + ');
}
