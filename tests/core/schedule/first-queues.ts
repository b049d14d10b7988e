import type { Problem } from '../../../core/schedule/problem.ts';
import { constructions } from '../../../core/schedule/search/constructions.ts';
import type { NumberedQueues } from '../../../core/schedule/numbered-queues.ts';

/** What the search begins from: the best of the dispatch rules; null when none fits. */
export const firstQueues = (problem: Problem): NumberedQueues | null =>
  [...constructions(problem)].at(-1) ?? null;
