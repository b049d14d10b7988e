import { axisRule } from './axis.ts';
import type { Column, Cover, Effort, Peak } from './cover.ts';
import { bestPattern, fewPieces, lengthTolerance, type AxisRule, type PatternEffort } from './knapsack.ts';
import { commonUnit, leastByRate } from './one-dimension.ts';
import type { BlankSize, RunInput, ShearLimits, Stock } from './run.ts';
import { stripChoice, type StripOption, type StripChoice } from './strip-choice.ts';

/**
 * How one sheet is cut, guillotine cuts only: crosscut to panels, each panel ripped to strips by girth, each strip
 * crosscut to lengths. A panel as long as the sheet is the way round where the strips come first.
 */
export interface SheetLayout {
  readonly panels: readonly Panel[];
}
export interface Panel {
  readonly lengthMm: number;
  readonly strips: readonly Strip[];
}
export interface Strip {
  readonly girthMm: number;
  /** Indices of blank sizes, along the strip. */
  readonly blanks: readonly number[];
}

/** Columns from one pricing of one stock, the later ones from the pieces the earlier leave. */
const columnsKept = 3;
const quickRip: PatternEffort = { buckets: 200, nodes: 300 };
const exactRip: PatternEffort = { buckets: 1500, nodes: 50_000 };

/** Lengths a panel may have: each blank length that the shear allows, and the whole sheet's where it can be ripped whole. */
function panelLengths(stock: Stock, sizes: readonly BlankSize[], shear: ShearLimits): number[] {
  const longest = stock.lengthMm === null ? Infinity : stock.lengthMm - stock.endTrimMm;
  const crosscut = stock.kind === 'coil' || stock.widthMm <= shear.lengthMm;
  const lengths = new Set(crosscut ? sizes.map((size) => size.lengthMm) : []);
  if (stock.kind === 'sheet' && (crosscut || stock.endTrimMm === 0)) lengths.add(longest);
  return [...lengths]
    .filter((length) => length <= Math.min(longest, shear.lengthMm) + lengthTolerance)
    .sort((a, b) => b - a);
}

/** The run as a cover: a column is one sheet, or one panel off a coil. */
export function coverOfRun(run: RunInput, sizes: readonly BlankSize[]): Cover<SheetLayout> {
  const lengths = run.stock.map((stock) => panelLengths(stock, sizes, run.shear));
  const widestMm = Math.max(0, ...run.stock.map((stock) => stock.widthMm - stock.sideTrimMm));
  const costs = run.stock.flatMap((stock, at) =>
    stock.kind === 'sheet'
      ? [stock.costCents]
      : (lengths[at] as number[]).map((length) => coilCost(stock.centsPerMetre, length + stock.endTrimMm)),
  );
  return {
    demand: sizes.map((size) => size.quantity),
    stock: run.stock.map((stock) => ({
      available: stock.kind === 'sheet' ? stock.available : stock.lengthMm,
    })),
    sizes: sizes.map((size) => size.girthMm * size.lengthMm),
    costUnit: commonUnit(costs),
    floor: leastByRate(
      sizes.reduce((sum, size) => sum + size.girthMm * size.lengthMm * size.quantity, 0),
      run.stock.map((stock, at) => areaRate(stock, lengths[at] as number[])),
    ),
    dearest: Math.max(1, ...costs),
    price(values, wanted, duals, effort) {
      const columns: Column<SheetLayout>[] = [];
      const peaks: Peak[] = [];
      const choice = stripChoice(sizes, run.shear, widestMm, values, wanted);
      for (const [at, stock] of run.stock.entries()) {
        const dual = duals?.[at] ?? 0;
        for (const { use, cost, panels, room } of cutsFrom(stock, lengths[at] as number[])) {
          const least = duals ? cost + dual * use + 1e-7 * Math.max(1, cost) : 0;
          const bench = { stock, shear: run.shear, panels, room, keep: columnsKept, effort };
          const priced = pricePanels(bench, choice, least);
          columns.push(
            ...priced.layouts.map((layout) => ({ stock: at, use, cost, pieces: piecesOf(layout), layout })),
          );
          peaks.push({ stock: at, use, cost, bound: priced.bound });
        }
      }
      return { columns, peaks };
    },
  };
}

