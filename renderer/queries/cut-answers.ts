import type { CutAnswers, CutsFound } from '../../core/contract/cuts.ts';

/** What is known after a push: the answers change only with a better one, so that nothing is planned again in vain. */
export function withCutState(known: CutAnswers, state: NonNullable<CutAnswers['state']>): CutAnswers {
  const { key, plan } = state;
  return { ...known, state, answers: plan ? withAnswer(known.answers, { key, plan }) : known.answers };
}

/** What was found for runs that nobody opened. */
export const withFound = (known: CutAnswers, { improving, answers }: CutsFound): CutAnswers => ({
  ...known,
  improving,
  answers: answers.reduce(withAnswer, known.answers),
});

type Answers = CutAnswers['answers'];

function withAnswer(answers: Answers, { key, plan }: Answers[number]): Answers {
  const before = answers.find((one) => one.key === key);
  const same =
    before?.plan.costCents === plan.costCents &&
    before.plan.lowerBoundCents === plan.lowerBoundCents &&
    before.plan.areas.scrap === plan.areas.scrap &&
    before.plan.steps.length === plan.steps.length;
  return same ? answers : [...answers.filter((one) => one.key !== key), { key, plan }];
}
