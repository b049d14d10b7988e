/** A bound further off than this says nothing about how good the plan is. */
const TIGHT = 0.5;

/**
 * How near a plan is to the best possible, in a sentence. Only a bound can say so; where none is near it says that.
 * @param objective the plan's, lower is better
 * @param bound no plan's objective is below it; null when none is known
 */
export function boundSentence(objective: number, bound: number | null): string {
  if (bound !== null && objective <= bound * (1 + 1e-9))
    return 'No better plan is possible: this one is proven best.';
  const gap = bound === null || bound <= 0 ? Infinity : objective / bound - 1;
  if (gap <= TIGHT)
    return `Within ${Math.ceil(100 * gap - 1e-9)} % of what is possible: that much is proven.`;
  const share = bound === null ? 0 : Math.floor((100 * bound) / objective);
  return share === 0
    ? 'How near this is to the best possible is not known.'
    : `How near this is to the best possible is not known: only ${share} % of its cost is proven to be unavoidable.`;
}
