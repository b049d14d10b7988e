import type { CutPlan } from './plan.ts';

/** Whether `a` is better: it costs less, or else leaves less scrap, then needs fewer settings, then keeps a larger remnant. */
export function isTidier(a: CutPlan, b: CutPlan): boolean {
  if (Math.abs(a.costCents - b.costCents) > 1e-6) return a.costCents < b.costCents;
  if (Math.abs(a.areas.scrap - b.areas.scrap) > 1) return a.areas.scrap < b.areas.scrap;
  if (a.counts.backGaugeMoves !== b.counts.backGaugeMoves)
    return a.counts.backGaugeMoves < b.counts.backGaugeMoves;
  return largestRemnant(a) > largestRemnant(b);
}

/** The better of two plans of one run, with the higher of their bounds: each holds for the run, whoever found it. */
export function betterOf(known: CutPlan, fresh: CutPlan): CutPlan {
  const best = isTidier(fresh, known) ? fresh : known;
  const bound = Math.min(best.costCents, Math.max(known.lowerBoundCents, fresh.lowerBoundCents));
  return bounded(best, bound);
}

/** A plan with what is known of the least cost. */
export const bounded = (plan: CutPlan, lowerBoundCents: number): CutPlan => ({
  ...plan,
  lowerBoundCents,
  status: lowerBoundCents >= plan.costCents - 1e-6 ? 'optimal' : 'feasible',
});

const largestRemnant = (plan: CutPlan): number =>
  Math.max(
    0,
    ...plan.groups.flatMap((group) =>
      group.offcuts.map((cut) => (cut.kind === 'remnant' ? cut.w * cut.h : 0)),
    ),
  );
