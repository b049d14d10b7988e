import type { Units } from '../units/length.ts';
import type { RemnantRule } from './remnant.ts';
import type { WorkPrices } from './work.ts';

/**
 * One run on the shear: lines of the same material, gauge and colour, and what there is to cut them from.
 * Lengths lie along the sheet, girths across it; a blank is never turned, for its grain and colour run along it.
 * All lengths in millimetres, to the hundredth: finer than any shear cuts.
 */
export interface RunInput {
  readonly lines: readonly RunLine[];
  readonly stock: readonly Stock[];
  readonly shear: ShearLimits;
  readonly keep: RemnantRule;
  readonly work: WorkPrices;
  /** What sentences about the run are written in. */
  readonly units: Units;
}

export interface RunLine {
  readonly id: string;
  readonly girthMm: number;
  readonly lengthMm: number;
  readonly quantity: number;
  /** Pieces too many that the customer or the bin takes; 0: exactly the quantity. */
  readonly overrun: number;
  /** Any number that sorts by urgency, for instance the due day; lines of equal value are cut together. null: last. */
  readonly due: number | null;
}

interface StockBase {
  readonly id: string;
  readonly widthMm: number;
  /** Taken off one end, for a square edge; 0 on an edge that can be trusted. */
  readonly endTrimMm: number;
  /** Taken off one side; 0 on a mill-slit edge. */
  readonly sideTrimMm: number;
}

/** Sheets of one size, or remnants of one size (then at a low cost, so that they go first where they serve). */
export interface SheetStock extends StockBase {
  readonly kind: 'sheet';
  readonly lengthMm: number;
  readonly costCents: number;
  /** null: as many as needed can be had. */
  readonly available: number | null;
  readonly remnant: boolean;
}

/** A coil that is cut to length: the run takes only what it needs of it. */
interface CoilStock extends StockBase {
  readonly kind: 'coil';
  readonly centsPerMetre: number;
  /** Length left on the coil; null: enough. */
  readonly lengthMm: number | null;
}

export type Stock = SheetStock | CoilStock;

/**
 * The narrowest that is cut off an edge, 1/16 in: what is thinner is not sheared but pushed aside. It is about two
 * thicknesses of the heaviest trim metal. Common practice, no source.
 */
export const NARROWEST_CUT_MM = 1.5875;

export interface ShearLimits {
  /** Longest cut. */
  readonly lengthMm: number;
  /** Travel of the back gauge; what is wider is cut from the other side, as the piece that remains. */
  readonly backGaugeMm: { readonly min: number; readonly max: number };
  /** Whether pieces beyond the gauge may be cut to a scribed line, which is slower and less exact; false: only one a cut axis. */
  readonly scribe: boolean;
  /** What remains in the hold-downs at a cut must be at least so wide. */
  readonly minStripMm: number;
  /** Offcuts narrower than this are avoided, those that nothing is left of not; absent: than can be cut off. */
  readonly offcutFromMm?: number;
  /** Continuous strokes from so many cuts on one piece; null: single strokes only (no guarded feed that keeps up). */
  readonly continuousFrom: number | null;
}

/** Blanks of one size, from all lines that ask for that very size. */
export interface BlankSize {
  readonly girthMm: number;
  readonly lengthMm: number;
  readonly quantity: number;
  readonly overrun: number;
  /** Most urgent first; equal dues in the order given. */
  readonly lines: readonly RunLine[];
}

/** To the hundredth of a millimetre. */
export const hundredth = (mm: number): number => Math.round(mm * 100) / 100;

/** Sorts lines and groups by urgency, those without a due date last. */
export const byDue = (a: number | null, b: number | null): number =>
  (a ?? Infinity) === (b ?? Infinity) ? 0 : (a ?? Infinity) - (b ?? Infinity);

/** The run's blank sizes, largest girth first, then longest first. Only equal sizes are put together, never near-equal ones. */
export function blankSizes(run: Pick<RunInput, 'lines'>): BlankSize[] {
  const bySize = new Map<string, RunLine[]>();
  for (const line of run.lines) {
    if (line.quantity === 0) continue;
    const key = `${hundredth(line.girthMm)}×${hundredth(line.lengthMm)}`;
    bySize.set(key, [...(bySize.get(key) ?? []), line]);
  }
  const sizes = [...bySize.values()].map((lines): BlankSize => {
    const [{ girthMm, lengthMm }] = lines as [RunLine];
    return {
      girthMm: hundredth(girthMm),
      lengthMm: hundredth(lengthMm),
      quantity: lines.reduce((sum, line) => sum + line.quantity, 0),
      overrun: lines.reduce((sum, line) => sum + line.overrun, 0),
      lines: lines.toSorted((a, b) => byDue(a.due, b.due)),
    };
  });
  return sizes.sort((a, b) => b.girthMm - a.girthMm || b.lengthMm - a.lengthMm);
}

/** Sizes so close that someone may want to make them one: for a person to decide, the plan keeps them apart. */
export function nearEqualSizes(
  sizes: readonly BlankSize[],
  withinMm: number,
): (readonly [BlankSize, BlankSize])[] {
  return sizes.flatMap((one, at) =>
    sizes
      .slice(at + 1)
      .filter((other) => other.lengthMm === one.lengthMm && one.girthMm - other.girthMm <= withinMm)
      .map((other) => [one, other] as const),
  );
}

/** A text that is equal for runs that ask the same of the same stock and shear: what an answer is remembered by. */
export const runKey = ({ lines, stock, shear, keep, work, units }: RunInput): string =>
  JSON.stringify([
    lines.map((line) => [line.id, line.girthMm, line.lengthMm, line.quantity, line.overrun, line.due]),
    stock.map((one) => [
      one.id,
      ...[one.widthMm, one.lengthMm, one.endTrimMm, one.sideTrimMm],
      ...(one.kind === 'sheet' ? [one.costCents, one.available, one.remnant] : [one.centsPerMetre]),
    ]),
    [shear.lengthMm, shear.backGaugeMm.min, shear.backGaugeMm.max, shear.scribe, shear.minStripMm],
    [shear.continuousFrom, keep.widthMm, keep.lengthMm, keep.most, keep.worth, units.units],
    [
      work.sheet,
      work.feedAgain,
      work.setting,
      work.turn,
      work.singleStroke,
      work.continuousStroke,
      work.line,
    ],
  ]);
