import { expect, it } from 'vitest';
import { improve } from '../../../core/schedule/improve.ts';
import { dueDateRule } from '../../../core/schedule/rules/edd.ts';
import { dispatchSteps } from '../../../core/schedule/rules/dispatch.ts';
import { YieldBudget } from '../../../core/schedule/search/yield-budget.ts';
import { inventedWeek } from '../../bench/week.ts';
import { built } from './exact.ts';

/** Operations looked at or timed that take some ten milliseconds; five times that must still be soon enough for a stop. */
const SOON = 250_000;

it('a search yields first after little work, then after more and more, never after more than takes ten milliseconds', () => {
  const budget = new YieldBudget();
  const yields: number[] = [];
  for (let work = 0; work < 3_000_000; work += 10) if (budget.isDue(work)) yields.push(work);
  const stretches = yields.slice(1).map((at, k) => at - yields[k]!);
  expect(yields[0]).toBe(3_000);
  expect(stretches.every((stretch, k) => stretch >= (stretches[k - 1] ?? 0))).toBe(true);
  expect(stretches.at(-1)).toBe(120_000);
});

it('a dispatch rule yields in the middle of a large plan, and gives the same plan', () => {
  const problem = built(inventedWeek(1500, 1));
  const rule = dueDateRule(problem);
  let evaluated = 0;
  const steps = dispatchSteps(problem, (...choice) => {
    evaluated += 1;
    return rule(...choice);
  });
  const stretches: number[] = [];
  for (let step = steps.next(); ; step = steps.next(), evaluated = 0) {
    stretches.push(evaluated);
    if (!step.done) continue;
    expect(step.value.flat()).toHaveLength(problem.operations);
    break;
  }
  expect(stretches.length).toBeGreaterThan(3);
  expect(Math.max(...stretches)).toBeLessThanOrEqual(SOON + problem.operations);
});

it('a search for one job order on all machines yields while its first plan is still made', () => {
  const week = inventedWeek(60, 1);
  const problem = built({
    ...week,
    sameOrder: true,
    machines: week.machines.filter(({ id }) => id === 'S1' || id === 'B1'),
  });
  let yields = 0;
  for (const { step, evaluations } of improve(problem, { seed: 1 })) {
    if (evaluations > 0) break;
    if (step > 0) yields += 1;
  }
  expect(yields).toBeGreaterThan(10);
});
