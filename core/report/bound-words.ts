/** A bound further off than this, as a share of itself, says nothing about how good the plan is. */
const TIGHT = 0.5;

/**
 * How much better a plan could be at most, in a sentence. Only a bound can say so; where none is near it says that.
 * @param objective the plan's, lower is better
 * @param bound no plan's objective is below it; null when none is known
 */
export function boundSentence(objective: number, bound: number | null): string {
  if (bound !== null && objective <= bound * (1 + 1e-9))
    return 'No better plan is possible: this one is proven best.';
  const gap = bound === null || bound <= 0 ? Infinity : objective / bound - 1;
  const share = bound === null ? 0 : bound / objective;
  if (gap <= TIGHT)
    return `No plan can beat this by more than ${Math.ceil(100 * (1 - share) - 1e-9)} %, lateness and changeovers weighed together.`;
  const unavoidable = Math.floor(100 * share);
  return unavoidable === 0
    ? 'How much better a plan could be is not known.'
    : `How much better a plan could be is not known: only ${unavoidable} % of this, lateness and changeovers weighed together, is proven unavoidable.`;
}
