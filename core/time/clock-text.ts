import { twoFigures } from './wall.ts';

/** A text without the time of day at its end, and that time, "14:00". */
export interface ClockRead {
  readonly rest: string;
  readonly clock: string | null;
}

/** What may stand between a date and its time. */
const BEFORE = String.raw`(?:^|[\s,]+(?:(?:at|um|a|a las|a la)\s+)?)`;
/** Seconds are read where they are nought. */
const NO_SECONDS = String.raw`(?::00(?:[.,]0+)?)?`;
/** 14:00, 14h30, 14 h 00, 14 Uhr, 14.30 Uhr */
const OF_24 = new RegExp(
  String.raw`${BEFORE}(\d{1,2})(?:(?::| ?h ?)(\d{2})${NO_SECONDS}(?: ?uhr)?| ?(?:h|uhr)|\.(\d{2}) ?uhr)$`,
);
/** 2 pm, 2:30 p.m. */
const OF_12 = new RegExp(String.raw`${BEFORE}(\d{1,2})(?:[:.](\d{2})${NO_SECONDS})? ?([ap])\.? ?m\.?$`);

/**
 * Takes the time of day off the end of a text in small letters, single spaces.
 * @returns null where something there looks like a time and is none: 25:00, 13 pm
 */
export function takeClock(text: string): ClockRead | null {
  const day = OF_24.exec(text);
  const half = OF_12.exec(text);
  const found = day ?? half;
  if (!found) return { rest: text, clock: null };
  const hours = Number(found[1]);
  const minutes = Number(found[2] ?? (day ? found[3] : undefined) ?? 0);
  const rest = text.slice(0, found.index);
  if (half && (hours < 1 || hours > 12)) return null;
  const hour = half ? (hours % 12) + (half[3] === 'p' ? 12 : 0) : hours;
  if (minutes > 59 || hour > 24 || (hour === 24 && minutes > 0)) return null;
  return { rest, clock: `${twoFigures(hour)}:${twoFigures(minutes)}` };
}
