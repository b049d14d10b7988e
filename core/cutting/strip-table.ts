import { axisRule } from './axis.ts';
import { allPatterns, fewPieces, lengthTolerance, patternSearch, type PieceKind } from './knapsack.ts';
import type { BlankSize, ShearLimits } from './run.ts';

/** One way to fill a strip: blank sizes and how many of each. */
export interface Filling {
  readonly pieces: readonly (readonly [item: number, count: number])[];
  /** One blank as long as the strip: no crosscut is needed. */
  readonly whole: boolean;
}

/** What can be cut from strips of one girth. */
export interface Girth {
  readonly girthMm: number;
  /** Blank sizes of this girth. */
  readonly items: readonly number[];
  /** By panel length: every filling, or null where they are too many to list. */
  readonly fillings: readonly (readonly Filling[] | null)[];
  /** By panel length: the sizes that fit and may be cut there. */
  readonly fitting: readonly (readonly number[])[];
}

/** All that does not depend on what a piece is worth: worked out once a run. */
export interface StripTable {
  readonly sizes: readonly BlankSize[];
  readonly shear: ShearLimits;
  readonly widestMm: number;
  /** Panel lengths, longest first. */
  readonly lengths: readonly number[];
  readonly girths: readonly Girth[];
  /** By blank size: its place in `girths`. */
  readonly girthOf: readonly number[];
}

/** More fillings than this are not listed one by one. */
const listed = { full: false, limit: 60, nodes: 2_000 };

/** @param widestMm width of the widest stock */
export function stripTable(
  sizes: readonly BlankSize[],
  shear: ShearLimits,
  widestMm: number,
  lengths: readonly number[],
): StripTable {
  const byGirth = new Map<number, number[]>();
  sizes.forEach(({ girthMm }, item) => byGirth.set(girthMm, [...(byGirth.get(girthMm) ?? []), item]));
  const girths = [...byGirth].map(([girthMm, items]): Girth => {
    const fitting = lengths.map((lengthMm) => items.filter((item) => fits(sizes, shear, item, lengthMm)));
    const fillings = lengths.map((lengthMm, at) =>
      fillingsOf(sizes, shear, fitting[at] as number[], lengthMm),
    );
    return { girthMm, items, fitting, fillings };
  });
  const girthOf = sizes.map(({ girthMm }) => girths.findIndex((one) => one.girthMm === girthMm));
  return { sizes, shear, widestMm, lengths, girths, girthOf };
}

function fits(sizes: readonly BlankSize[], shear: ShearLimits, item: number, lengthMm: number): boolean {
  const { girthMm, lengthMm: own } = sizes[item] as BlankSize;
  const beyondShear = own < lengthMm && girthMm > shear.lengthMm;
  return own <= lengthMm + lengthTolerance && !beyondShear;
}

/** The blank sizes as pieces along a strip. @param wanted at most so many of each; @param values what each is worth */
export const alongStrip = (
  sizes: readonly BlankSize[],
  items: readonly number[],
  wanted: (item: number) => number,
  values: (item: number) => number,
): PieceKind[] =>
  items.map((item) => ({
    size: (sizes[item] as BlankSize).lengthMm,
    value: values(item),
    copies: wanted(item),
  }));

function fillingsOf(
  sizes: readonly BlankSize[],
  shear: ShearLimits,
  items: readonly number[],
  lengthMm: number,
): Filling[] | null {
  if (items.length === 0) return [];
  const pieces = alongStrip(
    sizes,
    items,
    (item) => (sizes[item] as BlankSize).quantity,
    () => 1,
  );
  const search = patternSearch(pieces, lengthMm, axisRule(shear), fewPieces.buckets);
  const all = allPatterns(search, 0, listed);
  return (
    all?.map(({ counts }): Filling => {
      const filled = counts.flatMap((count, k) => (count > 0 ? [[items[k] as number, count] as const] : []));
      const [first] = filled;
      const whole = filled.length === 1 && first?.[1] === 1 && sizes[first[0]]?.lengthMm === lengthMm;
      return { pieces: filled, whole };
    }) ?? null
  );
}
