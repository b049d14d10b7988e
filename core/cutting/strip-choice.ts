import { axisRule } from './axis.ts';
import { allPatterns, bestPatterns, fewPieces, lengthTolerance, patternSearch } from './knapsack.ts';
import type { BlankSize, ShearLimits } from './run.ts';
import type { SheetLayout } from './sheet-patterns.ts';

/** A way to fill one strip of a panel. */
export interface StripOption {
  readonly girthMm: number;
  /** Blank sizes along the strip, by index. */
  readonly blanks: readonly number[];
  /** What such a strip is worth, at most. */
  readonly value: number;
  /** How many such strips the pieces still wanted allow. */
  readonly copies: number;
}

/** The strips worth cutting at given item values; worked out once and kept until pieces go. */
export interface StripChoice {
  /** For each girth that fits a panel of this length, the best strips, as many as so many sheets' widths have room for. */
  strips(lengthMm: number, widths: number): readonly StripOption[];
  /** A figure worked out from the pieces still wanted, kept under a name until some are taken. */
  once(name: string, figure: () => number): number;
  /** Takes a strip's pieces off what is wanted; false when they are not all wanted any more. */
  take(blanks: readonly number[]): boolean;
  worth(layout: SheetLayout): number;
  copy(): StripChoice;
}

/** At equal worth a strip that needs no crosscut of its own is taken: panels are easier to handle than long strips. */
const crosscutWorth = 1 - 1e-8;

/** More ways to fill one strip than this are not listed one by one. */
const listed = { full: false, limit: 30, nodes: 2_000 };

/** What the strips are chosen by. */
interface Given {
  readonly sizes: readonly BlankSize[];
  readonly shear: ShearLimits;
  readonly values: readonly number[];
  readonly widestMm: number;
  /** Girth → the sizes of that girth that are wanted and worth something. */
  readonly byGirth: ReadonlyMap<number, readonly number[]>;
}

/** What was worked out for the pieces still wanted. */
interface Known {
  /** Panel length and widths → girth → its strips. */
  readonly strips: Map<string, Map<number, readonly StripOption[]>>;
  readonly figures: Map<string, number>;
}

/**
 * @param widestMm width of the widest stock
 * @param wanted pieces wanted of each size; not changed
 */
export function stripChoice(
  sizes: readonly BlankSize[],
  shear: ShearLimits,
  widestMm: number,
  values: readonly number[],
  wanted: readonly number[],
): StripChoice {
  const byGirth = new Map<number, number[]>();
  sizes.forEach(({ girthMm }, item) => {
    if ((wanted[item] as number) <= 0 || (values[item] as number) <= 0) return;
    byGirth.set(girthMm, [...(byGirth.get(girthMm) ?? []), item]);
  });
  return choiceFrom({ sizes, shear, values, widestMm, byGirth }, wanted.slice(), {
    strips: new Map(),
    figures: new Map(),
  });
}

function choiceFrom(given: Given, left: number[], known: Known): StripChoice {
  const { sizes, values, byGirth } = given;
  const valueOf = (item: number): number => values[item] as number;
  return {
    strips(lengthMm, widths) {
      const key = `${lengthMm}/${widths}`;
      const ofLength = known.strips.get(key) ?? new Map<number, readonly StripOption[]>();
      known.strips.set(key, ofLength);
      for (const [girthMm, items] of byGirth) {
        if (!ofLength.has(girthMm))
          ofLength.set(girthMm, bestStrips(given, girthMm, items, lengthMm, widths, left));
      }
      return [...ofLength.values()].flat();
    },
    once(name, figure) {
      const value = known.figures.get(name) ?? figure();
      known.figures.set(name, value);
      return value;
    },
    take(blanks) {
      const after = left.slice();
      for (const item of blanks) after[item] = (after[item] as number) - 1;
      if (blanks.length === 0 || blanks.some((item) => (after[item] as number) < 0)) return false;
      for (const item of blanks) left[item] = after[item] as number;
      const { girthMm } = sizes[blanks[0] as number] as BlankSize;
      for (const ofLength of known.strips.values()) ofLength.delete(girthMm);
      known.figures.clear();
      return true;
    },
    worth: (layout) =>
      layout.panels
        .flatMap((panel) => panel.strips)
        .flatMap((strip) => strip.blanks)
        .reduce((sum, item) => sum + valueOf(item), 0),
    copy() {
      const strips = new Map([...known.strips].map(([key, ofLength]) => [key, new Map(ofLength)]));
      return choiceFrom(given, left.slice(), { strips, figures: new Map(known.figures) });
    },
  };
}

function bestStrips(
  { sizes, shear, values, widestMm }: Given,
  girthMm: number,
  items: readonly number[],
  lengthMm: number,
  widths: number,
  left: readonly number[],
): readonly StripOption[] {
  const fitting = items.filter((item) => {
    const own = (sizes[item] as BlankSize).lengthMm;
    const beyondShear = own < lengthMm && girthMm > shear.lengthMm;
    return (left[item] as number) > 0 && own <= lengthMm + lengthTolerance && !beyondShear;
  });
  if (fitting.length === 0) return [];
  const leftOf = (k: number): number => left[fitting[k] as number] as number;
  const search = patternSearch(
    fitting.map((item, k) => ({
      size: (sizes[item] as BlankSize).lengthMm,
      value: values[item] as number,
      copies: leftOf(k),
    })),
    lengthMm,
    axisRule(shear),
    fewPieces.buckets,
  );
  const option = (value: number, counts: readonly number[], copies: number): StripOption => {
    const blanks = counts.flatMap((count, k) => new Array<number>(count).fill(fitting[k] as number));
    const whole = blanks.length === 1 && sizes[blanks[0] as number]?.lengthMm === lengthMm;
    return { girthMm, blanks, value: whole ? value : value * crosscutWorth, copies };
  };
  const all = allPatterns(search, 0, listed);
  if (!all) {
    // Too many to list: the best alone, as often as there are pieces, which errs on the high side only.
    const { patterns, bound } = bestPatterns(search, 0, { keep: 1, nodes: fewPieces.nodes, slack: 0 });
    return [
      option(
        bound,
        patterns[0]?.counts ?? [],
        fitting.reduce((sum, item) => sum + (left[item] as number), 0),
      ),
    ];
  }
  let room = Math.floor((widths * widestMm + lengthTolerance) / girthMm);
  const options: StripOption[] = [];
  for (const { value, counts } of all.toSorted((a, b) => b.value - a.value)) {
    if (room <= 0) break;
    const copies = Math.min(
      ...counts.flatMap((count, k) => (count > 0 ? [Math.floor(leftOf(k) / count)] : [])),
    );
    options.push(option(value, counts, copies));
    room -= copies;
  }
  return options;
}
