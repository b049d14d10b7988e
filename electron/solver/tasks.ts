import type { SolveMip } from '../../core/cutting/mip.ts';
import { improveRun } from '../../core/cutting/plan-run.ts';
import { pulledIn } from '../../core/learn/pulled-in.ts';
import type { Promised } from '../../core/planning/answers.ts';
import { worthyJoins } from '../../core/planning/join-search.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import { promisesOf } from '../../core/report/promises.ts';
import { whyOf } from '../../core/report/why.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { improve } from '../../core/schedule/improve.ts';
import type { Problem } from '../../core/schedule/problem.ts';
import { repair } from '../../core/schedule/repair.ts';
import { replanRush } from '../../core/schedule/rush.ts';
import { withoutTimes } from '../../core/schedule/what-if/without-times.ts';
import { instant } from '../../core/units/brand.ts';
import { valueOf } from '../refused.ts';
import { cutAll } from './cut-all.ts';
import { loadHighs, mipWith } from './highs.ts';
import { knownSpread } from './known-spread.ts';
import type { Found, Plan, Task, TaskOf } from './messages.ts';

const spreadOf = knownSpread();

/**
 * The work of a task, step by step: what is the best so far after each. It stops where the caller stops asking.
 * @param secondsLeft how long a single step may still take
 * @throws Refused, here or in a step, when the task cannot be done
 */
export async function stepsOf(task: Task, secondsLeft: () => number): Promise<Iterable<Found>> {
  switch (task.kind) {
    case 'search':
      return search(task);
    case 'rush':
      return answers(valueOf(rushOf(task)), withoutTimes);
    case 'repair':
      return answers(valueOf(repair(problemOf(task), task.queues, task)), ({ few, best }) => ({
        few: withoutTimes(few),
        best: withoutTimes(best),
      }));
    case 'cut':
      return cut(task, mipWith(await loadHighs(), secondsLeft));
    case 'cutAll':
      return uncounted(cutAll(task, await loadHighs(), secondsLeft));
    case 'join':
      return uncounted(
        worthyJoins(task.shop, valueOf(toSearchProblem(task.shop, instant(task.now))), task.queues),
      );
    case 'why':
      return uncounted([valueOf(whyOf(task.shop, task.lineId, instant(task.now)))]);
    case 'promise':
      return promise(task);
    case 'protect':
      return uncounted([protect(task)]);
  }
}

const rushOf = (task: TaskOf<'rush'>) =>
  replanRush(problemOf(task), task.queues, task.jobs, {
    seed: task.seed,
    asPlanned: valueOf(buildProblem(task.asPlanned)),
  });

const problemOf = ({ problem }: TaskOf<'search' | 'rush' | 'repair'>): Problem =>
  valueOf(buildProblem(problem));

function* search(task: TaskOf<'search'>): Generator<Found<'search'>> {
  let best: Plan | null = null;
  for (const found of improve(problemOf(task), { seed: task.seed, start: task.queues })) {
    const { step, evaluations, bound, objective, queues } = found;
    if (best === null || objective < best.objective) best = { queues, objective };
    yield { best, counts: { step, evaluations, bound } };
  }
}

function* cut({ input }: TaskOf<'cut'>, solveMip: SolveMip): Generator<Found<'cut'>> {
  const improving = valueOf(improveRun(input, { solveMip }));
  for (;;) {
    const step = improving.next();
    yield { best: step.done ? valueOf(step.value) : step.value.plan, counts: null };
    if (step.done || step.value.done) return;
  }
}

function protect({ shop, records, confidence, now }: TaskOf<'protect'>) {
  return valueOf(pulledIn(shop, valueOf(spreadOf(shop, records)), confidence, instant(now)));
}

function* promise({ shop, order, lines, now }: TaskOf<'promise'>): Generator<Found<'promise'>> {
  const told: Promised[] = [];
  for (const line of valueOf(promisesOf(shop, order, lines, instant(now)))) {
    told.push(line);
    yield { best: { lines: told }, counts: null };
  }
}

function* uncounted<T extends Found['best']>(answers: Iterable<T>): Generator<{ best: T; counts: null }> {
  for (const best of answers) yield { best, counts: null };
}

/** Answers as they are sent, without their times. The same answer stays the same object, so that it is sent once. */
function* answers<T extends object, B extends Found['best']>(
  found: Iterable<T>,
  sent: (answer: T) => B,
): Generator<{ best: B; counts: null }> {
  let of: T | null = null;
  let best: B | null = null;
  for (const answer of found) {
    if (best === null || answer !== of) best = sent(answer);
    of = answer;
    yield { best, counts: null };
  }
}