const coilCost = (centsPerMetre: number, lengthMm: number): number =>
  Math.round((centsPerMetre * lengthMm) / 1000);

/** Cost of a usable square millimetre, trim taken off, and how many there are. */
function areaRate(stock: Stock, lengths: readonly number[]): { rate: number; room: number | null } {
  const across = stock.widthMm - stock.sideTrimMm;
  if (stock.kind === 'coil') {
    const { centsPerMetre, endTrimMm, lengthMm } = stock;
    const rates = lengths.map((length) => coilCost(centsPerMetre, length + endTrimMm) / (length * across));
    return { rate: Math.min(Infinity, ...rates), room: lengthMm === null ? null : lengthMm * across };
  }
  const area = (stock.lengthMm - stock.endTrimMm) * across;
  return { rate: stock.costCents / area, room: stock.available === null ? null : stock.available * area };
}

/** What one use of a stock may be: the sheet, or a length off the coil that makes one panel. */
function cutsFrom(stock: Stock, lengths: readonly number[]) {
  if (stock.kind === 'sheet') {
    return [{ use: 1, cost: stock.costCents, panels: lengths, room: stock.lengthMm - stock.endTrimMm }];
  }
  return lengths.map((length) => {
    const use = length + stock.endTrimMm;
    return { use, cost: coilCost(stock.centsPerMetre, use), panels: [length], room: length };
  });
}

/** One sheet to be laid out. */
interface Bench {
  readonly stock: Stock;
  readonly shear: ShearLimits;
  /** Panel lengths to choose from, longest first. */
  readonly panels: readonly number[];
  /** Length to divide into panels. */
  readonly room: number;
  /** Layouts to return, at most. */
  readonly keep: number;
  readonly effort: Effort;
}

/** Layouts worth more than `least`, none asking for a piece that is not wanted; and a bound on any layout's worth. */
function pricePanels(
  bench: Bench,
  all: StripChoice,
  least: number,
): { layouts: SheetLayout[]; bound: number } {
  const first = bestPanels(bench, bench.panels, bench.room, all, bench.effort);
  const layouts: SheetLayout[] = [];
  const choice = all.copy();
  while (first.bound > least && layouts.length < bench.keep) {
    const isFirst = layouts.length === 0;
    const layout = layOut(bench, choice, isFirst ? first.counts : null, isFirst ? bench.effort : 'quick');
    if (choice.worth(layout) <= least) break;
    layouts.push(layout);
  }
  return { layouts, bound: Math.max(least, first.bound) };
}

