import { axisRule } from './axis.ts';
import type { Column, Cover, Effort, PartCover, Use } from './cover.ts';
import { bestPattern, fewPieces } from './knapsack.ts';
import { type Panel, type SheetLayout, piecesOf } from './layout.ts';
import { atAGlance, ripPanel } from './sheet-pricing.ts';
import { stripChoice } from './strip-choice.ts';
import type { StripTable } from './strip-table.ts';

/** One way to take panels: from a sheet, or a length off a coil. */
export interface Cut {
  /** Index into the cover's stock. */
  readonly stock: number;
  readonly use: number;
  readonly cost: number;
  /** Width to rip, and length to crosscut, trim taken off. */
  readonly widthMm: number;
  readonly room: number;
  /** Panel lengths to choose from, longest first, by their place in the table. */
  readonly panels: readonly number[];
}

/** A panel ripped to strips, or a sheet crosscut to panels not filled yet. */
export type Part = { readonly panel: Panel } | { readonly panels: readonly PanelCount[] };
type PanelCount = readonly [kind: number, count: number];

/** Panels of one size are alike, whichever sheet they come from. */
interface PanelKind {
  readonly widthMm: number;
  readonly length: number;
}

/** Panels of one kind from one pricing, at most: each from the pieces that the ones before leave. */
const panelsKept = 6;

/** What the parts are made from: the ways to take panels, their kinds, and the first item that counts panels. */
interface Parts {
  readonly table: StripTable;
  readonly cuts: readonly Cut[];
  readonly kinds: readonly PanelKind[];
  /** By cut, the kind of each panel length that it may yield. */
  readonly kindsOfCut: readonly (readonly number[])[];
  readonly from: number;
}

/**
 * The same cover in smaller parts: panels filled on their own, sheets crosscut to panels on their own, and for each kind of
 * panel a balance of those cut and those filled. There are far fewer panels than sheets, and any of them go together.
 * Source of the idea: H. Dyckhoff, Operations Research 29 (1981) 1092-1104 (one cut at a time, with balances).
 */
export function panelCover(
  whole: Cover<SheetLayout>,
  table: StripTable,
  cuts: readonly Cut[],
): PartCover<SheetLayout, Part> {
  const kinds = kindsOf(cuts);
  const from = whole.demand.length;
  const kindsOfCut = cuts.map((cut) => cut.panels.map((length) => kindAt(kinds, cut.widthMm, length)));
  const parts: Parts = { table, cuts, kinds, kindsOfCut, from };
  const sizes = [
    ...whole.sizes,
    ...kinds.map(({ widthMm, length }) => widthMm * (table.lengths[length] as number)),
  ];
  const dearest = Math.max(1, ...cuts.map(({ cost }) => cost));
  const { stock, costUnit, floor } = whole;
  const cover: Cover<Part> = {
    ...{ stock, costUnit, floor },
    demand: [...whole.demand, ...kinds.map(() => 0)],
    sizes,
    missing: sizes.map(() => 2 * dearest),
    balancesFrom: from,
    price: (values, wanted, stockDuals, effort) => ({
      columns: [...priceCuts(parts, values, stockDuals ?? []), ...pricePanels(parts, values, wanted, effort)],
      peaks: [{ stock: 0, use: 1, cost: 0, bound: Infinity }],
    }),
  };
  return { cover, split: (uses) => split(parts, uses), join: (uses) => joined(uses, from) };
}

const kindAt = (kinds: readonly PanelKind[], widthMm: number, length: number): number =>
  kinds.findIndex((kind) => kind.widthMm === widthMm && kind.length === length);

/** A panel filled: its pieces, for one panel of its kind. */
const filled = ({ from }: Parts, kind: number, panel: Panel): Column<Part> => ({
  ...{ stock: 0, use: 0, cost: 0, layout: { panel } },
  pieces: [...piecesOf({ panels: [panel] }), [from + kind, -1]],
});

/** A sheet crosscut: panels to be filled, for its cost. */
const crosscut = (
  { from }: Parts,
  { stock, use, cost }: Cut,
  panels: readonly PanelCount[],
): Column<Part> => ({
  ...{ stock, use, cost, layout: { panels } },
  pieces: panels.map(([kind, count]) => [from + kind, count]),
});

