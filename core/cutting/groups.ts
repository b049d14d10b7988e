import type { Use } from './cover.ts';
import type { BlankSize, RunInput, Stock } from './run.ts';
import { byDue } from './run.ts';
import { piecesOf, type Panel, type SheetLayout } from './layout.ts';

/** Sheets cut alike, before they are drawn. */
export interface Group {
  readonly id: string;
  readonly stock: Stock;
  readonly count: number;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly costCents: number;
  readonly layout: SheetLayout;
  /** Ripped off each whole sheet before it is crosscut, side trim included; 0: nothing, each panel is trimmed by itself. */
  readonly trimFirstMm: number;
  /** The most urgent line that takes a blank of it. */
  readonly due: number | null;
}

/**
 * The uses of the solution as groups of like sheets: pieces beyond quantity and overrun are left out (their place stays
 * uncut), sheets that nothing is left on are not used, and the group that serves the most urgent line comes first.
 */
export function groupsOf(
  run: RunInput,
  sizes: readonly BlankSize[],
  uses: readonly Use<SheetLayout>[],
): Group[] {
  const left = sizes.map((size) => size.quantity + size.overrun);
  const asked = sizes.map((size) => size.quantity);
  const byLayout = new Map<string, { use: Use<SheetLayout>; layout: SheetLayout; count: number }>();
  for (const use of byFullness(uses)) {
    for (let n = 0; n < use.count; n++) {
      // The overrun may fill a sheet that is cut anyway; it is never worth a sheet of its own.
      if (!use.column.pieces.some(([item]) => (asked[item] as number) > 0)) continue;
      const layout = withoutExcess(use.column.layout, left);
      for (const [item, count] of piecesOf(layout)) asked[item] = (asked[item] as number) - count;
      const key = `${use.column.stock} ${JSON.stringify(layout)}`;
      const known = byLayout.get(key) ?? { use, layout, count: 0 };
      byLayout.set(key, { ...known, count: known.count + 1 });
    }
  }
  const groups = [...byLayout.values()].map(({ use, layout, count }): Omit<Group, 'id'> => {
    const stock = run.stock[use.column.stock] as Stock;
    const lengthMm = stock.kind === 'sheet' ? stock.lengthMm : use.column.use;
    const dues = piecesOf(layout).map(([item]) => (sizes[item] as BlankSize).lines[0]?.due ?? null);
    return {
      stock,
      count,
      widthMm: stock.widthMm,
      lengthMm,
      costCents: use.column.cost,
      layout,
      trimFirstMm: 0,
      due: dues.sort(byDue)[0] ?? null,
    };
  });
  return groups.sort((a, b) => byDue(a.due, b.due)).map((group, at) => ({ id: letters(at), ...group }));
}

/** Full patterns first, so that what is too much is left out of one sheet at the end and not of one here and there. */
const byFullness = (uses: readonly Use<SheetLayout>[]): Use<SheetLayout>[] =>
  uses.toSorted((a, b) => b.count - a.count);

/** A layout less the pieces no longer wanted; takes the others off `left`. Strips and panels in a fixed order. */
function withoutExcess(layout: SheetLayout, left: number[]): SheetLayout {
  const panels: Panel[] = [];
  for (const panel of layout.panels) {
    const strips = panel.strips.map(({ girthMm, blanks }) => ({
      girthMm,
      blanks: blanks.filter((item) => {
        const wanted = (left[item] as number) > 0;
        if (wanted) left[item] = (left[item] as number) - 1;
        return wanted;
      }),
    }));
    const kept = strips.filter((strip) => strip.blanks.length > 0);
    kept.sort((a, b) => b.girthMm - a.girthMm || byText(a.blanks.join(), b.blanks.join()));
    if (kept.length > 0) panels.push({ lengthMm: panel.lengthMm, strips: kept });
  }
  const key = (panel: Panel): string => JSON.stringify(panel.strips);
  panels.sort((a, b) => b.lengthMm - a.lengthMm || byText(key(a), key(b)));
  return { panels };
}

/** By code points, the same on every machine. */
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** 0 → "A", 25 → "Z", 26 → "AA". */
export function letters(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : letters(Math.floor(at / 26) - 1) + last;
}
