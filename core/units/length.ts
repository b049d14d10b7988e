import { err, ok, issue, type Result } from '../result.ts';
import { mm, type Millimetres } from './brand.ts';
import {
  ambiguous,
  meanings,
  readingsOf,
  settle,
  writeFixed,
  writeNumber,
  type Decimals,
  type NumberReading,
  type NumberStyle,
} from './number.ts';

/** Exact by definition (international inch, 1959). */
export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 304.8;

export type LengthUnits = 'in' | 'mm';

/** How lengths, weights and forces are written: the unit of lengths, and the mark before decimals. A shop's settings are one. */
export interface Units extends Decimals {
  readonly units: LengthUnits;
}

/** Of settings only that, where it is kept or sent with something else. */
export const unitsOf = ({ units, decimals }: Units): Units => ({ units, decimals });

/** Inches as millimetres. */
export const inchesToMm = (value: number): Millimetres => mm(value * MM_PER_INCH);
/** Millimetres as inches. */
export const mmToInches = (value: number): number => value / MM_PER_INCH;

/** What a bare figure can be in: the shop's units, or what a file's heading names. */
export type LengthUnit = LengthUnits | 'cm' | 'm' | 'ft';

/** How lengths are written where a text stands; a unit in the text wins over `units`. */
export interface LengthStyle extends NumberStyle {
  readonly units: LengthUnit;
}

const MM_PER: Readonly<Record<LengthUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_FOOT,
};

/** Words for the units in English, German (Zoll) and French (pouces, pieds); common practice, no source. */
const UNIT_WORDS: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  zoll: 'in',
  po: 'in',
  pouce: 'in',
  pouces: 'in',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  "'": 'ft',
  pi: 'ft',
  pied: 'ft',
  pieds: 'ft',
};

/** The unit that a word or a sign names, "mm", "Zoll"; null: none. For headings such as "Länge (mm)". */
export const unitNamed = (word: string): LengthUnit | null =>
  UNIT_WORDS[word.trim().toLowerCase().replace(/\.$/, '')] ?? null;

const words = (of: (unit: LengthUnit) => boolean): string =>
  Object.keys(UNIT_WORDS)
    .filter((word) => of(UNIT_WORDS[word]!))
    .toSorted((a, b) => b.length - a.length)
    .join('|');
const ONE = new RegExp(String.raw`^(.*?\S)\s*(${words(() => true)})?\.?$`);
const FEET_AND_INCHES = new RegExp(
  String.raw`^(.*?\S)\s*(?:${words((unit) => unit === 'ft')})\.?\s*-?\s*(\d.*?)\s*(?:${words((unit) => unit === 'in')})?\.?$`,
);
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** The readings of "9", "9.5", "9 1/2", "9-1/2" or "1/2", 0 or more; none where a fraction divides by nought. */
function figures(text: string): NumberReading[] {
  const [, whole, top, bottom] = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(text) ?? [];
  if (top === undefined || bottom === undefined)
    return readingsOf(text).filter(({ value }) => value >= 0 && !/^[-−+]/.test(text));
  const value = Number(whole ?? 0) + Number(top) / Number(bottom);
  return Number.isFinite(value) ? [{ value, mark: null, grouped: false, places: 0 }] : [];
}

/** A reading in millimetres, and its figure with the unit as it is said. */
interface LengthReading extends NumberReading {
  readonly figure: number;
  readonly unit: LengthUnit;
}

/** No length is longer as a text. */
const MOST_CHARACTERS = 60;

/** All lengths that a text can mean; a bare figure is in `units`. */
function lengthReadings(tidy: string, units: LengthUnit): LengthReading[] {
  if (tidy.length > MOST_CHARACTERS) return [];
  const [, number = '', word] = ONE.exec(tidy) ?? [];
  const unit = word === undefined ? units : UNIT_WORDS[word]!;
  const one = figures(number).map((read) => ({
    ...read,
    value: read.value * MM_PER[unit],
    figure: read.value,
    unit,
  }));
  if (one.length > 0) return one;
  const [, feet = '', inches = ''] = FEET_AND_INCHES.exec(tidy) ?? [];
  return figures(feet).flatMap((foot) =>
    figures(inches)
      .filter((inch) => inch.value < 12)
      .map((inch) => {
        const value = foot.value * MM_PER_FOOT + inch.value * MM_PER_INCH;
        return { ...inch, value, figure: mmToInches(mm(value)), unit: 'in' as const };
      }),
  );
}

/** What to write instead, in the units of the shop or of the column. */
const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  in: '9 1/2 or 10 ft',
  ft: '10 or 120 in',
  mm: '240 or 24 cm',
  cm: '24 or 240 mm',
  m: '3 or 3000 mm',
};

/**
 * Reads a length as people write it: 9 1/2, 9-1/2", 9.5 in, 10 ft, 10' 6", 240 mm, 24 cm, 1,234.5; numbers by the rule
 * of number.ts.
 * @returns millimetres, 0 or more; or an issue that repeats the text, with its `meanings` where it can mean two
 */
