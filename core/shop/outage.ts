import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, instantS } from '../fields.ts';
import type { Absence, Downtime } from './machine.ts';
import type { Shop } from './state.ts';
import type { Delivery } from './stock.ts';

/**
 * What is not there when the plan counted on it: some hours in which less can be done than the calendars say, a machine out of
 * use or people who are out; or metal that comes later than it was expected until now (`was`).
 */
export const outage = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.enum(['downtime', 'absence']), id: code }),
  z.strictObject({ kind: z.literal('delivery'), id: code, was: instantS }),
]);
export type Outage = DeepReadonly<z.infer<typeof outage>>;
export type OutageRow = Downtime | Absence | Delivery;

/** The row that holds it; null when it is gone. */
export const outageRow = (shop: Shop, { kind, id }: Outage): OutageRow | null => {
  const rows: readonly OutageRow[] = shop[kind];
  return rows.find((row) => row.id === id) ?? null;
};

/** The shop as it would be without it: no such hours, or the metal as it was expected before. */
export const withoutOutage = (shop: Shop, lost: Outage): Shop =>
  lost.kind === 'delivery'
    ? {
        ...shop,
        delivery: shop.delivery.map((row) => (row.id === lost.id ? { ...row, due: lost.was } : row)),
      }
    : { ...shop, [lost.kind]: shop[lost.kind].filter((row) => row.id !== lost.id) };

/** Until when it lasts; epoch seconds. */
export const outageEnd = (row: OutageRow): number => ('to' in row ? row.to : row.due);
