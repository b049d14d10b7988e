import type { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { calendar } from '../time/calendar.ts';
import { colour, material, sheet } from '../material/material.ts';
import { fileLayout } from './file-layout.ts';
import { learned } from './learned.ts';
import { absence, downtime, machine } from './machine.ts';
import { orderLine, workOrder } from './order.ts';
import { otherName } from './other-name.ts';
import { part } from '../part/part.ts';
import { changeover, pin, published, queue, operationRecord } from './plan.ts';
import { settings } from './settings.ts';
import { cutCount, cutList, delivery, keptList, movement } from './stock.ts';
import { tool } from '../part/tool.ts';

/**
 * Every kind of row the shop keeps, by name. The database has one table a kind, the editor one row change a kind,
 * the contract one list a kind: a new kind is added here and the compiler shows the rest.
 * The order is the order in which rows can be inserted without breaking a reference.
 */
export const rowKinds = {
  settings,
  material,
  colour,
  sheet,
  delivery,
  part,
  calendar,
  machine,
  tool,
  downtime,
  absence,
  order: workOrder,
  line: orderLine,
  queue,
  published,
  pin,
  changeover,
  record: operationRecord,
  learned,
  movement,
  cutList,
  cutCount,
  keptList,
  otherName,
  fileLayout,
} as const;
export type RowKind = keyof typeof rowKinds;
export type RowOf<K extends RowKind> = DeepReadonly<z.infer<(typeof rowKinds)[K]>>;

/** The whole shop in memory, rows sorted by id (lines by order and number). Read-only everywhere. */
export type Shop = { readonly [K in Exclude<RowKind, 'settings'>]: readonly RowOf<K>[] } & {
  readonly settings: RowOf<'settings'>;
};
