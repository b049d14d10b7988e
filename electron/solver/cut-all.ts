import { constants, setPriority } from 'node:os';
import type { CutAnswer } from '../../core/cutting/answer.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { improveRun } from '../../core/cutting/plan-run.ts';
import { rememberRuns } from '../../core/cutting/remember.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import { cutRuns, planQuickly, type RunCut } from '../../core/planning/cut-run.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { ok, type Result } from '../../core/result.ts';
import { instant } from '../../core/units/brand.ts';
import { valueOf } from '../refused.ts';
import { mipWith, type Highs } from './highs.ts';
import type { CutAll, TaskOf } from './messages.ts';

/**
 * Works on every run of the plan that is not proven best and was not worked on to its end, each for a short time. A run
 * takes what those before it leave, so after each the runs behind it are looked at anew.
 */
export function* cutAll(
  { shop, now, known, secondsEach }: TaskOf<'cutAll'>,
  highs: Highs,
  secondsLeft: () => number,
): Generator<CutAll> {
  // Whoever sits at the machine comes first.
  setPriority(constants.priority.PRIORITY_LOW);
  const view = valueOf(viewPlan(shop, instant(now)));
  const answers = new Map(known.map((answer) => [answer.key, answer]));
  const quickly = rememberRuns(planQuickly);
  const solve = (input: RunInput): Result<CutPlan> => {
    const made = quickly(input);
    const answer = answers.get(runKey(input));
    return made.ok && answer ? ok(betterOf(made.value, answer.plan)) : made;
  };
  const done: CutAnswer[] = [];
  const told = (): CutAll & { readonly next: RunInput | undefined } => {
    const cuts = [...cutRuns(shop, view, solve)];
    const open = cuts.filter((cut) => isOpen(cut) && !answers.get(runKey(cut.input))?.settled);
    const keys = cuts.map(({ input }) => runKey(input));
    return { answers: [...done], keys, left: open.length, next: open[0]?.input };
  };
  for (let found = told(); ; found = told()) {
    const { next, ...best } = found;
    yield best;
    if (!next) return;
    const endsAt = performance.now() + secondsEach * 1000;
    const left = () => Math.min(secondsLeft(), (endsAt - performance.now()) / 1000);
    for (const plan of improved(next, highs, left)) {
      keep(next, plan, false);
      yield best;
      if (left() <= 0) break;
    }
    done.push(keep(next, valueOf(solve(next)), true));
  }

  function keep(input: RunInput, plan: CutPlan, settled: boolean): CutAnswer {
    const key = runKey(input);
    const before = answers.get(key);
    const answer = { key, plan: before ? betterOf(before.plan, plan) : plan, settled };
    answers.set(key, answer);
    return answer;
  }
}

/** Sheets that may be better still, and are not what a person made of them or were issued already. */
const isOpen = ({ plan, changed, taken }: RunCut): boolean =>
  plan.ok && plan.value.status !== 'optimal' && changed === null && taken === null;

function* improved(input: RunInput, highs: Highs, secondsLeft: () => number): Generator<CutPlan> {
  const improving = improveRun(input, { solveMip: mipWith(highs, secondsLeft) });
  if (!improving.ok) return;
  for (;;) {
    const step = improving.value.next();
    const plan = step.done ? step.value : step.value.plan && ok(step.value.plan);
    if (plan?.ok) yield plan.value;
    if (step.done || step.value.done) return;
  }
}
