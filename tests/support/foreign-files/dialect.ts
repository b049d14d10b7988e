import type { Rng } from '../../../demo-data/make/rng.ts';

/** How one writer writes: drawn once a file, then kept to. */

export type Locale = 'en-US' | 'en-GB' | 'de-DE' | 'de-CH' | 'fr-FR' | 'fr-CA';
export const LOCALES: readonly Locale[] = ['en-US', 'en-GB', 'de-DE', 'de-CH', 'fr-FR', 'fr-CA'];
export type Language = 'en' | 'de' | 'fr';

export interface NumberStyle {
  readonly decimal: '.' | ',';
  /** Between groups of three; '' where this writer does not group. */
  readonly group: string;
  /** Decimals always written; null: as many as needed. */
  readonly places: number | null;
}

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';
export interface LengthStyle {
  readonly unit: LengthUnit;
  /** Where the unit stands. In `none` the shop's own unit is meant. */
  readonly unitIn: 'heading' | 'cell' | 'none';
  /** How the cell's unit is written, with the gap before it. */
  readonly mark: string;
  /** 9 1/2, 9-1/2, 9½. */
  readonly fractions: 'none' | 'space' | 'dash' | 'vulgar';
  /** Feet and inches in one cell: 10' 6 1/2" or 10 ft 6 1/2 in. */
  readonly feet: 'marks' | 'words';
  /** .5 for 0.5 */
  readonly bareDecimals: boolean;
  readonly number: NumberStyle;
}

export type DateForm =
  | {
      readonly kind: 'figures';
      readonly order: 'dmy' | 'mdy' | 'ymd';
      readonly mark: string;
      readonly padded: boolean;
    }
  | { readonly kind: 'words'; readonly order: 'dmy' | 'mdy'; readonly long: boolean }
  | { readonly kind: 'serial' }
  | { readonly kind: 'typed' };
export interface DateStyle {
  readonly form: DateForm;
  readonly year: 4 | 2 | 0;
  readonly weekday: boolean;
  readonly time: 'none' | '24' | 'T' | 'h' | 'pm';
}

export interface Dialect {
  readonly locale: Locale;
  readonly language: Language;
  /** A spreadsheet keeps numbers and dates as such; in a text file all is text. */
  readonly spreadsheet: boolean;
  readonly separator: ',' | ';' | '\t';
  /** What all lines of an order share stands in its first row only. */
  readonly sparse: boolean;
  /** Cells have gaps around what they say. */
  readonly padded: boolean;
  /** What stands behind the pieces: " pcs" or nothing. */
  readonly pieces: string;
  /** A separator behind the last cell of each row as well. */
  readonly trailing: boolean;
  /** The first line names the separator, for spreadsheet programs. */
  readonly named: boolean;
  readonly encoding: 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'windows-1252';
  readonly quantity: NumberStyle;
  readonly length: LengthStyle;
  /** The shop's own label, or the thickness itself. */
  readonly thickness: 'label' | 'mm in heading';
  readonly due: DateStyle;
}

const MARKS: Readonly<Record<Locale, { readonly decimal: '.' | ','; readonly groups: readonly string[] }>> = {
  'en-US': { decimal: '.', groups: [','] },
  'en-GB': { decimal: '.', groups: [','] },
  'de-DE': { decimal: ',', groups: ['.'] },
  'de-CH': { decimal: '.', groups: ['’', "'"] },
  'fr-FR': { decimal: ',', groups: ['\u202f', '\u00a0', ' '] },
  'fr-CA': { decimal: ',', groups: ['\u00a0', ' '] },
};

export const languageOf = (locale: Locale): Language => locale.slice(0, 2) as Language;

/** @param places how many decimals this kind of column may be given always */
function numberStyle(rng: Rng, locale: Locale, places: readonly (number | null)[]): NumberStyle {
  const { decimal, groups } = MARKS[locale];
  return { decimal, group: rng.chance(0.5) ? rng.pick(groups) : '', places: rng.pick(places) };
}

const UNITS: Readonly<Record<Locale, readonly (readonly [LengthUnit, number])[]>> = {
  'en-US': [
    ['in', 6],
    ['ft', 3],
    ['mm', 1],
  ],
  'en-GB': [
    ['mm', 6],
    ['m', 3],
    ['cm', 1],
    ['in', 1],
  ],
  'de-DE': [
    ['mm', 6],
    ['m', 3],
    ['cm', 2],
  ],
  'de-CH': [
    ['mm', 6],
    ['m', 3],
    ['cm', 1],
  ],
  'fr-FR': [
    ['mm', 6],
    ['m', 3],
    ['cm', 1],
  ],
  'fr-CA': [
    ['mm', 4],
    ['m', 2],
    ['in', 2],
    ['ft', 1],
  ],
};

const CELL_MARKS: Readonly<Record<LengthUnit, readonly string[]>> = {
  mm: [' mm', 'mm', ' MM'],
  cm: [' cm', 'cm'],
  m: [' m', 'm'],
  in: [' in', '"', ' in.', '”', ' inch', '″'],
  ft: [' ft', "'", ' ft.', '’', ' feet', '′'],
};

