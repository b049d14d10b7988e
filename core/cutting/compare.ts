import type { CutPlan, LeastMetal } from './plan.ts';
import { lineCuts, settingsOf } from './work.ts';

/** Less is no money. */
const sameCents = 1e-6;

/** What a list costs in all: stock and work, less what its remnants are worth. */
export const totalCents = (list: Pick<CutPlan, 'costCents' | 'workCents' | 'remnantCents'>): number =>
  list.costCents + list.workCents - list.remnantCents;

/** Stock that the list of least metal takes. */
export const metalCents = ({ sheets }: Pick<LeastMetal, 'sheets'>): number =>
  sheets.reduce((sum, { count, costCents }) => sum + count * costCents, 0);

/** What the least metal known for a plan costs: its own or that of the list beside it. */
const leastCents = (plan: CutPlan): number => (plan.least ? metalCents(plan.least) : plan.costCents);

/** Whether `a` is better: cheaper in all, or else it leaves less scrap, needs fewer settings, keeps a larger remnant. */
export function isBetter(a: CutPlan, b: CutPlan): boolean {
  const [total, other] = [totalCents(a), totalCents(b)];
  if (Math.abs(total - other) > sameCents) return total < other;
  if (Math.abs(a.areas.scrap - b.areas.scrap) > 1) return a.areas.scrap < b.areas.scrap;
  const [settings, more] = [settingsOf(a.steps), settingsOf(b.steps)];
  if (settings !== more) return settings < more;
  return largestRemnant(a) > largestRemnant(b);
}

/**
 * The better of two plans of one run, with the list of least metal of both beside it and the higher of their bounds: each
 * holds for the run, whoever found it. What is known is given back as it is where the other adds nothing.
 */
export function betterOf(known: CutPlan, fresh: CutPlan): CutPlan {
  const best = isBetter(fresh, known) ? fresh : known;
  const saving = leastCents(fresh) < leastCents(known) - sameCents ? fresh : known;
  if (best === known && saving === known && fresh.lowerBoundCents <= known.lowerBoundCents) return known;
  return bounded(beside(best, saving), Math.max(known.lowerBoundCents, fresh.lowerBoundCents));
}

/** A plan with another beside it that takes less metal, where it does. */
export const beside = (plan: CutPlan, saving: CutPlan): CutPlan => {
  const least = saving.least ?? leastOf(saving);
  return { ...plan, least: metalCents(least) < plan.costCents - sameCents ? least : null };
};

const leastOf = ({ groups, steps, workCents, remnantCents }: CutPlan): LeastMetal => ({
  sheets: groups.map(({ stockId, count, lengthMm, costCents }) => ({ stockId, count, lengthMm, costCents })),
  ...{ workCents, remnantCents },
  settings: settingsOf(steps),
  lineCuts: lineCuts(steps).pieces,
});

/** A plan with what is known of the least cost of stock. */
export function bounded(plan: CutPlan, lowerBoundCents: number): CutPlan {
  const least = leastCents(plan);
  const bound = Math.min(lowerBoundCents, least);
  return { ...plan, lowerBoundCents: bound, status: bound >= least - sameCents ? 'optimal' : 'feasible' };
}

const largestRemnant = (plan: CutPlan): number =>
  Math.max(
    0,
    ...plan.groups.flatMap((group) =>
      group.offcuts.map((cut) => (cut.kind === 'remnant' ? cut.w * cut.h : 0)),
    ),
  );
