import type { Rng } from '../../../demo-data/make/rng.ts';
import type { DateStyle, Dialect, Language, LengthStyle, LengthUnit, NumberStyle } from './dialect.ts';
import { clock, type Day, type Meant, weekday } from './meant.ts';

/** What a writer puts into a cell: text; in a spreadsheet a number or a day too. */
export type Written =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'date'; readonly day: Day; readonly minutes: number };

export const text = (written: string): Written => ({ kind: 'text', text: written });

/** Thousands in groups of three, as far as this writer does so. */
const grouped = (digits: string, group: string): string =>
  digits.length < 4 ? digits : digits.replaceAll(/\B(?=(\d{3})+$)/g, group);

/** @param steps the figure without its decimal mark @param places how many of its digits are decimals */
export function writeFigure(steps: number, places: number, style: NumberStyle): string {
  const digits = String(steps).padStart(places + 1, '0');
  const whole = grouped(digits.slice(0, digits.length - places), style.group);
  const found = digits.slice(digits.length - places);
  const decimals = style.places === null ? found.replace(/0+$/, '') : found.padEnd(style.places, '0');
  return decimals === '' ? whole : `${whole}${style.decimal}${decimals}`;
}

const UNIT_MM: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
/** Decimals that are of use in a shop. */
const USUAL_PLACES: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 1, m: 3, in: 3, ft: 2 };

const placesOf = ({ unit, number }: LengthStyle): number =>
  Math.min(number.places ?? USUAL_PLACES[unit], USUAL_PLACES[unit]);

