import type { Cover, Use } from './cover.ts';
import { fillByValue } from './fill.ts';
import type { SheetLayout } from './layout.ts';
import { wholeOf, type Rest } from './relaxation.ts';
import type { BlankSize, RunInput } from './run.ts';
import { coverOfRun } from './sheet-patterns.ts';

export type Uses = readonly Use<SheetLayout>[];

/** Sheets of one size alone are laid first where they are used at least so well as the best sheet of the run can be. */
const USED_WELL = 0.9;

/** Sheets that use nearly as much as the best of their line belong to the full ones. */
const NEARLY_FULL = 0.98;

/**
 * Ways to cut a run that a shear lead would try, since each has few settings: line by line, full sheets of one size and
 * only what is left of each mixed, everything mixed. Common practice, no source.
 * Yields one after the other; those that the stock does not reach for are left out.
 */
export function* waysToCut(cover: Cover<SheetLayout>): Generator<Uses> {
  yield* offered(fullSheetsFirst(cover));
  yield* offered(lineByLine(cover)[0] ?? null);
  yield* offered(fillByValue(cover, wholeOf(cover), cover.sizes));
}

/** The run with no offcut too narrow to be held: nothing is left of a width, or enough to need no cut to a line. */
export const coverWithoutSlivers = (run: RunInput, sizes: readonly BlankSize[]): Cover<SheetLayout> =>
  coverOfRun({ ...run, shear: { ...run.shear, offcutFromMm: run.shear.minStripMm } }, sizes);

function* offered(uses: Uses | null): Generator<Uses> {
  if (uses && uses.length > 0) yield uses;
}

/** Each size cut alone, one after the other: a first answer, and the cost that no plan may exceed. */
export function lineByLine(cover: Cover<SheetLayout>): Uses[] {
  const available = cover.stock.map((one) => one.available);
  const uses: Use<SheetLayout>[] = [];
  for (let item = 0; item < cover.demand.length; item++) {
    const filled = fillByValue(cover, { wanted: onlyItem(cover, item), available }, cover.sizes);
    if (!filled) return [];
    for (const { column, count } of filled) takeStock(available, column, count);
    uses.push(...filled);
  }
  return [uses];
}

/** Full sheets of each size alone, what they leave of all sizes together. */
function fullSheetsFirst(cover: Cover<SheetLayout>): Uses | null {
  const wanted = cover.demand.slice();
  const available = cover.stock.map((one) => one.available);
  const uses: Use<SheetLayout>[] = [];
  const area = cover.demand.reduce((sum, pieces, item) => sum + pieces * (cover.sizes[item] as number), 0);
  const best = cover.floor > 0 ? area / cover.floor : Infinity;
  const use = ({ column }: Use<SheetLayout>): number =>
    column.pieces.reduce((sum, [item, count]) => sum + count * (cover.sizes[item] as number), 0) /
    Math.max(column.cost, 1e-9);
  for (let item = 0; item < cover.demand.length; item++) {
    const alone = fillByValue(cover, { wanted: onlyItem(cover, item), available }, cover.sizes) ?? [];
    const fullest = Math.max(0, ...alone.map(use));
    if (Number.isFinite(best) && fullest < USED_WELL * best) continue;
    for (const one of alone) {
      if (use(one) < NEARLY_FULL * fullest) continue;
      const { column, count } = one;
      const each = column.pieces[0]?.[1] ?? 1;
      const full = Math.min(count, Math.floor((wanted[item] as number) / each));
      if (full < 1) continue;
      uses.push({ column, count: full });
      wanted[item] = (wanted[item] as number) - full * each;
      takeStock(available, column, full);
    }
  }
  const rest: Rest = { wanted, available };
  if (wanted.every((pieces) => pieces <= 0)) return uses;
  const mixed = fillByValue(cover, rest, cover.sizes);
  return mixed && [...uses, ...mixed];
}

const onlyItem = ({ demand }: Cover, item: number): number[] =>
  demand.map((pieces, at) => (at === item ? pieces : 0));

function takeStock(available: (number | null)[], column: Use['column'], count: number): void {
  const left = available[column.stock];
  if (left != null) available[column.stock] = left - column.use * count;
}
