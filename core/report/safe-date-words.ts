import { promiseAt, type Chances } from '../schedule/chance.ts';
import { sentence } from '../shop/result.ts';
import { dayAndClock } from './rush-words.ts';

/**
 * A date that can be promised for a line in the plan with a wished confidence, or why there is none.
 * @param confidence above 0, below 1
 */
export function safeDateWords(
  chances: Chances,
  lineId: string,
  confidence: number,
  timeZone: string,
): string {
  const end = promiseAt(chances, lineId, confidence);
  if (!end.ok) return sentence(end.problems);
  const date = dayAndClock(Math.ceil(end.value / 60) * 60, timeZone);
  return `Ready by ${date} in ${Math.round(confidence * 100)} of 100 such plans, as your finished work shows.`;
}
