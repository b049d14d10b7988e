import { bad, good, problem, type Result } from '../result.ts';
import { mm, type Millimetres } from './brand.ts';

/** Exact by definition (international inch, 1959). */
export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 304.8;

export type LengthUnits = 'in' | 'mm';

/** Inches as millimetres. */
export const inchesToMm = (value: number): Millimetres => mm(value * MM_PER_INCH);
/** Millimetres as inches. */
export const mmToInches = (value: number): number => value / MM_PER_INCH;

const PER_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  ft: MM_PER_FOOT,
  foot: MM_PER_FOOT,
  feet: MM_PER_FOOT,
  "'": MM_PER_FOOT,
};

const DECIMAL = String.raw`\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d*)?|\.\d+`;
const FRACTION = String.raw`\d+\s*/\s*\d+`;
/** "9", "9.5", "1,234.5", "9 1/2", "9-1/2", "1/2" */
const NUMBER = String.raw`(?:\d+[\s-]+${FRACTION}|${FRACTION}|${DECIMAL})`;
const ONE = new RegExp(String.raw`^(${NUMBER})\s*(mm|cm|m|inches|inch|in|feet|foot|ft|"|')?\.?$`);
const FEET_AND_INCHES = new RegExp(
  String.raw`^(${NUMBER})\s*(?:feet|foot|ft|')\.?\s*-?\s*(${NUMBER})\s*(?:inches|inch|in|")?\.?$`,
);
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** The value of a match of NUMBER; Infinity where a fraction divides by nought. */
function valueOf(number: string): number {
  const [, whole, top, bottom] = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(number) ?? [];
  if (top !== undefined && bottom !== undefined) return Number(whole ?? 0) + Number(top) / Number(bottom);
  return Number(number.replaceAll(',', ''));
}

function read(text: string, units: LengthUnits): number | null {
  const [, feet, inches] = FEET_AND_INCHES.exec(text) ?? [];
  if (feet !== undefined && inches !== undefined) {
    return valueOf(feet) * MM_PER_FOOT + valueOf(inches) * MM_PER_INCH;
  }
  const [, number, unit] = ONE.exec(text) ?? [];
  const each = PER_UNIT[unit ?? units];
  return number === undefined || each === undefined ? null : valueOf(number) * each;
}

/**
 * Reads a length as people write it: 9 1/2, 9-1/2", 9.5 in, 10 ft, 10' 6", 240 mm, 24 cm, 1,234.5. A comma only groups
 * thousands. A unit in the text wins over `units`.
 * @returns millimetres, 0 or more; or a problem that repeats the text
 */
export function parseLength(text: string, units: LengthUnits): Result<Millimetres> {
  const tidy = text
    .trim()
    .toLowerCase()
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (fraction) => ` ${VULGAR[fraction]}`)
    .replace(/[”″]|''/g, '"')
    .replace(/[’′]/g, "'")
    .trim();
  const value = read(tidy, units);
  if (value !== null && Number.isFinite(value)) return good(mm(value));
  const example = units === 'in' ? '9 1/2 or 240 mm' : '240 or 9 1/2 in';
  return bad(problem('length', 'length', `"${text}" is not a length.`, `Write it like ${example}.`));
}

/** Inches further than this from a whole sixteenth (or the asked fraction) are written as decimals. */
const FRACTION_TOLERANCE_IN = 0.005;

const withoutTrailingZeros = (value: number, places: number): string => String(Number(value.toFixed(places)));

function formatInches(inches: number, fraction: number): string {
  const parts = Math.round(inches * fraction);
  if (Math.abs(inches - parts / fraction) > FRACTION_TOLERANCE_IN) return withoutTrailingZeros(inches, 3);
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

/**
 * A length for people, unit included: "9 1/2 in", "6.927 in", "240.5 mm".
 * Inches are a fraction to the nearest 1/16 (or `fraction`) when that is within 0.005 in of the value, else a decimal
 * to 0.001; millimetres are to 0.1.
 */
export function formatLength(
  lengthMm: number,
  units: LengthUnits,
  { fraction = 16 }: { readonly fraction?: 16 | 32 | 64 } = {},
): string {
  if (units === 'mm') return `${withoutTrailingZeros(lengthMm, 1)} mm`;
  const inches = mmToInches(Math.abs(lengthMm));
  return `${lengthMm < 0 ? '-' : ''}${formatInches(inches, fraction)} in`;
}

/** A length in both systems, for a sentence that a shop of either reads: "31.8 mm (1 1/4 in)". */
export const formatBoth = (lengthMm: number): string =>
  `${formatLength(lengthMm, 'mm')} (${formatLength(lengthMm, 'in', { fraction: 64 })})`;
