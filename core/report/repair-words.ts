import { lateSentence, savedSentence } from './late-words.ts';
import { becameLater, type LineLateness } from '../planning/lateness.ts';
import { counted } from '../units/count.ts';

/** The plan kept in order after a trouble, and the one that was fixed, as the dialog names them. */
export const repairPlans = {
  published: {
    title: 'Keep the order, shift the times',
    how: 'Nothing moves; everything waits its turn.',
  },
  repair: {
    title: 'Most stable repair',
    how: 'An operation moves only where that gains more than the stability it costs, by your priorities.',
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
  readonly moved: string;
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
  };
}
