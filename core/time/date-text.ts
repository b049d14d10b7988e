import { err, issue, ok, type Meaning, type Result } from '../result.ts';
import { instant } from '../units/brand.ts';
import { takeClock } from './clock-text.ts';
import { monthNamed, weekdayNamed } from './date-words.ts';
import { formatWallDate, shiftDate, twoFigures, wallSeconds } from './wall.ts';

/**
 * Dates as people write them and as spreadsheets hold them. A text gives all days that it can mean; which number is
 * the month is never guessed.
 */

/** Day, month, year in the order in which they are written. */
export type DateOrder = 'dmy' | 'mdy' | 'ymd';

export interface DateReading {
  /** "2026-12-04" */
  readonly date: string;
  /** "14:00"; null: the text has no time of day. */
  readonly clock: string | null;
  /** The order in which the text means this day; null: it can be read in one order only, as 2026-12-04 or 4 Dec. */
  readonly order: DateOrder | null;
}

/** A shop plans in these years: between them an instant is in range in every time zone. */
const FIRST_YEAR = 2001;
const LAST_YEAR = 2098;

/** A year, month and day that a text can mean; `year` null: it names none. */
interface Day {
  readonly year: number | null;
  readonly month: number;
  readonly day: number;
  readonly order: DateOrder | null;
}

/** "2026-12-04"; null: there is no such day, or not in the years of a shop. */
function calendarDay(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  const exists = date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return exists && year >= FIRST_YEAR && year <= LAST_YEAR ? date.toISOString().slice(0, 10) : null;
}

/** How far behind and ahead of today a day without a year is looked for: together a year. */
const DAYS_BACK = 30;
const DAYS_AHEAD = 335;

/** The day without a year that is nearest ahead, or that has just been; null: there is none. */
function nearest(month: number, day: number, today: string): string | null {
  const year = Number(today.slice(0, 4));
  const [first, last] = [shiftDate(today, -DAYS_BACK), shiftDate(today, DAYS_AHEAD)];
  const days = [year - 1, year, year + 1].map((one) => calendarDay(one, month, day));
  return days.find((one) => one !== null && one >= first && one <= last) ?? null;
}

/** 26 is 2026. */
const fullYear = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text));

/** A year that a date of today's orders may have. */
const isNear = (year: number, today: string): boolean => Math.abs(year - Number(today.slice(0, 4))) <= 2;

const NUMBERS = /^(\d{1,2}) ?([./-]) ?(\d{1,2})(?: ?\2 ?(\d{4}|\d{2}))?$/;
/** "4.12." */
const TWO_NUMBERS_AND_DOT = /^\d{1,2}\. ?\d{1,2}\.$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;
const BASIC = /^(\d{4})(\d{2})(\d{2})$/;

/** Days of a text in numbers: 04.12.2026, 12/4/26, 2026-12-04, 20261204, 4.12. */
function numberDays(text: string, today: string): Day[] {
  const iso = YEAR_FIRST.exec(text);
  if (iso) return [{ year: Number(iso[1]), month: Number(iso[3]), day: Number(iso[4]), order: null }];
  const basic = BASIC.exec(text);
  if (basic) return [{ year: Number(basic[1]), month: Number(basic[2]), day: Number(basic[3]), order: null }];
  const [, a = '', mark, b = '', c] =
    NUMBERS.exec(TWO_NUMBERS_AND_DOT.test(text) ? text.slice(0, -1) : text) ?? [];
  if (mark === undefined) return [];
  const year = c === undefined ? null : fullYear(c);
  const days: Day[] = [
    { year, month: Number(b), day: Number(a), order: 'dmy' },
    { year, month: Number(a), day: Number(b), order: 'mdy' },
  ];
  // 26-12-04 and 26/12/04; with points nobody writes so, and far years would make three days of every date.
  const first = fullYear(a);
  if (mark !== '.' && a.length === 2 && c?.length === 2 && isNear(first, today))
    days.push({ year: first, month: Number(b), day: Number(c), order: 'ymd' });
  return days;
}

const SMALL_WORDS = ['de', 'del', 'of', 'the', 'le', 'den'];

/** Days of a text that names its month: 4 Dec, Dec 4, 2026, 4. Dezember 2026, 4-Dec-26, 2026 Dec 4. */
function namedDays(text: string): Day[] {
  const words = text
    .replace(/(?<=\d)(?:st|nd|rd|th|er|re|º)(?![a-z])/g, '')
    .split(/[\s,./-]+/)
    .filter((word) => word !== '' && !SMALL_WORDS.includes(word));
  const at = words.findIndex((word) => /^[a-z]/.test(word));
  const month = monthNamed(words[at] ?? '');
  const numbers = words.toSpliced(at, 1);
  if (month === null || !numbers.every((word) => /^(\d{1,2}|\d{4})$/.test(word)) || numbers.length > 2)
    return [];
  const [first = '', second] = numbers;
  const yearFirst = first.length === 4 && at === 1;
  const day = Number(yearFirst ? second : first);
  const year = yearFirst ? first : second;
  if (at > 1 || (yearFirst && second === undefined) || year?.length === 1) return [];
  return [{ year: year === undefined ? null : fullYear(year), month, day, order: null }];
}

