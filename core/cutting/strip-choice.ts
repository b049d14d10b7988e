import { axisRule } from './axis.ts';
import { bestPattern, fewPieces, lengthTolerance } from './knapsack.ts';
import type { BlankSize, ShearLimits } from './run.ts';
import type { SheetLayout } from './sheet-patterns.ts';

/** The most valuable strip of one girth in a panel of one length. */
export interface BestStrip {
  readonly girthMm: number;
  /** Blank sizes along the strip, by index. */
  readonly blanks: readonly number[];
  /** No strip of this girth is worth more. */
  readonly bound: number;
  /** Blanks of this girth still wanted that fit the panel: more strips than this make no sense. */
  readonly pieces: number;
}

/** The best strips at given item values, with the pieces still wanted; strips are worked out once and kept until pieces go. */
export interface StripChoice {
  /** One for each girth that fits a panel of this length. */
  strips(lengthMm: number): readonly BestStrip[];
  /** Takes a strip's pieces off what is wanted; false when they are not all wanted any more. */
  take(blanks: readonly number[]): boolean;
  worth(layout: SheetLayout): number;
  copy(): StripChoice;
}

/** What the strips are chosen by. */
interface Given {
  readonly sizes: readonly BlankSize[];
  readonly shear: ShearLimits;
  readonly values: readonly number[];
  /** Girth → the sizes of that girth that are wanted and worth something. */
  readonly byGirth: ReadonlyMap<number, readonly number[]>;
}

/** Panel length → girth → its best strip, null where none fits. */
type Known = Map<number, Map<number, BestStrip | null>>;

/** @param wanted pieces wanted of each size; not changed */
export function stripChoice(
  sizes: readonly BlankSize[],
  shear: ShearLimits,
  values: readonly number[],
  wanted: readonly number[],
): StripChoice {
  const byGirth = new Map<number, number[]>();
  sizes.forEach(({ girthMm }, item) => {
    if ((wanted[item] as number) <= 0 || (values[item] as number) <= 0) return;
    byGirth.set(girthMm, [...(byGirth.get(girthMm) ?? []), item]);
  });
  return choiceFrom({ sizes, shear, values, byGirth }, wanted.slice(), new Map());
}

function choiceFrom(given: Given, left: number[], known: Known): StripChoice {
  const { sizes, values, byGirth } = given;
  const valueOf = (item: number): number => values[item] as number;
  return {
    strips(lengthMm) {
      const ofLength = known.get(lengthMm) ?? new Map<number, BestStrip | null>();
      known.set(lengthMm, ofLength);
      for (const [girthMm, items] of byGirth) {
        if (!ofLength.has(girthMm)) ofLength.set(girthMm, bestStrip(given, girthMm, items, lengthMm, left));
      }
      return [...ofLength.values()].filter((strip) => strip !== null);
    },
    take(blanks) {
      const after = left.slice();
      for (const item of blanks) after[item] = (after[item] as number) - 1;
      if (blanks.length === 0 || blanks.some((item) => (after[item] as number) < 0)) return false;
      for (const item of blanks) left[item] = after[item] as number;
      const { girthMm } = sizes[blanks[0] as number] as BlankSize;
      for (const ofLength of known.values()) ofLength.delete(girthMm);
      return true;
    },
    worth: (layout) =>
      layout.panels
        .flatMap((panel) => panel.strips)
        .flatMap((strip) => strip.blanks)
        .reduce((sum, item) => sum + valueOf(item), 0),
    copy: () =>
      choiceFrom(
        given,
        left.slice(),
        new Map([...known].map(([length, strips]) => [length, new Map(strips)])),
      ),
  };
}

function bestStrip(
  { sizes, shear, values }: Given,
  girthMm: number,
  items: readonly number[],
  lengthMm: number,
  left: readonly number[],
): BestStrip | null {
  const fitting = items.filter((item) => {
    const own = (sizes[item] as BlankSize).lengthMm;
    const beyondShear = own < lengthMm && girthMm > shear.lengthMm;
    return (left[item] as number) > 0 && own <= lengthMm + lengthTolerance && !beyondShear;
  });
  if (fitting.length === 0) return null;
  const kinds = fitting.map((item) => ({
    size: (sizes[item] as BlankSize).lengthMm,
    value: values[item] as number,
    copies: left[item] as number,
  }));
  const { counts, bound } = bestPattern(kinds, lengthMm, axisRule(shear), fewPieces);
  const blanks = counts.flatMap((count, k) => new Array<number>(count).fill(fitting[k] as number));
  return { girthMm, blanks, bound, pieces: fitting.reduce((sum, item) => sum + (left[item] as number), 0) };
}
