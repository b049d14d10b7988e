import type { MoveEvaluator } from '../move-evaluator.ts';
import type { SearchContext } from './search-context.ts';

/** One kind of move over the machines' queues. All random numbers are drawn by `propose`; the other two only follow from it. */
interface MoveKind<Proposal> {
  /** What to try, drawn at random; null where there is nothing of this kind to try. */
  readonly propose: (context: SearchContext) => Proposal | null;
  /** May it be done? Fixed operations stay, every operation comes to an eligible machine, and the order changes. */
  readonly valid: (context: SearchContext, proposal: Proposal) => boolean;
  /** Makes the shifts. */
  readonly apply: (context: SearchContext, proposal: Proposal) => void;
}

/** Applies a move of one kind, drawn at random. @returns false when it left the queues as they were */
export type Move = (context: SearchContext) => boolean;

export const moveOf =
  <Proposal>({ propose, valid, apply }: MoveKind<Proposal>): Move =>
  (context) => {
    const proposal = propose(context);
    if (proposal === null || !valid(context, proposal)) return false;
    apply(context, proposal);
    return true;
  };

/**
 * What the move just applied gains: the objective before it less the objective after it, over all terms and all that it
 * delays or advances on other machines. Below 0 it makes the plan worse. Every kind of move is judged here, by timing
 * the changed queues (`MoveEvaluator`): no kind has a formula of its own that could disagree with the plan.
 *
 * Worked out by hand: one machine, no changeovers, weights 1. Queue A (30 s, due 100), B (20 s, due 100), C (10 s,
 * due 20). The ends are 30, 50, 60: C is 40 s late, the objective is 40. C moved to the front: ends C 10, A 40, B 60,
 * nothing late, objective 0. The gain is 40 − 0 = 40.
 * @param atLeast a smaller gain is not wanted: then it may stop early and say −Infinity
 */
export const gain = (evaluator: MoveEvaluator, atLeast: number): number => -evaluator.evaluate(-atLeast);
