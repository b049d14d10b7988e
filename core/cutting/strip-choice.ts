import { axisRule } from './axis.ts';
import { bestPatterns, fewPieces, lengthTolerance, patternSearch } from './knapsack.ts';
import type { SheetLayout } from './layout.ts';
import { alongStrip, type Filling, type Girth, type StripTable } from './strip-table.ts';

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
  /**
   * For each girth the best strip of a panel of this length, then the best of the pieces it leaves, and so on: all of
   * them can be cut. The most valuable for their girth first.
   */
  strips(length: number): readonly StripOption[];
  /** What strips can be worth at most: the k best of a girth here are worth no less than any k that can be cut together, from so many sheets' widths. */
  most(length: number, widths: number): readonly StripOption[];
  /** A figure worked out from the pieces still wanted, kept under a name until some are taken. */
  once(name: string, figure: () => number): number;
  /** Takes a strip's pieces off what is wanted; false when they are not all wanted any more. */
  take(blanks: readonly number[]): boolean;
  worth(layout: SheetLayout): number;
  value(item: number): number;
  /** Pieces still wanted. */
  left(item: number): number;
  /** The same pieces, some worth less. */
  cheaper(less: ReadonlyMap<number, number>): StripChoice;
  copy(): StripChoice;
}

/** At equal worth a strip that needs no crosscut of its own is taken: panels are easier to handle than long strips. */
const crosscutWorth = 1 - 1e-8;

type Options = readonly StripOption[];
/** By panel length, then by girth. */
type Known = (Options | undefined)[][];

/**
 * @param values of each blank size
 * @param wanted pieces wanted of each size; not changed
 */
export function stripChoice(
  table: StripTable,
  values: readonly number[],
  wanted: readonly number[],
): StripChoice {
  return choiceFrom(
    table,
    values,
    wanted.slice(),
    table.lengths.map(() => []),
  );
}

function choiceFrom(table: StripTable, values: readonly number[], left: number[], known: Known): StripChoice {
  const figures = new Map<string, number>();
  const ordered: (Options | undefined)[] = [];
  const work: Work = { table, values, left };
  // Fewer pieces are wanted as time goes by, never more: the other girths stay out.
  const girths = table.girths.flatMap((girth, g) =>
    girth.items.every((item) => worthless(work, item)) ? [] : [{ girth, g }],
  );
  return {
    strips: (length) =>
      (ordered[length] ??= byRate(
        girths.flatMap(({ girth, g }) => ((known[length] as Options[])[g] ??= cuttable(work, girth, length))),
      )),
    most: (length, widths) => byRate(girths.flatMap(({ girth }) => atMost(work, girth, length, widths))),
    once(name, figure) {
      const value = figures.get(name) ?? figure();
      figures.set(name, value);
      return value;
    },
    take(blanks) {
      const first = blanks[0];
      if (first === undefined || !takeFrom(left, blanks)) return false;
      const g = table.girthOf[first] as number;
      for (const row of known) row[g] = undefined;
      ordered.length = 0;
      figures.clear();
      return true;
    },
    worth: (layout) =>
      layout.panels
        .flatMap((panel) => panel.strips)
        .flatMap((strip) => strip.blanks)
        .reduce((sum, item) => sum + (values[item] as number), 0),
    value: (item) => values[item] as number,
    left: (item) => left[item] as number,
    cheaper: (less) =>
      stripChoice(
        table,
        values.map((value, item) => value - (less.get(item) ?? 0)),
        left,
      ),
    copy: () =>
      choiceFrom(
        table,
        values,
        left.slice(),
        known.map((row) => row.slice()),
      ),
  };
}

const byRate = (options: StripOption[]): Options =>
  options.sort((a, b) => b.value * a.girthMm - a.value * b.girthMm);

/** Takes all of the pieces or none. */
function takeFrom(left: number[], blanks: readonly number[]): boolean {
  for (let k = 0; k < blanks.length; k++) {
    const item = blanks[k] as number;
    left[item] = (left[item] as number) - 1;
    if ((left[item] as number) >= 0) continue;
    for (let back = k; back >= 0; back--)
      left[blanks[back] as number] = (left[blanks[back] as number] as number) + 1;
    return false;
  }
  return true;
}

interface Work {
  readonly table: StripTable;
  readonly values: readonly number[];
  readonly left: readonly number[];
}

