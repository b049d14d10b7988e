import type { Column, Cover, Peak } from './cover.ts';
import { piecesOf, type SheetLayout } from './layout.ts';
import { lengthTolerance } from './knapsack.ts';
import { commonUnit, leastByRate } from './one-dimension.ts';
import { panelCover, type Cut } from './panel-cover.ts';
import { hundredth, type BlankSize, type RunInput, type ShearLimits, type Stock } from './run.ts';
import { pricePanels } from './sheet-pricing.ts';
import { stripChoice } from './strip-choice.ts';
import { stripTable } from './strip-table.ts';

/** Columns from one pricing, shared out to the stocks: of each stock the later ones from the pieces the earlier leave. */
const columnsKept = 12;
const fewestOfStock = 3;

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
  const all = [...new Set(lengths.flat())].sort((a, b) => b - a);
  const table = stripTable(sizes, run.shear, widestMm, all);
  const places = lengths.map((own) => own.map((length) => all.indexOf(length)));
  const cuts = run.stock.flatMap((stock, at) =>
    cutsFrom(stock, lengths[at] as number[], places[at] as number[]).map((cut): Cut => ({
      ...cut,
      stock: at,
      widthMm: hundredth(stock.widthMm - stock.sideTrimMm),
    })),
  );
  const whole: Cover<SheetLayout> = {
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
    missing: sizes.map(() => 1000 * Math.max(1, ...costs)),
    price(values, wanted, duals, effort, without) {
      const choice = stripChoice(table, values, wanted);
      const usual = Math.max(fewestOfStock, Math.round(columnsKept / cuts.length));
      const keep = without ? 1 : usual;
      const columns: Column<SheetLayout>[] = [];
      const peaks: Peak[] = [];
      for (const { stock: at, use, cost, panels, room } of cuts) {
        if (without?.has(at)) continue;
        const stock = run.stock[at] as Stock;
        const least = duals ? cost + (duals[at] ?? 0) * use + 1e-7 * Math.max(1, cost) : 0;
        const bench = { table, stock, panels, room, keep, effort };
        const { layouts, bound } = pricePanels(bench, choice, least);
        for (const layout of layouts)
          columns.push({ stock: at, use, cost, pieces: piecesOf(layout), layout });
        peaks.push({ stock: at, use, cost, bound });
      }
      return { columns, peaks };
    },
  };
  return { ...whole, parts: panelCover(whole, table, cuts) };
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
function cutsFrom(stock: Stock, lengths: readonly number[], places: readonly number[]) {
  if (stock.kind === 'sheet') {
    return [{ use: 1, cost: stock.costCents, panels: places, room: stock.lengthMm - stock.endTrimMm }];
  }
  return lengths.map((length, k) => {
    const use = length + stock.endTrimMm;
    const panels = [places[k] as number];
    return { use, cost: coilCost(stock.centsPerMetre, use), panels, room: length };
  });
}