/** Pieces of a layout as [item, count], items ascending. */
export function piecesOf(layout: SheetLayout): [number, number][] {
  const counts = new Map<number, number>();
  for (const panel of layout.panels) {
    for (const strip of panel.strips)
      for (const item of strip.blanks) counts.set(item, (counts.get(item) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => a[0] - b[0]);
}

/** The best way to fill a width with strips; copies beyond the pieces wanted are left out only by `layOut`. */
function bestRip(
  strips: readonly StripOption[],
  room: number,
  rule: AxisRule,
  effort: Effort,
): { counts: readonly number[]; bound: number } {
  const kinds = strips.map((strip) => ({ size: strip.girthMm, value: strip.value, copies: strip.copies }));
  return bestPattern(kinds, room, rule, effort === 'quick' ? quickRip : exactRip);
}

const ripRoom = ({ stock }: Bench): number => stock.widthMm - stock.sideTrimMm;

/** No panels of this length, `times` of them side by side, yield more. */
function ripBound(
  bench: Bench,
  choice: StripChoice,
  lengthMm: number,
  times: number,
  effort: Effort,
): number {
  const room = ripRoom(bench) * times;
  return choice.once(
    `${lengthMm}/${room}/${effort}`,
    () => bestRip(choice.strips(lengthMm, times), room, axisRule(bench.shear), effort).bound,
  );
}

/** The same from a glance: strips by value for their girth, the last one in part. */
function glance(bench: Bench, choice: StripChoice, lengthMm: number): number {
  const room = ripRoom(bench);
  return choice.once(`${lengthMm}/${room}`, () => {
    let left = room;
    let value = 0;
    for (const strip of choice
      .strips(lengthMm, 1)
      .toSorted((a, b) => b.value / b.girthMm - a.value / a.girthMm)) {
      const strips = Math.min(strip.copies, left / strip.girthMm);
      value += strips * strip.value;
      left -= strips * strip.girthMm;
      if (left <= 0) break;
    }
    return value;
  });
}

/**
 * Which panel lengths a sheet is best crosscut to, and a bound on what they yield. Two panels of one length share the
 * pieces wanted: together they yield no more than one panel of twice the width would. Lengths are looked into only when
 * at a glance they belong to the best choice.
 */
function bestPanels(
  bench: Bench,
  lengths: readonly number[],
  room: number,
  choice: StripChoice,
  effort: Effort,
) {
  const lookedInto = new Set<number>();
  for (;;) {
    const kinds = lengths.flatMap((size, at) => {
      const known = lookedInto.has(at);
      const value = known ? ripBound(bench, choice, size, 1, effort) : glance(bench, choice, size);
      const most = Math.floor((room + lengthTolerance) / size);
      if (most !== 2 || effort === 'quick' || !known) return [{ at, size, value, copies: most }];
      const second = Math.max(0, Math.min(value, ripBound(bench, choice, size, 2, effort) - value));
      return [value, second].map((one) => ({ at, size, value: one, copies: 1 }));
    });
    const { counts, bound } = bestPattern(kinds, room, axisRule(bench.shear), fewPieces);
    const panels = lengths.map((_, at) =>
      counts.reduce((sum, count, k) => sum + (kinds[k]?.at === at ? count : 0), 0),
    );
    const unknown = panels.flatMap((count, at) => (count > 0 && !lookedInto.has(at) ? [at] : []));
    if (unknown.length === 0) return { counts: panels, bound };
    for (const at of unknown) lookedInto.add(at);
  }
}

/** Lays out one sheet panel by panel, strip by strip, taking its pieces off what is wanted, so that none is laid too often. */
function layOut(
  bench: Bench,
  choice: StripChoice,
  first: readonly number[] | null,
  effort: Effort,
): SheetLayout {
  const panels: Panel[] = [];
  let room = bench.room;
  let usable = bench.panels;
  for (let counts = first; ; counts = null) {
    const chosen = counts ?? bestPanels(bench, usable, room, choice, 'quick').counts;
    const before = panels.length;
    usable.forEach((lengthMm, k) => {
      for (let n = 0; n < (chosen[k] ?? 0); n++) {
        const strips = ripPanel(bench, choice, lengthMm, effort);
        if (strips.length === 0) return;
        panels.push({ lengthMm, strips });
        room = Math.round((room - lengthMm) * 100) / 100;
      }
    });
    const max = axisRule(bench.shear).wideAbove;
    const wide = panels.some((panel) => panel.lengthMm > max);
    usable = usable.filter((length) => length <= room + lengthTolerance && !(wide && length > max));
    if (panels.length === before || usable.length === 0) return { panels };
  }
}

function ripPanel(bench: Bench, choice: StripChoice, length: number, effort: Effort): Strip[] {
  const strips: Strip[] = [];
  let rule = axisRule(bench.shear);
  let room = ripRoom(bench);
  for (;;) {
    const hasWide = strips.some((strip) => strip.girthMm > rule.wideAbove);
    const best = choice
      .strips(length, 1)
      .filter(
        (strip) =>
          strip.blanks.length > 0 &&
          strip.girthMm <= room + lengthTolerance &&
          !(hasWide && strip.girthMm > rule.wideAbove),
      );
    const { counts } = bestRip(best, room, rule, effort);
    const before = strips.length;
    best.forEach(({ girthMm, blanks }, k) => {
      for (let n = 0; n < (counts[k] ?? 0) && choice.take(blanks); n++) {
        strips.push({ girthMm, blanks });
        room = Math.round((room - girthMm) * 100) / 100;
      }
    });
    if (strips.length === before) return strips;
    if (strips.some((strip) => strip.girthMm + lengthTolerance >= bench.shear.minStripMm))
      rule = { ...rule, narrowBelow: 0 };
  }
}
