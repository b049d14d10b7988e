import { LONGEST } from '../fields.ts';
import { formatLength, MM_PER_INCH, parseLength, type LengthUnits, type Units } from '../units/length.ts';
import { writeNumber, type DecimalMark } from '../units/number.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { gaugeName } from '../shop/metal-name.ts';
import type { Shop } from '../shop/state.ts';
import { grouped } from '../grouped.ts';

/** What a line of plain text asks to be cut, as it was understood. */
export interface WalkInCut {
  readonly pieces: number;
  readonly girthMm: number;
  readonly lengthMm: number;
  readonly materialId: string;
  readonly gauge: string;
  readonly colourId: string;
}

/** A cut as a shop with these units writes it; `@` for "pcs," and `x` for `×` are read as well. */
export const walkInExample = (units: LengthUnits): string =>
  units === 'in' ? '5 pcs, 9 1/2 in × 10 ft, 26 ga, moss' : '5 pcs, 240 mm × 3000 mm, 26 ga, moss';

const wrong = (field: string, message: string, advice: string): Issue =>
  issue('walk-in', field, message, advice);

/** A size may have a comma before decimals; behind the length it separates, but in a shop that writes commas. */
const SIZE = String.raw`(?:[^,]|(?<=\d),(?=\d))+`;
const asked = (length: string): RegExp =>
  new RegExp(String.raw`^(\d+)\s*(?:@|(?:of|at)\b|pcs?\b\.?,?)\s*(${SIZE}?)\s*[x×]\s*(${length})(.*)$`, 'i');
/** Pieces, girth × length, and the words behind them. */
/** Of one cut, as of a line. */
const MOST_PIECES = 100_000;
const ASKED: Readonly<Record<DecimalMark, RegExp>> = { point: asked('[^,]+'), comma: asked(SIZE) };

/**
 * Reads a cut as it is said at the counter: pieces, girth × length, gauge, colour, and the material where several are
 * kept. Bare lengths are in the shop's units.
 * @returns what was understood; or one sentence for each thing that was not
 */
export function parseWalkIn(shop: Shop, text: string): Result<WalkInCut> {
  const { units, decimals } = shop.settings;
  const example = `Write it like ${walkInExample(units)}.`;
  const [, count, girth, length, words] = ASKED[decimals].exec(text.trim()) ?? [];
  if (count === undefined || girth === undefined || length === undefined || words === undefined)
    return err(wrong('size', `“${text.trim()}” does not say pieces, girth and length.`, example));
  const width = parseLength(girth, { units, decimals });
  const long = parseLength(length, { units, decimals });
  const metal = metalIn(
    shop,
    words
      .split(',')
      .map((word) => word.trim())
      .filter(Boolean),
  );
  const issues: Issue[] = [
    ...(width.ok ? [] : width.issues),
    ...(long.ok ? [] : long.issues),
    ...(metal.ok ? [] : metal.issues),
  ];
  const pieces = Number(count);
  if (pieces < 1 || pieces > MOST_PIECES)
    issues.push(
      wrong('pieces', `${count} pieces cannot be asked for.`, `Ask for 1 to ${grouped(MOST_PIECES)}.`),
    );
  for (const [what, size] of [
    ['girth', width],
    ['length', long],
  ] as const)
    if (size.ok && (size.value <= 0 || size.value > 50_000))
      issues.push(wrong(what, `The ${what} must be above 0 and at most ${LONGEST[units]}.`, example));
  if (!width.ok || !long.ok || !metal.ok || issues.length > 0) return err(...issues);
  return ok({ pieces, girthMm: width.value, lengthMm: long.value, ...metal.value });
}

/**
 * A cut as one line that `parseWalkIn` reads back as the very same, to the hundredth of a millimetre: sizes as fractions
 * of an inch where they are whole sixty-fourths and the shop works in inches, else in millimetres; a length of whole feet
 * in feet. The material is named where its gauge is kept in more than one.
 */