/** Panels worth more, filled, than one of their kind costs. */
function pricePanels(
  parts: Parts,
  values: readonly number[],
  wanted: readonly number[],
  effort: Effort,
): Column<Part>[] {
  const { table, kinds, from } = parts;
  const all = stripChoice(table, values.slice(0, from), wanted.slice(0, from));
  return kinds.flatMap(({ widthMm, length }, kind) => {
    const least = (values[from + kind] as number) + 1e-6;
    if (atAGlance(all.strips(length), widthMm) <= least) return [];
    const choice = all.copy();
    const columns: Column<Part>[] = [];
    while (columns.length < panelsKept) {
      const strips = ripPanel(table, widthMm, choice, length, effort);
      const panel = { lengthMm: table.lengths[length] as number, strips };
      if (all.worth({ panels: [panel] }) <= least) break;
      columns.push(filled(parts, kind, panel));
    }
    return columns;
  });
}

/** Crosscuts whose panels are worth more than the sheet. */
function priceCuts(parts: Parts, values: readonly number[], stockDuals: readonly number[]): Column<Part>[] {
  const { table, cuts, kinds, kindsOfCut, from } = parts;
  return cuts.flatMap((cut, n) => {
    const own = kindsOfCut[n] as readonly number[];
    const pieces = own.map((kind) => ({
      size: table.lengths[(kinds[kind] as PanelKind).length] as number,
      value: values[from + kind] as number,
      copies: 1000,
    }));
    const { counts, bound } = bestPattern(pieces, cut.room, axisRule(table.shear), fewPieces);
    if (bound <= cut.cost + (stockDuals[cut.stock] ?? 0) * cut.use + 1e-6) return [];
    return [crosscut(parts, cut, counted(own, counts))];
  });
}

/** Whole sheets as their crosscuts and their filled panels. */
function split(parts: Parts, uses: readonly Use<SheetLayout>[]): Use<Part>[] {
  const { table, cuts, kinds } = parts;
  return uses.flatMap(({ column, count }) => {
    const cut = cuts.find((one) => one.stock === column.stock && one.use === column.use) as Cut;
    const { panels } = column.layout;
    const own = panels.map(({ lengthMm }) => kindAt(kinds, cut.widthMm, table.lengths.indexOf(lengthMm)));
    const one = counted(
      own,
      own.map(() => 1),
    );
    return [
      { column: crosscut(parts, cut, one), count },
      ...panels.map((panel, k) => ({ column: filled(parts, own[k] as number, panel), count })),
    ];
  });
}

function kindsOf(cuts: readonly Cut[]): PanelKind[] {
  const kinds = cuts.flatMap(({ widthMm, panels }) => panels.map((length) => ({ widthMm, length })));
  return [...new Map(kinds.map((kind) => [`${kind.widthMm}/${kind.length}`, kind])).values()];
}

/** Kinds with their counts, ascending, those that do not occur left out. */
function counted(kinds: readonly number[], counts: readonly number[]): PanelCount[] {
  const sum = new Map<number, number>();
  kinds.forEach((kind, k) => sum.set(kind, (sum.get(kind) ?? 0) + (counts[k] ?? 0)));
  return [...sum].filter(([, count]) => count > 0).sort((a, b) => a[0] - b[0]);
}

/** Panels laid on the sheets crosscut for them; a place that no panel needs stays empty, and so does a sheet. */
function joined(uses: readonly Use<Part>[], from: number): Use<SheetLayout>[] {
  const piles = new Map<number, Panel[]>();
  for (const { column, count } of uses) {
    const { layout } = column;
    if (!('panel' in layout)) continue;
    const kind = (column.pieces.at(-1) as readonly [number, number])[0] - from;
    const pile = piles.get(kind) ?? [];
    piles.set(kind, [...pile, ...new Array<Panel>(count).fill(layout.panel)]);
  }
  return uses.flatMap(({ column, count }) => {
    const { layout, stock, use, cost } = column;
    if ('panel' in layout) return [];
    return Array.from({ length: count }, () => {
      const panels = layout.panels.flatMap(([kind, times]) => piles.get(kind)?.splice(0, times) ?? []);
      const sheet = { panels };
      return { column: { stock, use, cost, pieces: piecesOf(sheet), layout: sheet }, count: 1 };
    }).filter((one) => one.column.pieces.length > 0);
  });
}
