import type { CutAnswers } from '../../core/contract/cuts.ts';

/** What is known after a push: the answers change only with a better one, so that nothing is planned again in vain. */
export function withCutState(known: CutAnswers, state: NonNullable<CutAnswers['state']>): CutAnswers {
  const { key, plan } = state;
  const before = known.answers.find((one) => one.key === key);
  const same =
    plan === null ||
    (before?.plan.costCents === plan.costCents &&
      before.plan.lowerBoundCents === plan.lowerBoundCents &&
      before.plan.areas.scrap === plan.areas.scrap &&
      before.plan.steps.length === plan.steps.length);
  if (same) return { ...known, state };
  return { state, answers: [...known.answers.filter((one) => one.key !== key), { key, plan }] };
}
