import { formatDayAndClock } from '../time/wall.ts';
import type { Promised } from '../planning/answers.ts';
import { shortDuration } from '../units/duration.ts';
import { lateOf, lateSentence } from './late-words.ts';

/** What can be promised for one line, in words. */
interface PromiseWords {
  /** When it is ready without making anything late, or why there is no such date. */
  readonly ready: string;
  /** Said when the due date typed is earlier than that; else empty. */
  readonly tooEarly: string;
  /** Earlier ends, soonest first, and what each would cost. */
  readonly earlier: readonly string[];
  /** The date to promise, to the whole minute; null when there is none. */
  readonly date: number | null;
}

/** @param due the due date typed so far; null: none yet */
export function promiseWords(
  { safe, earlier, message }: Promised,
  due: number | null,
  timeZone: string,
): PromiseWords {
  const date = safe && Math.ceil(safe.end / 60) * 60;
  const costs = earlier.map(
    ({ end, makesLate }) => `${formatDayAndClock(end, timeZone)}: ${costOf(lateSentence(lateOf(makesLate)))}`,
  );
  return {
    ready: message ?? readyWords(date, timeZone),
    tooEarly:
      date !== null && due !== null && due < date
        ? `The due date is ${shortDuration(date - due)} before that: this line or another would be late.`
        : '',
    earlier: costs,
    date,
  };
}

const readyWords = (date: number | null, timeZone: string): string =>
  date === null
    ? 'Wherever it goes, something else becomes late.'
    : `Ready ${formatDayAndClock(date, timeZone)} without making anything late.`;

/** Inside a sentence that begins with a date. */
const costOf = (sentence: string): string => sentence.charAt(0).toLowerCase() + sentence.slice(1);
