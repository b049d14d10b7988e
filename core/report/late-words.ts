import type { PlanFigures } from '../planning/figures.ts';
import { formatDuration, shortDuration, shownUnit } from '../units/duration.ts';
import type { BecameLate } from '../planning/lateness.ts';

/** A line that ends at another time, as answers about the plan give it; seconds late. */
interface Shift {
  readonly job: string;
  readonly lateBefore: number;
  readonly lateAfter: number;
}

/** Of lines that end later, those that become late or later late, in the order given. */
export const lateOf = (shifts: readonly Shift[]): BecameLate[] =>
  shifts
    .filter(({ lateBefore, lateAfter }) => lateAfter > lateBefore)
    .map(({ job, lateBefore, lateAfter }) => ({ lineId: job, before: lateBefore, after: lateAfter }));

/** "1043/1 late by 2 h", or "later by" where it was late before. */
export const laterWords = ({ lineId, before, after }: BecameLate): string =>
  before > 0
    ? `${lineId} later by ${shortDuration(after - before)}`
    : `${lineId} late by ${shortDuration(after)}`;

/** "4101/1, 4102/1 and 3 more": the first few of a list by name. */
export function someOf(names: readonly string[], named: number, noun = ''): string {
  const shown = names.slice(0, named);
  const more = names.length - shown.length;
  if (more > 0) shown.push(`${more} more${noun && ` ${noun}`}`);
  return shown.length > 1 ? `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}` : (shown[0] ?? '');
}

/** What a change of the plan does to lines that wait, worst first, as a sentence: the first `named` by name. */
export function lateSentence(later: readonly BecameLate[], named = 2): string {
  if (later.length === 0) return 'Nothing becomes late.';
  const noun = later.length - named === 1 ? 'line later' : 'lines later';
  return `Makes ${someOf(later.map(laterWords), named, noun)}.`;
}

/** Lines that a change brings back in time, as a sentence; empty when there are none. */
export const savedSentence = (saved: readonly string[], named = 2): string =>
  saved.length === 0 ? '' : `${someOf(saved, named)} in time again.`;

/** How many end later and yet in time, as a sentence; empty when none do. */
export function delayedSentence(later: readonly Shift[]): string {
  const count = later.filter(({ lateAfter }) => lateAfter === 0).length;
  if (count === 0) return '';
  return count === 1
    ? '1 line ends later, still by its due date.'
    : `${count} lines end later, still by their due date.`;
}

type HoursLate = Pick<PlanFigures, 'tardiness' | 'overdue'>;

/** Hours late in two parts, each to the unit in which the whole is shown, so that they add up to it. Seconds. */
export function lateParts({ tardiness, overdue }: HoursLate): { overdue: number; rest: number } {
  const unit = shownUnit(tardiness);
  const toUnit = (duration: number): number => Math.round(duration / unit) * unit;
  return { overdue: toUnit(overdue), rest: toUnit(tardiness) - toUnit(overdue) };
}

/** What of the hours late no plan could have saved, as a sentence; empty when there is none. */
export function overdueSentence(late: HoursLate): string {
  const { overdue, rest } = lateParts(late);
  if (overdue === 0) return '';
  return `Of the hours late, ${formatDuration(overdue)} were already overdue when planned; the rest is ${formatDuration(rest)}.`;
}
