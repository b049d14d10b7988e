/**
 * A figure typed in the shop's unit as it is kept: `per` is what one of the shop's unit is in the kept one. A field
 * shows it rounded; leaving such a field untouched must not change what is kept.
 */
export const keptFigure = (kept: number, typed: number, per: number, digits: number): number =>
  Number((kept / per).toFixed(digits)) === typed ? kept : Number((typed * per).toPrecision(12));
