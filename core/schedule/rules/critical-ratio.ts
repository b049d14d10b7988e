import type { Problem } from '../problem.ts';
import type { Urgency } from './dispatch.ts';
import { remainingSeconds } from './remaining.ts';

/**
 * Smallest critical ratio first: time left until due over work left, at the instant of the choice; below 1 is behind.
 * Source: operations-management textbooks, e.g. Heizer and Render, "short-term scheduling" (from memory).
 */
export function criticalRatioRule(problem: Problem): Urgency {
  const remaining = remainingSeconds(problem);
  return (o, _machine, _changeover, at) => -(problem.due[problem.jobOf[o]!]! - at) / remaining[o]!;
}