export function walkInWords(shop: Shop, cut: WalkInCut): string {
  const named = (rows: readonly { id: string; name: string }[], id: string): string => {
    const name = rows.find((row) => row.id === id)?.name ?? id;
    return name.includes(',') ? id : name;
  };
  const { settings } = shop;
  const keptIn = shop.material.filter(({ gauges }) => gauges.some(({ label }) => label === cut.gauge));
  return [
    `${cut.pieces} pcs`,
    `${exactly(cut.girthMm, settings)} × ${inFeet(cut.lengthMm, settings.units) ?? exactly(cut.lengthMm, settings)}`,
    gaugeName(cut.gauge),
    named(shop.colour, cut.colourId),
    ...(keptIn.length > 1 ? [named(shop.material, cut.materialId)] : []),
  ].join(', ');
}

/** "10 ft"; null where it is no whole number of feet, or the shop works in millimetres. */
function inFeet(sizeMm: number, units: LengthUnits): string | null {
  const feet = sizeMm / (12 * MM_PER_INCH);
  const whole = Math.round(feet);
  return units === 'in' && whole > 0 && Math.abs(feet - whole) < 1e-9 ? `${whole} ft` : null;
}

function exactly(sizeMm: number, units: Units): string {
  const parts = (sizeMm / MM_PER_INCH) * 64;
  const whole = Math.abs(parts - Math.round(parts)) < 1e-6;
  if (units.units === 'in' && whole) return formatLength(sizeMm, units, { fraction: 64 });
  return `${writeNumber(sizeMm, units.decimals, 2)} mm`;
}

type Metal = Pick<WalkInCut, 'materialId' | 'gauge' | 'colourId'>;

function metalIn(shop: Shop, words: readonly string[]): Result<Metal> {
  const plain = (text: string): string =>
    text
      .toLowerCase()
      // "24 ga" and "24ga", but not the end of a colour's name.
      .replace(/(?<=\d\s*)(ga|gauge)\.?$/, '')
      .trim();
  const said = words.map(plain);
  const named = <T extends { id: string; name: string }>(rows: readonly T[]): T | undefined =>
    rows.find((row) => said.includes(row.id.toLowerCase()) || said.includes(row.name.toLowerCase()));
  const colour = named(shop.colour);
  const material = named(shop.material);
  const issues: Issue[] = [];
  if (!colour)
    issues.push(
      wrong(
        'colour',
        'No colour was understood.',
        `Name one of ${shop.colour.map((c) => c.name).join(', ')}.`,
      ),
    );
  const gauges = (material ? [material] : shop.material).flatMap((m) =>
    m.gauges
      .filter((g) => said.includes(g.label.toLowerCase()))
      .map((g) => ({ materialId: m.id, gauge: g.label })),
  );
  const [gauge, second] = gauges;
  if (!gauge) {
    const known = (material ? [material] : shop.material).flatMap((m) => m.gauges.map((g) => g.label));
    issues.push(wrong('gauge', 'No gauge was understood.', `Name one of ${known.join(', ')}.`));
  } else if (second)
    issues.push(
      wrong(
        'material',
        `Gauge ${gauge.gauge} is kept in more than one material.`,
        `Add one of ${shop.material.map((m) => m.name).join(', ')}.`,
      ),
    );
  const understood = [
    ...(colour ? [colour.id, colour.name] : []),
    ...(material ? [material.id, material.name] : []),
  ];
  const strange = said.filter(
    (word) =>
      !understood.some((name) => name.toLowerCase() === word) &&
      !gauges.some((g) => g.gauge.toLowerCase() === word),
  );
  for (const word of strange)
    issues.push(
      wrong('words', `“${word}” was not understood.`, `Write it like ${walkInExample(shop.settings.units)}.`),
    );
  if (!colour || !gauge || issues.length > 0) return err(...issues);
  return ok({ ...gauge, colourId: colour.id });
}
