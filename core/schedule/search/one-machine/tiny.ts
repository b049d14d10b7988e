/** Costs are sums of fractions: a gain of less may be none. */
export const TINY = 1e-6;
