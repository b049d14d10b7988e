import { LONGEST } from '../fields.ts';
import { MOST } from '../input-limits.ts';
import { toInstant } from '../time/wall.ts';
import type { Instant } from '../units/brand.ts';
import { parseLength, type LengthUnits } from '../units/length.ts';
import type { Material } from '../material/material.ts';
import { sentence } from '../result.ts';

/** One cell read, or the sentences that say what is wrong with it and what to write. */
export type Cell<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string };

const read = <T>(value: T): Cell<T> => ({ ok: true, value });
const wrong = (reason: string): Cell<never> => ({ ok: false, reason });

/** A rule for a cell that is no note: what is far too long is not looked at, nor repeated. @param what names it in the sentence */
export const short =
  <T>(what: string, rule: (text: string) => Cell<T>) =>
  (text: string): Cell<T> =>
    text.length > MOST.shortCellCharacters
      ? wrong(
          `The ${what} is ${text.length} characters long; at most ${MOST.shortCellCharacters} can be read.`,
        )
      : rule(text);

/** A whole number such as 40 or 1,200. @param what names it in the sentence */
export function readCount(text: string, what: string, max: number, min = 1): Cell<number> {
  const plain = /^-?\d{1,3}(?:,\d{3})+$/.test(text) ? text.replaceAll(',', '') : text;
  const value = Number(withPoint(plain));
  if (plain === '' || !Number.isFinite(value))
    return wrong(`“${text}” is not a number. Write the ${what} like 40.`);
  if (!Number.isInteger(value)) return wrong(`The ${what} must be a whole number, not ${text}.`);
  if (value < min) return wrong(`The ${what} must be at least ${min}, not ${text}.`);
  if (value > max) return wrong(`The ${what} must be at most ${max.toLocaleString('en-US')}, not ${text}.`);
  return read(value);
}

/** A work order's importance. */
export function readImportance(text: string): Cell<number> {
  const value = Number(withPoint(text));
  return Number.isFinite(value) && value >= 0.1 && value <= 10
    ? read(value)
    : wrong(`“${text}” is no importance. Write a number from 0.1 to 10; 1 is usual.`);
}

/** A piece length as people write it, in the shop's units unless it names its own. */
export function readLength(text: string, units: LengthUnits): Cell<number> {
  const length = parseLength(text, { units, decimals: null });
  if (!length.ok) return wrong(sentence(length.issues));
  if (length.value > 0 && length.value <= 50_000) return read(length.value);
  return wrong(`A length must be above 0 and at most ${LONGEST[units]}, not ${text}.`);
}

/** A comma before one, two, or more than three digits is a decimal comma; before three it groups thousands. */
const withPoint = (text: string): string =>
  /^\d+,\d+$/.test(text) && !/^\d{1,3},\d{3}$/.test(text) ? text.replace(',', '.') : text;

const YES = ['yes', 'y', 'true', '1', 'x', 'rush'];
const NO = ['no', 'n', 'false', '0', '-'];

export function readYesNo(text: string): Cell<boolean> {
  const plain = text.toLowerCase();
  if (YES.includes(plain)) return read(true);
  return NO.includes(plain)
    ? read(false)
    : wrong(`“${text}” is neither yes nor no. Write yes, no, or leave it empty.`);
}

/** A date without a time ends here for a due date: after the day's work in most shops. Common practice, no source. */
export const DUE_CLOCK = '17:00';

const LIKE = 'Write it like 2026-12-04 or 2026-12-04 14:00.';

/**
 * A date, perhaps with a time, on the shop's wall clock. Year first; other orders only where they can mean one day.
 * @param clock the time of a date that has none
 */
export function readInstant(text: string, clock: string, timeZone: string): Cell<Instant> {
  const [, day = '', time = clock] = /^(\S+?)(?:[T\s]+(\d{1,2}:\d{2})(?::00)?)?$/.exec(text) ?? [];
  const date = readDate(day);
  if (!date.ok) return date;
  const padded = time.padStart(5, '0');
  if (!/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/.test(padded))
    return wrong(`“${time}” is not a time of day. ${LIKE}`);
  return read(toInstant(date.value, padded, timeZone));
}

function readDate(text: string): Cell<string> {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (iso) return calendarDate(text, Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const other = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(text);
  if (!other) return wrong(`“${text}” is not a date. ${LIKE}`);
  const [first, second, year] = [Number(other[1]), Number(other[2]), Number(other[3])];
  if (first <= 12 && second <= 12 && first !== second)
    return wrong(`“${text}” can mean two days: which number is the month is not clear. ${LIKE}`);
  return first > 12 ? calendarDate(text, year, second, first) : calendarDate(text, year, first, second);
}

function calendarDate(text: string, year: number, month: number, day: number): Cell<string> {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day)
    return wrong(`There is no day “${text}”. ${LIKE}`);
  if (year < 2001 || year > 2098) return wrong(`The year of “${text}” is out of range. ${LIKE}`);
  return read(date.toISOString().slice(0, 10));
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** The row that a cell names, by id or by name, whatever the case. */
export function findNamed<T extends Named>(
  rows: readonly T[],
  text: string,
  what: keyof typeof TAB,
): Cell<T> {
  const plain = text.toLowerCase();
  const found =
    rows.find((row) => row.id === text) ??
    rows.find((row) => row.id.toLowerCase() === plain) ??
    rows.find((row) => row.name.toLowerCase() === plain);
  return found ? read(found) : wrong(`There is no ${what} “${text}”. ${suggest(nearest(plain, rows), what)}`);
}

const suggest = (ids: readonly string[], what: keyof typeof TAB): string =>
  ids.length === 0
    ? `Add it in Shop, ${TAB[what]}.`
    : `The nearest are ${ids.join(', ')}; or add it in Shop, ${TAB[what]}.`;

/** Where a shop enters them. */
const TAB = { part: 'Parts', material: 'Materials', colour: 'Colours', machine: 'Machines' } as const;

/** The three ids whose id or name is fewest keystrokes away. */
const nearest = (text: string, rows: readonly Named[]): string[] =>
  rows
    .map(({ id, name }) => ({
      id,
      far: Math.min(keystrokes(text, id.toLowerCase()), keystrokes(text, name.toLowerCase())),
    }))
    .sort((a, b) => a.far - b.far || (a.id < b.id ? -1 : 1))
    .slice(0, 3)
    .map(({ id }) => id);

/** Letters to add, drop or change to get from one word to the other. Levenshtein, Soviet Physics Doklady 10(8), 1966. */
function keystrokes(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/** The gauge label that a cell means: "24", "#24", "24 ga", and ".040" for a sheet program's "0.04". */
export function findGauge(material: Material | null, text: string): Cell<string> {
  const plain = text.replace(/^#/, '').replace(/\s*(?:gauge|ga)\.?$/i, '');
  // Its material is refused already; the gauge is looked up once that is fixed.
  if (!material) return read(plain);
  const labels = material.gauges.map((gauge) => gauge.label);
  const found =
    labels.find((label) => label === plain) ??
    labels.find((label) => label.includes('.') && Number(label) === Number(withPoint(plain)));
  return found === undefined
    ? wrong(`${material.name} has no gauge “${text}”. It has ${labels.join(', ')}.`)
    : read(found);
}