/** "Dec 26" is the month of a year as often as a day of it, while that year is near. */
function canBeMonthOfYear(tidy: string, today: string): boolean {
  const [, word = '', number] = /^([a-z]+)\.?[ /-](\d{2})$/.exec(tidy) ?? [];
  return number !== undefined && monthNamed(word) !== null && isNear(fullYear(number), today);
}

/** Day 1 is 1 January 1900, and 1900 has a 29 February. Source: ECMA-376-1:2016, 18.17.4.1, the 1900 date base system. */
const SERIAL_ZERO = '1899-12-30';

/** A spreadsheet's count of days as five figures, perhaps with a part of a day. */
function serialReading(text: string): DateReading[] {
  const [, days, part] = /^(\d{5})(?:[.,](\d+))?$/.exec(text) ?? [];
  if (days === undefined) return [];
  const minutes = Math.round(Number(`0.${part ?? 0}`) * 1440);
  const date = shiftDate(SERIAL_ZERO, Number(days));
  const year = Number(date.slice(0, 4));
  if (minutes === 1440 || year < FIRST_YEAR || year > LAST_YEAR) return [];
  const clock =
    part === undefined ? null : `${twoFigures(Math.floor(minutes / 60))}:${twoFigures(minutes % 60)}`;
  return [{ date, clock, order: null }];
}

const weekdayOf = (date: string): number => new Date(`${date}T00:00:00Z`).getUTCDay() || 7;

/** In small letters without accents, single spaces; "T" between date and time is one. */
const tidied = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/(?<=\d)t(?=\d)/, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** No date is longer as a text. */
const MOST_CHARACTERS = 60;

/**
 * All days that a text can mean: 2026-12-04, 04.12.2026, 12/4/26, 4.12., 4 Dec, Dec 4, 2026, a weekday in front, a
 * spreadsheet's day number, each with or without a time. A date without a year is the one nearest ahead within some
 * eleven months, or at most thirty days back; a weekday that a day does not have rules it out.
 * @param today "2026-11-30"
 */
export function dateReadings(text: string, today: string): DateReading[] {
  if (text.length > MOST_CHARACTERS) return [];
  const tidy = tidied(text);
  const serial = serialReading(tidy);
  const taken = takeClock(tidy);
  if (serial.length > 0 || taken === null) return serial;
  const { rest, clock } = taken;
  const [, word = '', behind = ''] = /^([a-z]+)\.?,? (.+)$/.exec(rest) ?? [];
  const weekday = weekdayNamed(word);
  const read = (day: string, named: number | null): DateReading[] =>
    [...numberDays(day, today), ...namedDays(day)].flatMap(({ year, month, day: of, order }) => {
      const date = year === null ? nearest(month, of, today) : calendarDay(year, month, of);
      return date === null || (named !== null && weekdayOf(date) !== named) ? [] : [{ date, clock, order }];
    });
  return [
    ...(canBeMonthOfYear(rest, today) ? [] : read(rest, null)),
    ...(weekday === null ? [] : read(behind, weekday)),
  ];
}

/** The orders in which a text can be a day: of “25/12/2026” one, of “4/12/2026” two, of “4 Dec” none in particular. */
export const dateOrders = (text: string, today: string): DateOrder[] =>
  dateReadings(text, today).flatMap(({ order }) => order ?? []);

export interface DateStyle {
  /** The order of a file's column, by its other cells or by an answer; null: not known. */
  readonly order: DateOrder | null;
  /** "2026-11-30" */
  readonly today: string;
}

const LIKE = 'Write it like 2026-12-04 or 2026-12-04 14:00.';
const IN_WORDS = { dmy: 'the day', mdy: 'the month', ymd: 'the year' } as const;

/** "Fri 4 Dec 2026" @param date "2026-12-04" */
export const formatDay = (date: string): string =>
  `${formatWallDate(instant(wallSeconds(date, '00:00')), 'UTC')} ${date.slice(0, 4)}`;

/**
 * Reads a date, perhaps with a time, on the shop's wall clock.
 * @returns its day, and its time or null; or an issue, with its `meanings` where it can mean more than one day
 */
export function readDateText(
  text: string,
  { order, today }: DateStyle,
): Result<Pick<DateReading, 'date' | 'clock'>> {
  const all = dateReadings(text, today);
  const left = all.filter((one) => order === null || one.order === null || one.order === order);
  const refuse = (message: string): Result<never> => err(issue('date', 'date', message, LIKE));
  const [first] = left;
  if (first === undefined && order !== null && all.length > 0)
    return refuse(`“${text.trim()}” is no day where ${IN_WORDS[order]} comes first, as in this column.`);
  if (first === undefined && canBeMonthOfYear(tidied(text), today))
    return refuse(`The number of “${text.trim()}” can be a day or a year.`);
  if (first === undefined) return refuse(`“${text.trim()}” is no date from ${FIRST_YEAR} to ${LAST_YEAR}.`);
  if (left.every(({ date }) => date === first.date)) return ok({ date: first.date, clock: first.clock });
  const meanings = left.flatMap(({ date, order: when }): Meaning[] =>
    when === null ? [] : [{ when, means: formatDay(date) }],
  );
  const days = meanings.map(({ means }) => means).join(' or ');
  return err({ ...issue('date', 'date', `“${text.trim()}” can be ${days}.`, LIKE), meanings });
}
