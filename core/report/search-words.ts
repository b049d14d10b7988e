import type { PlanGist } from '../planning/figures.ts';
import { formatHours, shownUnit } from '../units/duration.ts';

/**
 * What one plan gains on another, as the end of a sentence: "7 fewer late lines, 135 h less late, 12 h less
 * changeover". What got worse is said as `more`, what stayed the same is not said; empty when all of it did.
 */
export function gainWords(before: PlanGist, after: PlanGist): string {
  const lines = after.lateLines - before.lateLines;
  const time = (from: number, to: number, what: string): string | false => {
    const gain = shownDifference(from, to);
    return Math.round(gain) !== 0 && `${formatHours(Math.abs(gain))} ${gain < 0 ? 'less' : 'more'} ${what}`;
  };
  return [
    lines !== 0 &&
      `${Math.abs(lines)} ${lines < 0 ? 'fewer' : 'more'} late ${Math.abs(lines) === 1 ? 'line' : 'lines'}`,
    time(before.lateSeconds, after.lateSeconds, 'late'),
    time(before.changeoverSeconds, after.changeoverSeconds, 'changeover'),
  ]
    .filter(Boolean)
    .join(', ');
}

/** The difference of two durations as they are shown, so that it agrees with them; the exact one where both show the same. */
function shownDifference(from: number, to: number): number {
  const unit = shownUnit(Math.max(from, to));
  const shown = (Math.round(to / unit) - Math.round(from / unit)) * unit;
  return shown === 0 ? to - from : shown;
}

/** "9 of 10" for 0.9, "19 of 20" for 0.95: how many lines are aimed at, in the smallest round number that says it. */
export function linesOf(share: number): string {
  const of = [10, 20].find((count) => Math.abs(share * count - Math.round(share * count)) < 1e-9) ?? 100;
  return `${Math.round(share * of)} of ${of}`;
}

/** "aiming for 9 of 10 lines on time". @param share of lines, 0 to 1 */
export const aimWords = (share: number): string => `aiming for ${linesOf(share)} lines on time`;
