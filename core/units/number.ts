import { err, issue, ok, type Meaning, type Result } from '../result.ts';

/**
 * One rule for every number that a person types or a file holds. A text gives all readings that it can have; what can
 * mean two numbers is never guessed. The style is handed in: nothing here asks the system how it writes numbers.
 */

/** What stands before the decimals. */
export type DecimalMark = 'point' | 'comma';

export interface NumberStyle {
  /** Of a shop: how it writes decimals. Of a file's column: what is known of it; null: nothing yet. */
  readonly decimals: DecimalMark | null;
  /**
   * The mark is certain for each number (a file's column, by its other cells or by an answer), so that “1,234” is one
   * number too. In a field the shop's mark says only what the app itself wrote there.
   */
  readonly settled?: boolean;
}

export interface NumberReading {
  readonly value: number;
  /** The decimal mark of one who writes so: seen, or the other one's is used for groups; null: it could be either. */
  readonly mark: DecimalMark | null;
  /** Thousands stand in groups. */
  readonly grouped: boolean;
  /** How many decimals are written. */
  readonly places: number;
}

const MARKS = { point: '.', comma: ',' } as const;
/** Spaces of all widths that group digits, and both apostrophes. */
const EITHER_GROUPS = [' ', '\u00a0', '\u202f', '\u2009', "'", '’'] as const;
/** Up to here every whole number is one of its own. */
const MOST_DIGITS = 15;

/** The digits of a whole part whose thousands `group` separates regularly; null where they are not so. */
function ungrouped(whole: string, group: string): string | null {
  const [first = '', ...rest] = whole.split(group);
  const regular =
    /^[1-9]\d{0,2}$/.test(first) && rest.length > 0 && rest.every((three) => /^\d{3}$/.test(three));
  return regular ? first + rest.join('') : null;
}

/** @param whole without its sign @param mark that of the text, null: it has no decimals */
function partsOf(whole: string, fraction: string, mark: DecimalMark | null): NumberReading[] {
  const readings: NumberReading[] = [];
  const add = (digits: string | null, of: DecimalMark | null, grouped: boolean): void => {
    if (digits === null || digits.length > MOST_DIGITS) return;
    readings.push({
      value: Number(`${digits || '0'}.${fraction || '0'}`),
      mark: of,
      grouped,
      places: fraction.length,
    });
  };
  if (/^\d+$/.test(whole) || (whole === '' && fraction !== '')) add(whole, mark, false);
  if (mark !== 'point') add(ungrouped(whole, '.'), 'comma', true);
  if (mark !== 'comma') add(ungrouped(whole, ','), 'point', true);
  for (const group of EITHER_GROUPS) add(ungrouped(whole, group), mark, true);
  return readings;
}

/**
 * All readings of a text as one number: an optional sign, digits, at most one decimal mark, thousands in groups of
 * three by points, commas, spaces or apostrophes where the grouping is regular. “0,6” has one, “1,234” has two (1234
 * and 1.234), “1e3”, “12,34,567” and “1..2” have none.
 */
