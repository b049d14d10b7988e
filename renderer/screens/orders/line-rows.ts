import { metalName } from '../../../core/shop/metal-name.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Chances } from '../../../core/learn/chance.ts';
import { progressIn, queuedIn } from '../../../core/report/order-standing.ts';
import { termsOf, type LineTerms } from '../../../core/shop/line-terms.ts';
import type { OrderLine, WorkOrder } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';

/** Where a line stands, for a person who is asked about it. */
export type Current = 'open' | 'held' | 'done' | 'cancelled';

/** One line of the table: the line, its order, and what the plan makes of it. */
export interface LineRow {
  readonly id: string;
  readonly line: OrderLine;
  readonly order: WorkOrder;
  readonly terms: LineTerms;
  readonly current: Current;
  /** How far it is: "shearing 12/40"; what stands still is said as that. */
  readonly progress: string;
  readonly partName: string;
  /** "24 ga Moss, galvanized" */
  readonly metal: string;
  readonly hex: string;
  /** Epoch seconds of the line's planned end; null when it is not in the plan. */
  readonly end: number | null;
  /** end − due in seconds; null without an end. */
  readonly lateness: number | null;
  /** Chance to end by the due date, 0 to 1; null while it is not known. */
  readonly onTime: number | null;
  /** Not queued yet: it can be planned but no stored queue names it, so the board shows it behind everything else. */
  readonly notQueued: boolean;
  /** Cannot be planned: why not, and what to do; null when it can. */
  readonly trouble: string | null;
  /** All that can be searched for, in small letters. */
  readonly text: string;
}

/** Work on an order's line stands still when either of them says so. */
function currentOf(order: WorkOrder, line: OrderLine): Current {
  if (order.status === 'cancelled' || line.status === 'cancelled') return 'cancelled';
  if (order.status === 'done' || line.status === 'done') return 'done';
  return order.status;
}

/** Every line of the shop with its order and its end in the plan; `plan` null while nothing can be planned at all. */
export function lineRows(
  shop: Shop,
  plan: Pick<PlanView, 'schedule' | 'unplannable'> | null,
  chances: Chances | null = null,
): LineRow[] {
  const orders = new Map(shop.order.map((order) => [order.id, order]));
  const parts = new Map(shop.part.map((part) => [part.id, part.name]));
  const colours = new Map(shop.colour.map((colour) => [colour.id, colour]));
  const isQueued = queuedIn(shop);
  const troubles = new Map(plan?.unplannable.map((p) => [p.subject, `${p.message} ${p.advice}`.trim()]));
  const progressOf = progressIn(shop);
  return shop.line.flatMap((line): LineRow[] => {
    const order = orders.get(line.orderId);
    if (!order) return [];
    const current = currentOf(order, line);
    const terms = termsOf(order, line);
    const progress = current === 'open' ? progressOf(line) : current;
    const end = plan?.schedule.ends[line.id] ?? null;
    const trouble = troubles.get(`line ${line.id}`) ?? null;
    const named = {
      partName: parts.get(line.partId) ?? line.partId,
      metal: metalName(shop, line),
      hex: colours.get(line.colourId)?.hex ?? '#808080',
    };
    const words = [
      line.id,
      order.customer,
      named.partName,
      line.partId,
      named.metal,
      progress,
      ...terms.notes,
      line.makeUpFor ? `remake of ${line.makeUpFor}` : '',
    ];
    return [
      {
        id: line.id,
        line,
        order,
        terms,
        current,
        progress,
        ...named,
        end,
        lateness: end === null ? null : end - terms.due,
        onTime: end === null ? null : (chances?.[line.id]?.onTime ?? null),
        notQueued: current === 'open' && trouble === null && !isQueued(line.id),
        trouble,
        text: words.join(' ').toLowerCase(),
      },
    ];
  });
}