/** @param shopUnit what a figure without a unit means */
function lengthStyle(rng: Rng, locale: Locale, shopUnit: 'in' | 'mm'): LengthStyle {
  const unitIn = rng.pick(['heading', 'cell', 'none'] as const);
  const unit = unitIn === 'none' ? shopUnit : rng.weighted(UNITS[locale]);
  const american = unit === 'in' || (unit === 'ft' && unitIn === 'cell');
  return {
    unit,
    unitIn,
    mark: rng.pick(CELL_MARKS[unit]),
    fractions: american && rng.chance(0.6) ? rng.pick(['space', 'dash', 'vulgar'] as const) : 'none',
    feet: rng.chance(0.7) ? 'marks' : 'words',
    bareDecimals: unit === 'in' && rng.chance(0.3),
    number: numberStyle(
      rng,
      locale,
      unit === 'm' ? [null, 2, 3] : unit === 'ft' ? [null, 2] : [null, null, 0, 1, 2, 3],
    ),
  };
}

const FIGURES: Readonly<Record<Locale, readonly (readonly ['dmy' | 'mdy' | 'ymd', string])[]>> = {
  'en-US': [
    ['mdy', '/'],
    ['mdy', '/'],
    ['mdy', '-'],
  ],
  'en-GB': [
    ['dmy', '/'],
    ['dmy', '/'],
    ['dmy', '-'],
    ['dmy', '.'],
  ],
  'de-DE': [
    ['dmy', '.'],
    ['dmy', '.'],
    ['dmy', '/'],
  ],
  'de-CH': [['dmy', '.']],
  'fr-FR': [
    ['dmy', '/'],
    ['dmy', '/'],
    ['dmy', '.'],
    ['dmy', '-'],
  ],
  'fr-CA': [
    ['ymd', '-'],
    ['dmy', '/'],
    ['ymd', '/'],
  ],
};

function dateForm(rng: Rng, locale: Locale, spreadsheet: boolean): DateForm {
  if (spreadsheet && rng.chance(0.7)) return { kind: 'typed' };
  const kind = rng.weighted([
    ['figures', 6],
    ['iso', 2],
    ['words', 2],
    ['serial', 1],
  ] as const);
  if (kind === 'serial') return { kind };
  if (kind === 'iso') return { kind: 'figures', order: 'ymd', mark: '-', padded: true };
  if (kind === 'words')
    return {
      kind,
      order: locale === 'en-US' ? rng.pick(['mdy', 'dmy'] as const) : 'dmy',
      long: rng.chance(0.4),
    };
  const [order, mark] = rng.pick(FIGURES[locale]);
  return { kind: 'figures', order, mark, padded: rng.chance(0.6) };
}

const TIMES: Readonly<Record<Language, readonly DateStyle['time'][]>> = {
  en: ['24', 'T', 'pm'],
  de: ['24', 'T'],
  fr: ['24', 'T', 'h'],
};

function dateStyle(rng: Rng, locale: Locale, spreadsheet: boolean): DateStyle {
  const form = dateForm(rng, locale, spreadsheet);
  const asText = form.kind === 'figures' || form.kind === 'words';
  const yearFirst = form.kind === 'figures' && form.order === 'ymd';
  const time = rng.chance(0.7) ? 'none' : rng.pick(TIMES[languageOf(locale)]);
  return {
    form,
    // Two digits before month and day are rare, and the more misleading.
    year: yearFirst ? (rng.chance(0.95) ? 4 : 2) : rng.pick([4, 4, 4, 4, 4, 4, 2, 2, 2, 0] as const),
    weekday: asText && rng.chance(0.1),
    time: time === 'T' && !yearFirst ? '24' : time,
  };
}

const PIECES: Readonly<Record<Language, readonly string[]>> = {
  en: [' pcs', ' ea'],
  de: [' Stk', ' St.'],
  fr: [' pcs', ' p.'],
};

/** @param shopUnit the unit that the shop counts in */
export function drawDialect(rng: Rng, shopUnit: 'in' | 'mm'): Dialect {
  const locale = rng.pick(LOCALES);
  const spreadsheet = rng.chance(0.3);
  const { decimal } = MARKS[locale];
  return {
    locale,
    language: languageOf(locale),
    spreadsheet,
    sparse: rng.chance(0.15),
    padded: rng.chance(0.1),
    pieces: rng.chance(0.95) ? '' : rng.pick(PIECES[languageOf(locale)]),
    separator:
      decimal === ',' ? rng.pick([';', ';', '\t', ','] as const) : rng.pick([',', ',', ';', '\t'] as const),
    trailing: rng.chance(0.1),
    named: !spreadsheet && rng.chance(0.05),
    encoding: rng.pick(['utf-8', 'utf-8-bom', 'utf-16le', 'windows-1252'] as const),
    quantity: numberStyle(rng, locale, [null, null, null, 0, 2, 3]),
    length: lengthStyle(rng, locale, shopUnit),
    thickness: rng.chance(0.8) ? 'label' : 'mm in heading',
    due: dateStyle(rng, locale, spreadsheet),
  };
}
