/**
 * Quantities as they travel through the code. A brand keeps a length from being passed for a duration;
 * it exists for the compiler only and costs nothing at run time.
 */

/** Millimetres, any fraction. */
export type Millimetres = number & { readonly unit: 'mm' };
/** Whole seconds of duration. A bend takes 9, a week 604 800; sums stay exact. */
export type Seconds = number & { readonly unit: 's' };
/** Whole seconds since 1970-01-01T00:00:00Z. */
export type Instant = number & { readonly unit: 'epoch s' };
/** Whole cents of the shop's currency. */
export type Cents = number & { readonly unit: 'cent' };

export const mm = (value: number): Millimetres => value as Millimetres;
export const seconds = (value: number): Seconds => value as Seconds;
export const instant = (value: number): Instant => value as Instant;
export const cents = (value: number): Cents => value as Cents;
