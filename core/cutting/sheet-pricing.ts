import { axisRule } from './axis.ts';
import type { Effort } from './cover.ts';
import { bestPattern, fewPieces, lengthTolerance, type AxisRule, type PatternEffort } from './knapsack.ts';
import type { Stock } from './run.ts';
import type { Panel, SheetLayout, Strip } from './layout.ts';
import type { StripChoice, StripOption } from './strip-choice.ts';
import type { StripTable } from './strip-table.ts';

const quickRip: PatternEffort = { buckets: 140, finest: 1, nodes: 300 };
/** Widths for which strips are looked at when quick. */
const quickWidths = 4;
const exactRip: PatternEffort = { buckets: 4_000, finest: 0.1, nodes: 50_000 };

const sharingRounds = 12;
/** Share of the excess by which the values are changed in one round. */
const sharingPace = 0.6;

/** One sheet to be laid out. */
interface Bench {
  readonly table: StripTable;
  readonly stock: Stock;
  /** Panel lengths to choose from, longest first, by their place in the table. */
  readonly panels: readonly number[];
  /** Length to divide into panels. */
  readonly room: number;
  /** Layouts to return, at most. */
  readonly keep: number;
  readonly effort: Effort;
}

/**
 * Layouts worth more than `least`, none asking for a piece that is not wanted; and a bound on any layout's worth, which
 * only the exact effort can give.
 */
export function pricePanels(
  bench: Bench,
  all: StripChoice,
  least: number,
): { layouts: SheetLayout[]; bound: number } {
  const { effort } = bench;
  const first = bestPanels(bench, bench.panels, bench.room, all, effort);
  const layouts: SheetLayout[] = [];
  const choice = all.copy();
  while (first.bound > least && layouts.length < bench.keep) {
    const isFirst = layouts.length === 0;
    const layout = layOut(bench, choice, isFirst ? first.counts : null, isFirst ? effort : 'quick');
    if (choice.worth(layout) <= least) break;
    layouts.push(layout);
  }
  if (effort === 'quick') return { layouts, bound: Infinity };
  if (layouts.length > 0 || first.bound <= least) return { layouts, bound: Math.max(least, first.bound) };
  const { layout, bound } = sharedOut(bench, all, first, least);
  return { layouts: layout ? [layout] : [], bound: Math.max(least, bound) };
}

/**
 * The bound counts a piece once in every panel that could hold it. Where that hides whether any layout is worth more than
 * `least`, pieces counted more often than they are wanted are made worth less, so that the panels share them: what the
 * wanted pieces lost by that is added to the bound again.
 * Source: A. M. Geoffrion, Mathematical Programming Study 2 (1974) 82-114 (Lagrangean relaxation).
 */
function sharedOut(
  bench: Bench,
  all: StripChoice,
  first: BestPanels,
  least: number,
): { layout: SheetLayout | null; bound: number } {
  let { bound } = first;
  let panels = first;
  let choice = all;
  const less = new Map<number, number>();
  for (let round = 0; round < sharingRounds && bound > least; round++) {
    const used = usedIn(bench, choice, panels.counts);
    if (!lessen(all, less, used)) break;
    choice = all.cheaper(less);
    panels = bestPanels(bench, bench.panels, bench.room, choice, 'exact');
    const lost = [...less].reduce((sum, [item, by]) => sum + by * all.left(item), 0);
    bound = Math.min(bound, panels.bound + lost);
    for (const by of [all, choice]) {
      const layout = layOut(bench, by.copy(), panels.counts, 'exact');
      if (all.worth(layout) > least) return { layout, bound };
    }
  }
  return { layout: null, bound };
}

/** How often the panels of the bound count each piece. */
function usedIn(bench: Bench, choice: StripChoice, counts: readonly number[]): Map<number, number> {
  const used = new Map<number, number>();
  counts.forEach((times, at) => {
    if (times === 0) return;
    const strips = choice.most(bench.panels[at] as number, 1);
    const { counts: ripped } = bestRip(strips, ripRoom(bench), axisRule(bench.table.shear), 'exact');
    strips.forEach(({ blanks }, k) => {
      for (const item of blanks) used.set(item, (used.get(item) ?? 0) + times * (ripped[k] ?? 0));
    });
  });
  return used;
}

/** Takes value off pieces counted too often and gives some back to those not counted any more. @returns whether any was taken */
function lessen(all: StripChoice, less: Map<number, number>, used: ReadonlyMap<number, number>): boolean {
  let changed = false;
  for (const [item, by] of less) if (!used.has(item)) less.set(item, by * (1 - sharingPace));
  for (const [item, times] of used) {
    const over = 1 - all.left(item) / times;
    if (over <= 0) continue;
    const by = (less.get(item) ?? 0) + sharingPace * over * all.value(item);
    less.set(item, Math.min(by, all.value(item)));
    changed = true;
  }
  return changed;
}

/**
 * The best way to fill a width with strips, the most valuable for their girth first.
 * When quick, only strips enough for a few widths are tried.
 */
function bestRip(
  all: readonly StripOption[],
  room: number,
  rule: AxisRule,
  effort: Effort,
): { counts: readonly number[]; bound: number } {
  const strips = effort === 'quick' ? all.slice(0, enoughFor(all, quickWidths * room)) : all;
  const kinds = strips.map((strip) => ({ size: strip.girthMm, value: strip.value, copies: strip.copies }));
  return bestPattern(kinds, room, rule, effort === 'quick' ? quickRip : exactRip);
}

/** How many of the first strips fill this width. */
function enoughFor(strips: readonly StripOption[], width: number): number {
  let left = width;
  let count = 0;
  for (; count < strips.length && left > 0; count++) {
    const { girthMm, copies } = strips[count] as StripOption;
    left -= girthMm * copies;
  }
  return count;
}