export function parseLength(text: string, style: LengthStyle): Result<Millimetres> {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (fraction) => ` ${VULGAR[fraction]}`)
    .replaceAll('⁄', '/')
    .replace(/[”″“]|''|’’|′′/g, '"')
    .replace(/[’′]/g, "'")
    .trim();
  const readings = lengthReadings(tidy, style.units);
  const left = settle(readings, style);
  if (left.length === 1) return ok(mm(left[0]!.value));
  if (left.length > 1) {
    const { unit } = left[0]!;
    const found = left.map(({ figure, mark }) => ({ value: figure, mark }));
    const write = (figure: number): string => `${writeNumber(figure, style.decimals ?? 'point')} ${unit}`;
    return ambiguous(text, 'length', meanings(found, write), style);
  }
  return err(
    issue('length', 'length', `“${text}” is not a length.`, `Write it like ${EXAMPLES[style.units]}.`),
  );
}

/** A typed length is a fraction only where the decimal would say the same: to half a thousandth of an inch. */
const TYPED_TOLERANCE_IN = 0.0005;
/** Cuts are planned to the hundredth of a millimetre (core/cutting/run.ts): what is finer must not show as another size. */
const CUT_STEP_MM = 0.01;
/**
 * A cut length is a fraction only where that is the same to the last place of the decimal. Off by up to 1/128 in, as a
 * tape is read, six strips of a sheet and its remnant would no longer add up to the sheet.
 */
const CUT_TOLERANCE_IN = 0.001;

/** @param write where no fraction is near enough */
function formatInches(
  inches: number,
  fraction: number,
  tolerance: number,
  write: (inches: number) => string,
): string {
  const parts = Math.round(inches * fraction);
  if (Math.abs(inches - parts / fraction) > tolerance) return write(inches);
  const whole = Math.floor(parts / fraction);
  let top = parts - whole * fraction;
  let bottom = fraction;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

const format = (
  lengthMm: number,
  { units, decimals }: Units,
  fraction: number,
  tolerance: number,
): string => {
  if (units === 'mm') return `${writeNumber(lengthMm, decimals, 1)} mm`;
  const text = formatInches(mmToInches(Math.abs(lengthMm)), fraction, tolerance, (inches) =>
    writeNumber(inches, decimals, 3),
  );
  return `${lengthMm < 0 ? '-' : ''}${text} in`;
};

/**
 * A length as it was typed or is compared with a limit, unit included: "9 1/2 in", "0.057 in", "240.5 mm". Inches are a
 * fraction of 1/16 (or `fraction`) where that is the same to 0.0005 in, else a decimal to 0.001; millimetres are to 0.1.
 * The mark is the shop's, "6,927 in". What is cut is written by `formatCutLength`.
 */
export const formatLength = (
  lengthMm: number,
  units: Units,
  { fraction = 16 }: { readonly fraction?: 16 | 32 | 64 } = {},
): string => format(lengthMm, units, fraction, TYPED_TOLERANCE_IN);

/**
 * A length that is cut: of a blank, a piece, a sheet, a remnant, a setting of the back gauge. One size has one figure
 * wherever it stands, on screens, on paper and in files: "9 1/2 in", "6.927 in", "240.5 mm". Inches are a fraction of
 * 1/16 where that is the same to 0.001 in, else a decimal to 0.001; millimetres are to 0.1.
 */
export const formatCutLength = (lengthMm: number, units: Units): string =>
  format(Math.round(lengthMm / CUT_STEP_MM) * CUT_STEP_MM, units, 16, CUT_TOLERANCE_IN);

/** "9 1/2 in × 120 in": girth or width first, then length. */
export const formatCutSize = (widthMm: number, lengthMm: number, units: Units): string =>
  `${formatCutLength(widthMm, units)} × ${formatCutLength(lengthMm, units)}`;

/** Places of the decimals in which lengths are added up: a sixteenth of an inch is exact in four. */
const SUM_PLACES = { in: 4, mm: 2 } as const;

/**
 * Parts and their sum as decimals that add up as shown, for a table that someone adds up: each part is rounded so that
 * the sum of those before it stays within half a last place of the true one.
 */
export function formatSum(
  partsMm: readonly number[],
  units: Units,
): { readonly parts: readonly string[]; readonly sum: string } {
  const scale = 10 ** SUM_PLACES[units.units];
  const inUnits = (lengthMm: number): number =>
    Math.round((units.units === 'in' ? mmToInches(lengthMm) : lengthMm) * scale);
  const write = (steps: number): string =>
    `${steps < 0 ? '−' : ''}${writeFixed(Math.abs(steps) / scale, SUM_PLACES[units.units], units)} ${units.units}`;
  let reached = 0;
  let shown = 0;
  const parts = partsMm.map((part) => {
    reached += part;
    const step = inUnits(reached) - shown;
    shown += step;
    return write(step);
  });
  return { parts, sum: write(shown) };
}

/** A sheet's thickness, finer than any length: "0.0276 in", "0.70 mm". */
export const formatThickness = (thicknessMm: number, units: Units): string =>
  units.units === 'in'
    ? `${writeFixed(mmToInches(thicknessMm), 4, units)} in`
    : `${writeFixed(thicknessMm, 2, units)} mm`;
