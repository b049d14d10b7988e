import { formatDayAndClock } from '../time/wall.ts';
import { promiseAt, type Chances } from '../learn/chance.ts';
import { sentence } from '../result.ts';

/** A date that is kept with a wished confidence, in words. */
export interface SafeDate {
  readonly words: string;
  /** To the whole minute; null when there is none, and the words say why. */
  readonly date: number | null;
}

/**
 * A date that can be promised for a line in the plan with a wished confidence, or why there is none.
 * @param confidence above 0, below 1
 */
export function safeDateWords(
  chances: Chances,
  lineId: string,
  confidence: number,
  timeZone: string,
): SafeDate {
  const end = promiseAt(chances, lineId, confidence);
  if (!end.ok) return { words: sentence(end.issues), date: null };
  const date = Math.ceil(end.value / 60) * 60;
  return {
    words: `Ready by ${formatDayAndClock(date, timeZone)} in ${Math.round(confidence * 100)} of 100 such plans, as your finished work shows.`,
    date,
  };
}
