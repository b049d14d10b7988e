import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { termsOf } from '../shop/line-terms.ts';
import type { Shop } from '../shop/state.ts';
import { formatLength } from '../units/length.ts';
import { writeNumber } from '../units/number.ts';
import { COLUMN_OF } from './order-said.ts';
import { formatDayYearAndClock } from '../time/wall.ts';

interface Wanted {
  readonly order: WorkOrder;
  readonly line: OrderLine;
}

/** What counts for a line, its own or its order's, by the names of the fields. */
const allOf = ({ order, line }: Wanted) => {
  const { due, release, importance, notes } = termsOf(order, line);
  return {
    partId: line.partId,
    quantity: line.quantity,
    overrun: line.overrun,
    materialId: line.materialId,
    gauge: line.gauge,
    colourId: line.colourId,
    lengthMm: line.lengthMm,
    due,
    release,
    importance,
    note: notes.join('; '),
    rush: order.rush,
  };
};
type All = ReturnType<typeof allOf>;

/** What stands in the shop in each column that a row changes, as people see it; '' where nothing stands there. */
export function wasOf(shop: Shop, before: Wanted, after: Wanted): Record<string, string> {
  const [had, has] = [allOf(before), allOf(after)];
  const changed = (Object.keys(had) as (keyof All)[]).filter((key) => had[key] !== has[key]);
  return Object.fromEntries(changed.map((key) => [COLUMN_OF[key], show(shop, key, had[key])]));
}

function show({ settings, material, colour }: Shop, key: keyof All, value: All[keyof All]): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') {
    const rows = key === 'materialId' ? material : key === 'colourId' ? colour : [];
    return rows.find(({ id }) => id === value)?.name ?? value;
  }
  if (key === 'due' || key === 'release') return formatDayYearAndClock(value, settings.timeZone);
  if (key === 'lengthMm') return formatLength(value, settings);
  return writeNumber(value, settings.decimals);
}
