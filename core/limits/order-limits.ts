import type { Machine } from '../shop/machine.ts';
import { bendOrder, orderOfPart, type BendOrder } from '../part/bend-order.ts';
import { found, type Asked, type Found } from './finding.ts';
import { times } from '../units/count.ts';

const moves = ({ flips, turns }: BendOrder): number => flips + turns;

/** Whether the part can be bent among the tools in the order the shop gives, or in any; and how often it is turned for it. */
export function orderLimits({ part }: Asked, machine: Machine): Found[] {
  const order = orderOfPart(part, machine.dieOpeningMm);
  const best = bendOrder(part.profile, machine.dieOpeningMm);
  const all: Found[] = [];
  const first = order.steps.find((step) => step.collides);
  if (first)
    all.push(
      found(
        'bend order, collision',
        best.collisions === 0
          ? `In the order given, the piece runs into the tools of ${machine.name} at “${first.step}”.`
          : `In every order, the piece runs into usual tools on ${machine.name}; in the one shown at “${first.step}”.`,
        best.collisions === 0
          ? 'Use the order that Foldweek finds, or prove yours on a test piece.'
          : 'Look for a deeper gooseneck, a narrower die or a folder, and prove it on a test piece.',
      ),
    );
  if (order.collisions <= best.collisions && moves(order) > moves(best))
    all.push(
      found(
        'bend order, handling',
        `The order given turns each piece ${times(moves(order))}; there is one that turns it ${times(moves(best))}.`,
        'Use the order that Foldweek finds, unless there is a reason for yours.',
      ),
    );
  return all;
}