export function readingsOf(text: string): NumberReading[] {
  const [, sign, body = ''] = /^([-−+]?)\s*([\d.,'’ \u00a0\u202f\u2009]+)$/.exec(text.trim()) ?? [];
  const readings = partsOf(body, '', null);
  for (const mark of ['point', 'comma'] as const) {
    const [whole = '', fraction, more] = body.split(MARKS[mark]);
    if (fraction !== undefined && more === undefined && /^\d*$/.test(fraction))
      readings.push(...partsOf(whole, fraction, mark));
  }
  return sign === '-' || sign === '−' ? readings.map((one) => ({ ...one, value: 0 - one.value })) : readings;
}

/** How figures of any kind are written. A shop's settings are one. */
export interface Decimals {
  readonly decimals: DecimalMark;
}

/** A text with points before its decimals, and no groups, in a shop's own mark. */
const withMark = (text: string, decimals: DecimalMark): string => text.replace('.', MARKS[decimals]);

/** A number with all its places: "2.50", in a shop that writes commas "2,50". */
export const writeFixed = (value: number, places: number, { decimals }: Decimals): string =>
  withMark(value.toFixed(places), decimals);

/** A share of one: "12.5 %". */
export const formatPercent = (share: number, style: Decimals, places = 1): string =>
  `${writeFixed(100 * share, places, style)} %`;

/** A number as it is typed or written, ungrouped, its last zeros left out: "1234.5", in a shop that writes commas "1234,5". */
export function writeNumber(value: number, decimals: DecimalMark, places = 6): string {
  const text = value.toFixed(places);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return withMark(short === '-0' ? '0' : short, decimals);
}

/**
 * The readings that a style leaves: all where they agree, else those in the style's mark. In a field (not settled)
 * that holds only where the text has the mark itself before its decimals, as the app writes it.
 */
export function settle<T extends Pick<NumberReading, 'value' | 'mark' | 'grouped'>>(
  readings: readonly T[],
  { decimals, settled = false }: NumberStyle,
): readonly T[] {
  if (new Set(readings.map(({ value }) => value)).size <= 1) return readings.slice(0, 1);
  const own = readings.filter(({ mark, grouped }) => mark === decimals && (settled || !grouped));
  return own.length === 1 ? own : readings;
}

/** What a text can mean, for the one who says which: a mark, and the number that it gives. */
export const meanings = (
  readings: readonly Pick<NumberReading, 'value' | 'mark'>[],
  write: (value: number) => string,
): Meaning[] =>
  readings.flatMap(({ value, mark }) => (mark === null ? [] : [{ when: mark, means: write(value) }]));

/** The refusal of a text that can mean two numbers. @param what names the field */
export function ambiguous(
  text: string,
  field: string,
  found: readonly Meaning[],
  { decimals }: NumberStyle,
): Result<never> {
  const both = found.map(({ means }) => means).join(' or ');
  const advice =
    decimals === null ? 'Say whether its decimals stand behind a point or a comma.' : `Write ${both}.`;
  return err({ ...issue(field, field, `“${text.trim()}” can be ${both}.`, advice), meanings: found });
}

/** How a style writes in sentences; a point where it is not known. */
const markOf = ({ decimals }: NumberStyle): DecimalMark => decimals ?? 'point';

export interface NumberLimits {
  readonly min?: number;
  readonly max?: number;
}

/** "The quantity" or "It"; "the quantity" or "it". */
const named = (what: string, capital = false): string =>
  what === '' ? (capital ? 'It' : 'it') : `${capital ? 'The' : 'the'} ${what}`;

const refused = (what: string, message: string, advice = ''): Result<never> =>
  err(issue(what || 'number', what || 'number', message, advice));

function within(value: number, what: string, style: NumberStyle, { min, max }: NumberLimits): Result<number> {
  const write = (limit: number): string => writeNumber(limit, markOf(style));
  const not = (limit: string): Result<never> =>
    refused(what, `${named(what, true)} must be ${limit}, not ${write(value)}.`);
  if (min !== undefined && value < min) return not(`at least ${write(min)}`);
  if (max !== undefined && value > max) return not(`at most ${write(max)}`);
  return ok(value);
}

const notANumber = (text: string, what: string, example: string): Result<never> =>
  refused(
    what,
    text.trim() === '' ? 'A number is needed here.' : `“${text.trim()}” is not a number.`,
    `Write ${named(what)} like ${example}.`,
  );

/**
 * Reads a number as people write it.
 * @param what the field's name in a sentence, "importance"; empty where the sentence stands under its field
 * @returns the number; or an issue, with its `meanings` where the text can mean two
 */
export function readNumber(
  text: string,
  style: NumberStyle,
  what = '',
  limits: NumberLimits = {},
): Result<number> {
  const left = settle(readingsOf(text), style);
  const write = (value: number): string => writeNumber(value, markOf(style));
  if (left.length === 0) return notANumber(text, what, write(2.5));
  if (left.length > 1) return ambiguous(text, what || 'number', meanings(left, write), style);
  return within(left[0]!.value, what, style, limits);
}

/**
 * Reads a whole number as people write it: “2,500” is 2500, since 2.5 is not whole; “2.000” can be 2000 or 2 and is
 * refused, as is “2,500” where a comma stands before the decimals.
 * @param what as for `readNumber`, "quantity"
 */
export function readWhole(
  text: string,
  style: NumberStyle,
  what = '',
  limits: NumberLimits = {},
): Result<number> {
  const readings = readingsOf(text);
  const write = (value: number): string => writeNumber(value, markOf(style));
  if (readings.length === 0) return notANumber(text, what, '40');
  const own = settle(readings, style);
  const whole = (own.length === 1 ? own : readings).filter(({ value }) => Number.isInteger(value));
  const [first, second] = whole;
  if (first === undefined)
    return refused(
      what,
      `${named(what, true)} must be a whole number, not ${text.trim()}.`,
      `Write ${named(what)} like 40.`,
    );
  if (second !== undefined && second.value !== first.value)
    return ambiguous(text, what || 'number', meanings(whole, write), style);
  return within(first.value, what, style, limits);
}
