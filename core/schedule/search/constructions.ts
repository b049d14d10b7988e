import { readQueues } from '../decode.ts';
import type { Problem, Queues } from '../problem.ts';
import { atcsRule, lookAhead } from '../rules/atcs.ts';
import { dispatchSteps, type Urgency } from '../rules/dispatch.ts';
import { dueDateRule } from '../rules/edd.ts';
import { familyRule } from '../rules/family.ts';
import { johnsonRule } from '../rules/johnson.ts';
import { objectiveAt, withFixedPositions, type NumberedQueues } from '../numbered-queues.ts';
import { orderOf, queuesInOrder } from './job-order.ts';
import { NEVER } from '../working-time.ts';

/** Scales of ATCS look-ahead tried: patience with slack and with changeovers. */
const SCALES = [
  { k1: 1, k2: 1 },
  { k1: 0.3, k2: 0.5 },
  { k1: 0.3, k2: 0.15 },
  { k1: 0.1, k2: 0.05 },
];

function* rules(problem: Problem): Generator<Urgency, void> {
  yield dueDateRule(problem);
  yield johnsonRule(problem);
  yield familyRule(problem);
  const ahead = lookAhead(problem);
  for (const scale of SCALES) yield atcsRule(problem, scale, ahead);
}

/**
 * The best so far of `start` (where complete, fixed operations put back) and the dispatch rules, after each of them and
 * every few milliseconds in between; the same queues until better ones are found, null while none fits.
 */
export function* constructions(problem: Problem, start?: Queues): Generator<NumberedQueues | null, void> {
  let best: NumberedQueues | null = null;
  let least = NEVER;
  const consider = (queues: NumberedQueues) => {
    const placed = problem.input.sameOrder
      ? queuesInOrder(problem, orderOf(problem, queues))
      : withFixedPositions(problem, queues);
    const objective = objectiveAt(problem, placed);
    if (objective < least) [best, least] = [placed, objective];
    return best;
  };
  const read = start && readQueues(problem, start);
  if (read?.ok) yield consider(read.value);
  for (const rule of rules(problem)) {
    const steps = dispatchSteps(problem, rule);
    for (let step = steps.next(); ; step = steps.next()) {
      yield step.done ? consider(step.value) : best;
      if (step.done) break;
    }
  }
}
