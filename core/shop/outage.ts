import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code } from '../fields.ts';
import type { Shop } from './state.ts';

/** Some hours in which less can be done than the calendars say: a machine out of use, or people who are out. */
export const outage = z.strictObject({ kind: z.enum(['downtime', 'absence']), id: code });
export type Outage = DeepReadonly<z.infer<typeof outage>>;

/** The row that holds these hours; null when it is gone. */
export const outageRow = (shop: Shop, { kind, id }: Outage) =>
  [...shop[kind]].find((row) => row.id === id) ?? null;

/** The shop as it would be without these hours. */
export const withoutOutage = (shop: Shop, { kind, id }: Outage): Shop => ({
  ...shop,
  [kind]: shop[kind].filter((row) => row.id !== id),
});