/** Strips of one girth that share no piece, the most valuable first. */
function cuttable({ table, values, left }: Work, girth: Girth, length: number): Options {
  const { girthMm } = girth;
  if ((girth.fitting[length] as readonly number[]).every((item) => worthless({ table, values, left }, item)))
    return [];
  const fillings = girth.fillings[length] as readonly Filling[] | null;
  if (!fillings) return searched({ table, values, left }, girth, length);
  const rest = left.slice();
  const options: StripOption[] = [];
  for (;;) {
    let best: Filling | null = null;
    let most = 0;
    for (const filling of fillings) {
      if (copiesIn(filling, rest) === 0) continue;
      const value = worthOf(filling, values);
      if (value > most) {
        most = value;
        best = filling;
      }
    }
    if (!best) return options;
    const copies = copiesIn(best, rest);
    options.push({ girthMm, blanks: blanksOf(best), value: most, copies });
    for (const [item, count] of best.pieces) rest[item] = (rest[item] as number) - count * copies;
  }
}

/** The same where the fillings are too many to list. */
function searched({ table, values, left }: Work, girth: Girth, length: number): Options {
  const items = girth.fitting[length] as readonly number[];
  const search = stripSearch({ table, values, left }, items, length);
  const effort = { keep: 20, nodes: fewPieces.nodes, slack: 0 };
  return bestPatterns(search, 0, effort).patterns.map(({ counts, value }) => ({
    girthMm: girth.girthMm,
    blanks: counts.flatMap((count, k) => new Array<number>(count).fill(items[k] as number)),
    value,
    copies: 1,
  }));
}

function stripSearch({ table, values, left }: Work, items: readonly number[], length: number) {
  const pieces = alongStrip(
    table.sizes,
    items,
    (item) => left[item] as number,
    (item) => values[item] as number,
  );
  return patternSearch(pieces, table.lengths[length] as number, axisRule(table.shear), fewPieces.buckets);
}

/** Fillings in order of value, each as often as its own pieces allow, until they hold all the girth's pieces are worth together. */
function atMost(work: Work, girth: Girth, length: number, widths: number): Options {
  const { table, values, left } = work;
  const { girthMm } = girth;
  const items = (girth.fitting[length] as readonly number[]).filter((item) => !worthless(work, item));
  if (items.length === 0) return [];
  const all = items.reduce((sum, item) => sum + (left[item] as number) * (values[item] as number), 0);
  const fillings = girth.fillings[length] as readonly Filling[] | null;
  let room = Math.floor((widths * table.widestMm + lengthTolerance) / girthMm);
  if (!fillings) {
    const { bound } = bestPatterns(stripSearch(work, items, length), 0, {
      keep: 1,
      nodes: fewPieces.nodes,
      slack: 0,
    });
    return [{ girthMm, blanks: [], value: bound, copies: Math.min(room, Math.ceil(all / bound - 1e-9)) }];
  }
  const ordered = fillings
    .map((filling) => ({ filling, value: worthOf(filling, values), copies: copiesIn(filling, left) }))
    .filter((one) => one.copies > 0 && one.value > 0)
    .sort((a, b) => b.value - a.value);
  const options: StripOption[] = [];
  let worth = 0;
  for (const { filling, value, copies } of ordered) {
    if (room <= 0 || worth >= all - 1e-9) break;
    const times = Math.min(copies, room, Math.ceil((all - worth) / value - 1e-9));
    options.push({ girthMm, blanks: blanksOf(filling), value, copies: times });
    worth += times * value;
    room -= times;
  }
  return options;
}

const worthless = ({ values, left }: Work, item: number): boolean =>
  (left[item] as number) <= 0 || (values[item] as number) <= 0;

function worthOf({ pieces, whole }: Filling, values: readonly number[]): number {
  let value = 0;
  for (const [item, count] of pieces) value += count * (values[item] as number);
  return whole ? value : value * crosscutWorth;
}

function copiesIn({ pieces }: Filling, left: readonly number[]): number {
  let copies = Infinity;
  for (const [item, count] of pieces) copies = Math.min(copies, Math.floor((left[item] as number) / count));
  return copies;
}

const blanksOf = ({ pieces }: Filling): number[] =>
  pieces.flatMap(([item, count]) => new Array<number>(count).fill(item));
