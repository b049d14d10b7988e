/** The shop's rule: an offcut at least this wide and long is a remnant, and of one size so many are worth their place. */
export interface RemnantRule {
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Of one size, those that lie in stock already included. */
  readonly most: number;
  /** Share of its metal's price that a kept remnant is worth. */
  readonly worth: number;
}

/** Remnants of one size that a list leaves. */
export interface RemnantSize {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly pieces: number;
  /** Of these, as many are worth keeping; the others are scrap. */
  readonly kept: number;
}
