import { lateSentence, savedSentence } from './late-words.ts';
import { becameLater, type LineLateness } from '../planning/lateness.ts';
import { counted } from '../units/count.ts';
import { shortDuration } from '../units/duration.ts';

/** The three plans after a trouble, as the dialog names them. */
export const repairPlans = {
  kept: {
    title: 'Keep the order, shift the times',
    how: 'Nothing moves; everything waits its turn.',
  },
  few: {
    title: 'Few moves',
    how: 'The moves that gain most, counted against the order before the trouble; no more than you allow.',
  },
  best: {
    title: 'Best plan',
    how: 'Everything may move that is not started, frozen or pinned, where that gains by your priorities.',
  },
} as const;

/** What a plan means after a trouble, in words: every field a sentence. */
export interface RepairWords {
  /** How many lines are late, beside how many were before. */
  readonly late: string;
  /** Who becomes late or later by the trouble. */
  readonly others: string;
  /** Who is in time that keeping the order would have late; empty when nobody is. */
  readonly saved: string;
  /** How many operations stand elsewhere than before the trouble. */
  readonly moved: string;
  /** How many lines end at another time than before the trouble, and by how much together. */
  readonly shifted: string;
}

/**
 * @param before lateness of every line before the trouble
 * @param kept the same when the order is kept and only the times shift
 * @param after the same in the plan that is told of
 * @param moved operations that stand elsewhere in it
 */
export function repairWords(
  before: readonly LineLateness[],
  kept: readonly LineLateness[],
  after: readonly LineLateness[],
  moved: number,
): RepairWords {
  const lateIn = (rows: readonly LineLateness[]) =>
    rows.filter((row) => row.lateness > 0).map((row) => row.lineId);
  const [was, now] = [lateIn(before).length, lateIn(after)];
  const saved = lateIn(kept).filter((id) => !now.includes(id));
  return {
    late: `${counted(now.length, 'line is', 'lines are')} late; ${was} ${was === 1 ? 'was' : 'were'} before.`,
    others: lateSentence(becameLater(before, after), 3),
    saved: savedSentence(saved, 3),
    moved: moved === 0 ? 'No operation moves.' : `${counted(moved, 'operation moves', 'operations move')}.`,
    shifted: shiftedSentence(before, after),
  };
}

function shiftedSentence(before: readonly LineLateness[], after: readonly LineLateness[]): string {
  const ends = new Map(before.map(({ lineId, end }) => [lineId, end]));
  const shifts = after
    .map(({ lineId, end }) => Math.abs(end - (ends.get(lineId) ?? end)))
    .filter((by) => by > 0);
  if (shifts.length === 0) return 'Every line ends when it did before.';
  const sum = shortDuration(shifts.reduce((all, by) => all + by, 0));
  return `${counted(shifts.length, 'line ends', 'lines end')} at another time than before, ${sum} in all.`;
}
