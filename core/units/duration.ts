import { err, ok, issue, type Result } from '../result.ts';
import { seconds, type Seconds } from './brand.ts';
import { ambiguous, meanings, readingsOf, settle, writeNumber, type NumberStyle } from './number.ts';

/** Seconds. */
export const HOUR = 3600;
/** Seconds of a day of 24 hours; where the clocks are put forward or back a day of the shop has an hour less or more. */
export const DAY = 86_400;

const PER_UNIT: Readonly<Record<string, number>> = {
  h: HOUR,
  hr: HOUR,
  std: HOUR,
  min: 60,
  m: 60,
  s: 1,
  sec: 1,
};

/** Below this a duration is shown with its seconds, above it to the minute. */
const SHOWS_SECONDS_S = 600;

/**
 * A duration for people: "45 s", "2 min 30 s", "20 min", "1 h 20 min", "1132 h". From ten minutes up it is rounded to
 * the minute. A negative one (early, saved) has a minus sign in front.
 */
export function formatDuration(duration: number): string {
  const size = Math.abs(duration);
  const whole = size < SHOWS_SECONDS_S ? Math.round(size) : Math.round(size / 60) * 60;
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = whole % 60;
  const parts = [hours > 0 && `${hours} h`, minutes > 0 && `${minutes} min`, rest > 0 && `${rest} s`].filter(
    Boolean,
  );
  if (parts.length === 0) return '0 min';
  return `${duration < 0 ? '−' : ''}${parts.join(' ')}`;
}

/** From here on minutes do not matter any more. */
const WHOLE_HOURS_S = 100 * HOUR;

/** What hours added up over many lines or machines are rounded to: a minute, from a hundred hours up an hour. Seconds. */
export const shownUnit = (duration: number): number => {
  const size = Math.abs(duration);
  return size >= WHOLE_HOURS_S ? 3600 : size < SHOWS_SECONDS_S ? 1 : 60;
};

/** Hours added up over many lines or machines: as above, from a hundred hours up to the whole hour, "3426 h". */
export const formatHours = (duration: number): string =>
  formatDuration(Math.round(duration / shownUnit(duration)) * shownUnit(duration));

/** A duration of two days or more in days, "3 d"; a shorter one as above. */
export const shortDuration = (duration: number): string =>
  duration >= 2 * DAY ? `${Math.round(duration / DAY)} d` : formatDuration(duration);

const PART = /\s*([^a-z]+?)\s*(std|hr|h|min|m|sec|s)(?![a-z])\.?/gy;

/** "1 h 20 min" as figures with their units; empty where it is not only such. */
function partsOf(text: string): { readonly number: string; readonly unit: string }[] {
  const found = [...text.matchAll(PART)];
  const length = found.reduce((all, [part]) => all + part.length, 0);
  return length < text.length ? [] : found.map(([, number = '', unit = '']) => ({ number, unit }));
}

/**
 * Reads a duration as people write it: "1 h 20 min", "1:20" (hours and minutes), "1.5 h", "90 s"; a bare number is
 * minutes. Numbers by the rule of number.ts.
 * @returns whole seconds, 0 or more; or an issue that repeats the text, with its `meanings` where it can mean two
 */
export function parseDuration(text: string, style: NumberStyle): Result<Seconds> {
  const tidy = text.trim().toLowerCase();
  const [, clockHours, clockMinutes] = /^(\d{1,5}):([0-5]\d)$/.exec(tidy) ?? [];
  if (clockHours !== undefined) return ok(seconds(Number(clockHours) * 3600 + Number(clockMinutes) * 60));
  const parts = readingsOf(tidy).length > 0 ? [{ number: tidy, unit: 'min' }] : partsOf(tidy);
  let sum = 0;
  for (const { number, unit } of parts) {
    const left = settle(readingsOf(number), style);
    const [one] = left;
    if (one === undefined || /^[-−+]/.test(number)) return notADuration(text);
    const write = (value: number): string => `${writeNumber(value, style.decimals ?? 'point')} ${unit}`;
    if (left.length > 1) return ambiguous(number, 'duration', meanings(left, write), style);
    sum += one.value * PER_UNIT[unit]!;
  }
  return parts.length === 0 ? notADuration(text) : ok(seconds(Math.round(sum)));
}

const notADuration = (text: string): Result<never> =>
  err(
    issue(
      'duration',
      'duration',
      `“${text.trim()}” is not a duration.`,
      'Write it like 1 h 20 min, 1:20 or 45 s.',
    ),
  );
