import { err, ok, issue, type Result } from '../result.ts';
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
  if (value !== null && Number.isFinite(value)) return ok(mm(value));
  const example = units === 'in' ? '9 1/2 or 240 mm' : '240 or 9 1/2 in';
  return err(issue('length', 'length', `"${text}" is not a length.`, `Write it like ${example}.`));
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

const withoutTrailingZeros = (value: number, places: number): string => String(Number(value.toFixed(places)));

function formatInches(inches: number, fraction: number, tolerance: number): string {
  const parts = Math.round(inches * fraction);
  if (Math.abs(inches - parts / fraction) > tolerance) return withoutTrailingZeros(inches, 3);
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

const format = (lengthMm: number, units: LengthUnits, fraction: number, tolerance: number): string => {
  if (units === 'mm') return `${withoutTrailingZeros(lengthMm, 1)} mm`;
  const inches = mmToInches(Math.abs(lengthMm));
  return `${lengthMm < 0 ? '-' : ''}${formatInches(inches, fraction, tolerance)} in`;
};

/**
 * A length as it was typed or is compared with a limit, unit included: "9 1/2 in", "0.057 in", "240.5 mm". Inches are a
 * fraction of 1/16 (or `fraction`) where that is the same to 0.0005 in, else a decimal to 0.001; millimetres are to 0.1.
 * What is cut is written by `formatCutLength`.
 */
export const formatLength = (
  lengthMm: number,
  units: LengthUnits,
  { fraction = 16 }: { readonly fraction?: 16 | 32 | 64 } = {},
): string => format(lengthMm, units, fraction, TYPED_TOLERANCE_IN);

/**
 * A length that is cut: of a blank, a piece, a sheet, a remnant, a setting of the back gauge. One size has one figure
 * wherever it stands, on screens, on paper and in files: "9 1/2 in", "6.927 in", "240.5 mm". Inches are a fraction of
 * 1/16 where that is the same to 0.001 in, else a decimal to 0.001; millimetres are to 0.1.
 */
export const formatCutLength = (lengthMm: number, units: LengthUnits): string =>
  format(Math.round(lengthMm / CUT_STEP_MM) * CUT_STEP_MM, units, 16, CUT_TOLERANCE_IN);

/** "9 1/2 in × 120 in": girth or width first, then length. */
export const formatCutSize = (widthMm: number, lengthMm: number, units: LengthUnits): string =>
  `${formatCutLength(widthMm, units)} × ${formatCutLength(lengthMm, units)}`;

/** Places of the decimals in which lengths are added up: a sixteenth of an inch is exact in four. */
const SUM_PLACES = { in: 4, mm: 2 } as const;

/**
 * Parts and their sum as decimals that add up as shown, for a table that someone adds up: each part is rounded so that
 * the sum of those before it stays within half a last place of the true one.
 */
export function formatSum(
  partsMm: readonly number[],
  units: LengthUnits,
): { readonly parts: readonly string[]; readonly sum: string } {
  const scale = 10 ** SUM_PLACES[units];
  const inUnits = (lengthMm: number): number =>
    Math.round((units === 'in' ? mmToInches(lengthMm) : lengthMm) * scale);
  const write = (steps: number): string =>
    `${steps < 0 ? '−' : ''}${(Math.abs(steps) / scale).toFixed(SUM_PLACES[units])} ${units}`;
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
export const formatThickness = (thicknessMm: number, units: LengthUnits): string =>
  units === 'in' ? `${mmToInches(thicknessMm).toFixed(4)} in` : `${thicknessMm.toFixed(2)} mm`;