const ripRoom = ({ stock }: Pick<Bench, 'stock'>): number => stock.widthMm - stock.sideTrimMm;

/** What strips a panel may be ripped to: those that can be cut, or for the bound those that none can be worth more than. */
const stripsFor = (
  choice: StripChoice,
  length: number,
  times: number,
  effort: Effort,
): readonly StripOption[] => (effort === 'quick' ? choice.strips(length) : choice.most(length, times));

/** What the best panel of this length yields, or `times` of them side by side: when exact, none yields more. */
function ripWorth(bench: Bench, choice: StripChoice, length: number, times: number, effort: Effort): number {
  const room = ripRoom(bench) * times;
  return choice.once(
    `${length}/${room}/${effort}`,
    () => bestRip(stripsFor(choice, length, times, effort), room, axisRule(bench.table.shear), effort).bound,
  );
}

/** The same from a glance: strips by value for their girth, the last one in part. */
function glance(bench: Bench, choice: StripChoice, length: number, times: number, effort: Effort): number {
  const room = ripRoom(bench) * times;
  return choice.once(`${length}/${room}/${effort}/glance`, () =>
    atAGlance(stripsFor(choice, length, times, effort), room),
  );
}

/** What strips, the most valuable for their girth first, yield on this width when the last one may be cut in part. */
export function atAGlance(strips: readonly StripOption[], room: number): number {
  let left = room;
  let value = 0;
  for (const strip of strips) {
    const taken = Math.min(strip.copies, left / strip.girthMm);
    value += taken * strip.value;
    left -= taken * strip.girthMm;
    if (left <= 0) break;
  }
  return value;
}

interface BestPanels {
  /** By the bench's panels. */
  readonly counts: readonly number[];
  readonly bound: number;
}

/**
 * Which panel lengths a sheet is best crosscut to, and (when exact) a bound on what they yield. Two panels of one length
 * share the pieces wanted: together they yield no more than one panel of twice the width would. Lengths are looked into
 * only when at a glance they belong to the best choice.
 */
function bestPanels(
  bench: Bench,
  panels: readonly number[],
  room: number,
  choice: StripChoice,
  effort: Effort,
): BestPanels {
  const { lengths, shear } = bench.table;
  const lookedInto = new Set<number>();
  for (;;) {
    const kinds = panels.flatMap((length, at) => {
      const size = lengths[length] as number;
      const known = lookedInto.has(at);
      const look = known ? ripWorth : glance;
      const value = look(bench, choice, length, 1, effort);
      if (value <= 0) return [];
      const most = Math.floor((room + lengthTolerance) / size);
      if (most !== 2 || !known) return [{ at, size, value, copies: most }];
      const second = Math.max(0, Math.min(value, look(bench, choice, length, 2, effort) - value));
      return [value, second].map((one) => ({ at, size, value: one, copies: 1 }));
    });
    const { counts, bound } = bestPattern(kinds, room, axisRule(shear), fewPieces);
    const chosen = panels.map((_, at) =>
      counts.reduce((sum, count, k) => sum + (kinds[k]?.at === at ? count : 0), 0),
    );
    const unknown = chosen.flatMap((count, at) => (count > 0 && !lookedInto.has(at) ? [at] : []));
    if (unknown.length === 0) return { counts: chosen, bound };
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
  const { lengths, shear } = bench.table;
  const panels: Panel[] = [];
  let room = bench.room;
  let usable = bench.panels;
  for (let counts = first; ; counts = null) {
    const chosen = counts ?? bestPanels(bench, usable, room, choice, 'quick').counts;
    const before = panels.length;
    usable.forEach((length, k) => {
      const lengthMm = lengths[length] as number;
      for (let n = 0; n < (chosen[k] ?? 0); n++) {
        const strips = ripPanel(bench.table, ripRoom(bench), choice, length, effort);
        if (strips.length === 0) return;
        panels.push({ lengthMm, strips });
        room = Math.round((room - lengthMm) * 100) / 100;
      }
    });
    const max = axisRule(shear).wideAbove;
    const wide = panels.some((panel) => panel.lengthMm > max);
    usable = usable.filter((length) => {
      const lengthMm = lengths[length] as number;
      return lengthMm <= room + lengthTolerance && !(wide && lengthMm > max);
    });
    if (panels.length === before || usable.length === 0) return { panels };
  }
}

/** Rips one panel as wide as `room`, taking its pieces off what is wanted. */
export function ripPanel(
  { shear }: StripTable,
  widthMm: number,
  choice: StripChoice,
  length: number,
  effort: Effort,
): Strip[] {
  const strips: Strip[] = [];
  let rule = axisRule(shear);
  let room = widthMm;
  for (;;) {
    const hasWide = strips.some((strip) => strip.girthMm > rule.wideAbove);
    const best = choice
      .strips(length)
      .filter(({ girthMm }) => girthMm <= room + lengthTolerance && !(hasWide && girthMm > rule.wideAbove));
    const { counts } = bestRip(best, room, rule, effort);
    const before = strips.length;
    best.forEach(({ girthMm, blanks }, k) => {
      for (let n = 0; n < (counts[k] ?? 0) && choice.take(blanks); n++) {
        strips.push({ girthMm, blanks });
        room = Math.round((room - girthMm) * 100) / 100;
      }
    });
    if (strips.length === before) return strips;
    if (strips.some((strip) => strip.girthMm + lengthTolerance >= shear.minStripMm))
      rule = { ...rule, narrowBelow: 0 };
  }
}
