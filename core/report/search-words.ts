import type { PlanGist } from '../planning/figures.ts';
import { formatHours } from '../units/duration.ts';

/**
 * What one plan gains on another, as the end of a sentence: "7 fewer late lines, 135 h less late, 12 h less
 * changeover". What got worse is said as `more`, what stayed the same is not said; empty when all of it did.
 */
export function gainWords(before: PlanGist, after: PlanGist): string {
  const lines = after.lateLines - before.lateLines;
  const time = (seconds: number, what: string): string | false =>
    Math.round(seconds) !== 0 && `${formatHours(Math.abs(seconds))} ${seconds < 0 ? 'less' : 'more'} ${what}`;
  return [
    lines !== 0 &&
      `${Math.abs(lines)} ${lines < 0 ? 'fewer' : 'more'} late ${Math.abs(lines) === 1 ? 'line' : 'lines'}`,
    time(after.lateSeconds - before.lateSeconds, 'late'),
    time(after.changeoverSeconds - before.changeoverSeconds, 'changeover'),
  ]
    .filter(Boolean)
    .join(', ');
}

/** "9 of 10" for 0.9, "19 of 20" for 0.95: how many lines are aimed at, in the smallest round number that says it. */
export function linesOf(share: number): string {
  const of = [10, 20].find((count) => Math.abs(share * count - Math.round(share * count)) < 1e-9) ?? 100;
  return `${Math.round(share * of)} of ${of}`;
}

/** "aiming for 9 of 10 lines on time". @param share of lines, 0 to 1 */
export const aimWords = (share: number): string => `aiming for ${linesOf(share)} lines on time`;