/** A length that this writer's way of writing can say exactly. */
export function drawLength(rng: Rng, style: LengthStyle): Meant {
  if (style.fractions !== 'none') {
    const sixteenths = rng.pick([16, 16, 8, 4, 2, 1]);
    const steps = rng.whole(Math.ceil(32 / sixteenths), Math.floor(3800 / sixteenths)) * sixteenths;
    return { steps, stepMm: 25.4 / 16 };
  }
  const unitMm = UNIT_MM[style.unit];
  const places = placesOf(style);
  const step = 10 ** (places - rng.pick([0, 0, Math.min(1, places), places]));
  const most = Math.floor((rng.chance(0.2) ? 900 : 6100) / (unitMm / 10 ** places) / step);
  return { steps: Math.max(1, rng.whole(Math.ceil(most / 40), most)) * step, stepMm: unitMm / 10 ** places };
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

const VULGAR: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/** "9 1/2", "9-1/2", "9½", "1/2". */
function writeSixteenths(steps: number, fractions: LengthStyle['fractions']): string {
  const [whole, over] = [Math.floor(steps / 16), steps % 16];
  if (over === 0) return String(whole);
  const common = divisor(over, 16);
  const fraction = `${over / common}/${16 / common}`;
  if (fractions === 'vulgar' && fraction in VULGAR) return `${whole === 0 ? '' : whole}${VULGAR[fraction]}`;
  return whole === 0 ? fraction : `${whole}${fractions === 'dash' ? '-' : ' '}${fraction}`;
}

/** 10' 6 1/2" or 10 ft 6 1/2 in */
function writeFeet(steps: number, { fractions, feet: form }: LengthStyle): string {
  const [whole, over] = [Math.floor(steps / 192), steps % 192];
  const [foot, inch] = form === 'marks' ? ["'", '"'] : [' ft', ' in'];
  const inches = `${writeSixteenths(over, fractions)}${inch}`;
  if (whole === 0) return inches;
  return over === 0 ? `${whole}${foot}` : `${whole}${foot}${fractions === 'dash' ? '-' : ' '}${inches}`;
}

export function writeLength(meant: Meant, style: LengthStyle, spreadsheet: boolean): Written {
  const cell = style.unitIn === 'cell';
  if (style.fractions !== 'none' && style.unit === 'ft') return text(writeFeet(meant.steps, style));
  if (style.fractions !== 'none')
    return text(writeSixteenths(meant.steps, style.fractions) + (cell ? style.mark : ''));
  if (spreadsheet && !cell) return { kind: 'number', value: meant.steps / 10 ** placesOf(style) };
  const figure = writeFigure(meant.steps, placesOf(style), style.number);
  return text((style.bareDecimals ? figure.replace(/^0(?=\D)/, '') : figure) + (cell ? style.mark : ''));
}

export const writeQuantity = (count: number, { quantity, pieces }: Dialect, spreadsheet: boolean): Written =>
  spreadsheet && pieces === ''
    ? { kind: 'number', value: count }
    : text(writeFigure(count, 0, quantity) + pieces);

const MONTHS: Readonly<
  Record<Language, { readonly long: readonly string[]; readonly short: readonly string[] }>
> = {
  en: {
    long: [
      'January',
      'February',
      'March',
      'April',
      'May',
      'June',
      'July',
      'August',
      'September',
      'October',
      'November',
      'December',
    ],
    short: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  },
  de: {
    long: [
      'Januar',
      'Februar',
      'März',
      'April',
      'Mai',
      'Juni',
      'Juli',
      'August',
      'September',
      'Oktober',
      'November',
      'Dezember',
    ],
    short: ['Jan.', 'Feb.', 'März', 'Apr.', 'Mai', 'Juni', 'Juli', 'Aug.', 'Sept.', 'Okt.', 'Nov.', 'Dez.'],
  },
  fr: {
    long: [
      'janvier',
      'février',
      'mars',
      'avril',
      'mai',
      'juin',
      'juillet',
      'août',
      'septembre',
      'octobre',
      'novembre',
      'décembre',
    ],
    short: [
      'janv.',
      'févr.',
      'mars',
      'avr.',
      'mai',
      'juin',
      'juil.',
      'août',
      'sept.',
      'oct.',
      'nov.',
      'déc.',
    ],
  },
};

const WEEKDAYS: Readonly<Record<Language, readonly string[]>> = {
  en: ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'],
  de: ['So', 'Mo', 'Di', 'Mi', 'Do', 'Fr', 'Sa'],
  fr: ['dim.', 'lun.', 'mar.', 'mer.', 'jeu.', 'ven.', 'sam.'],
};

/** Days since 30 December 1899, as spreadsheets count them; 4 December 2026 is 46360. */
export function serialOf(day: Day): number {
  const ms = Date.UTC(day.year, day.month - 1, day.day) - Date.UTC(1899, 11, 30);
  return Math.round(ms / 86_400_000);
}

const yearText = ({ year }: Day, digits: 4 | 2 | 0): string =>
  digits === 0 ? '' : String(year).slice(4 - digits);

function dayInFigures(
  day: Day,
  form: Extract<DateStyle['form'], { kind: 'figures' }>,
  digits: 4 | 2 | 0,
): string {
  const pad = (value: number): string => String(value).padStart(form.padded ? 2 : 1, '0');
  const named = { d: pad(day.day), m: pad(day.month), y: yearText(day, digits) };
  const parts = [...form.order]
    .map((letter) => named[letter as 'd' | 'm' | 'y'])
    .filter((part) => part !== '');
  // Where points are used, a day without its year ends in one: "4.12."
  return parts.join(form.mark) + (digits === 0 && form.mark === '.' ? '.' : '');
}

function dayInWords(
  day: Day,
  form: Extract<DateStyle['form'], { kind: 'words' }>,
  style: DateStyle,
  language: Language,
): string {
  const month = MONTHS[language][form.long ? 'long' : 'short'][day.month - 1]!;
  const year = yearText(day, style.year);
  if (form.order === 'mdy') return `${month} ${day.day}${year === '' ? '' : `, ${year}`}`;
  return `${day.day}${language === 'de' ? '.' : ''} ${month}${year === '' ? '' : ` ${year}`}`;
}

function writeTime(minutes: number, time: DateStyle['time']): string {
  const [hour, minute] = [Math.floor(minutes / 60), minutes % 60];
  if (time === 'none') return '';
  if (time === 'T') return `T${clock(minutes)}`;
  if (time === 'h') return ` ${hour}h${String(minute).padStart(2, '0')}`;
  if (time === '24') return ` ${clock(minutes)}`;
  const past = minute === 0 ? '' : `:${String(minute).padStart(2, '0')}`;
  return ` ${hour % 12 === 0 ? 12 : hour % 12}${past} ${hour < 12 ? 'am' : 'pm'}`;
}

/** @param minutes after midnight; null: the writer names no time */
export function writeDate(
  day: Day,
  minutes: number | null,
  { due: style, language, quantity: { decimal } }: Dialect,
  spreadsheet: boolean,
): Written {
  const { form } = style;
  if (form.kind === 'typed') return { kind: 'date', day, minutes: minutes ?? 0 };
  if (form.kind === 'serial') {
    const serial = serialOf(day) + (minutes ?? 0) / 1440;
    return spreadsheet
      ? { kind: 'number', value: serial }
      : text(String(Math.round(serial * 1e5) / 1e5).replace('.', decimal));
  }
  const written =
    form.kind === 'figures' ? dayInFigures(day, form, style.year) : dayInWords(day, form, style, language);
  const named = style.weekday ? `${WEEKDAYS[language][weekday(day)]!}${language === 'de' ? ',' : ''} ` : '';
  return text(named + written + (minutes === null ? '' : writeTime(minutes, style.time)));
}
