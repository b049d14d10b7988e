import type { CutPlan } from '../cutting/plan.ts';
import { lotOf, type Lot, type StockKnows } from '../material/lot.ts';
import { issue, type Issue } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { takenListFor } from './cut-lists.ts';
import { lineLotWords } from './line-lot.ts';
import type { ShearRun } from './runs.ts';
import { stockFor, type FreeStock } from './run-stock.ts';

/** Whether no lot on hand suffices for a run: its sheets are bought, all of one lot. */
export const isBought = ({ lot }: ShearRun): boolean => lot?.from === 'purchase';

/**
 * A run whose lot turns out not to suffice when it is cut: none of it may come from another, so all of it is bought.
 * @param needs sheets that its lines take cut alone
 */
export function ofBoughtLot(shop: Shop, run: ShearRun, free: FreeStock, needs: number): ShearRun {
  const { lot } = run;
  const { stockKnows: knows } = shop.settings;
  if ((lot?.from !== 'stock' && lot?.from !== 'delivery') || knows === null) return run;
  const sheets = stockFor(shop, run).reduce((sum, { id }) => sum + (free.get(id) ?? 0), 0);
  const asked = takenListFor(shop, run) ? lot.lot : askedTogether(knows, run);
  return {
    ...run,
    lot: { lot: asked, from: 'purchase', short: { needs, lots: [{ lot: lot.lot, sheets }] } },
  };
}

/** What the lines of a run ask of one lot; one that suits them all is known, so they do not contradict each other. */
function askedTogether(knows: StockKnows, { operations }: ShearRun): Lot {
  const asked = operations.map(({ line }) => lotOf(knows, line));
  return {
    lot: asked.find(({ lot }) => lot !== '')?.lot ?? '',
    paint: asked.find(({ paint }) => paint !== null)?.paint ?? null,
    film: asked.find(({ film }) => film !== null)?.film ?? null,
  };
}

/** Sheets of a changed list that are not of the run's lot. */
export function otherLots(shop: Shop, run: ShearRun, { groups }: Pick<CutPlan, 'groups'>): Issue[] {
  const own = new Set(stockFor(shop, run).map(({ id }) => id));
  const others = run.lot === null ? [] : groups.filter(({ stockId }) => !own.has(stockId));
  return others.map(({ id, stockId }) => {
    const message = `Sheets ${id} are ${stockId}, which is not of the lot that run ${run.id} is cut from: ${lineLotWords(run.lot)}.`;
    return issue(
      `run ${run.id}`,
      'lot',
      message,
      'Plan the steps again, or let its lines be cut from several lots.',
    );
  });
}
