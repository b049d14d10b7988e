import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, gaugeLabel, instantS, lengthMm, name, note, revision, importance } from '../fields.ts';
import { lotFields, NO_LOT } from '../material/lot.ts';
import { STAGES, type Stage } from '../part/stage.ts';
import { grouped } from '../grouped.ts';

/** A customer's work order. Its id is the number people say aloud. */
export const workOrder = z.strictObject({
  id: code,
  customer: name,
  /** Nothing may start earlier (material or approval not in yet); null: at once. */
  release: instantS.nullable(),
  /** The promised end. */
  due: instantS,
  importance,
  rush: z.boolean(),
  status: z.enum(['open', 'held', 'done', 'cancelled']),
  /** When it was done or cancelled; null before. Some days later it leaves the living shop for the archive. */
  closedAt: instantS.nullable(),
  note,
  revision,
});
export type WorkOrder = DeepReadonly<z.infer<typeof workOrder>>;

/** What a new order is until it is said otherwise. */
export const usualOrder = {
  release: null,
  importance: 1,
  rush: false,
  status: 'open',
  closedAt: null,
  note: '',
  revision: 0,
} as const satisfies Partial<WorkOrder>;

/** An order's work may start at once, or at some time before it is due. */
export const startsBeforeDue = ({ release, due }: Pick<WorkOrder, 'release' | 'due'>): boolean =>
  release === null || release < due;

/** A line's key: work order number, a slash, line number ("1042/2"). */
export const lineId = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,39}\/\d{1,4}$/, 'a line like 1042/2');

/** One part × quantity × material × gauge × colour of a work order. */
export const orderLine = z.strictObject({
  id: lineId,
  orderId: code,
  number: z.int().min(1, 'at least 1').max(9999, 'at most 9999'),
  partId: code,
  materialId: code,
  gauge: gaugeLabel,
  colourId: code,
  /** The sheets it must be cut from, as far as it says and the shop keeps. */
  ...lotFields,
  /** Where no lot has enough sheets it may be cut from several. */
  mixLots: z.boolean(),
  lengthMm,
  quantity: z
    .int('must be a whole number')
    .min(1, 'at least 1')
    .max(100_000, `at most ${grouped(100_000)}`),
  /** Pieces too many that the customer takes, so that a sheet may be cut full; 0: exactly the quantity. */
  overrun: z
    .int('must be a whole number')
    .min(0, 'at least 0')
    .max(10_000, `at most ${grouped(10_000)}`),
  status: z.enum(['open', 'done', 'cancelled']),
  /** The line of the same order whose scrapped pieces this one makes again; null: asked for by the customer. */
  makeUpFor: lineId.nullable(),
  /** Its own promised end and earliest start, importance and note, where they are not the order's (core/shop/line-terms.ts). */
  due: instantS.nullable(),
  release: instantS.nullable(),
  importance: importance.nullable(),
  note,
  revision,
});
export type OrderLine = DeepReadonly<z.infer<typeof orderLine>>;

/** What a new line is until it is said otherwise. */
export const usualLine = {
  ...NO_LOT,
  mixLots: false,
  overrun: 0,
  status: 'open',
  makeUpFor: null,
  due: null,
  release: null,
  importance: null,
  note: '',
  revision: 0,
} as const satisfies Partial<OrderLine>;

/** One step of a line's routing, "1042/2:shear": the key used in queues, pins and records. */
export const operationId = z
  .string()
  .regex(new RegExp(`^[^:]{1,60}:(${STAGES.join('|')})$`), 'an operation like 1042/2:shear');
export const operationIdOf = (line: string, at: Stage): string => `${line}:${at}`;
export const lineOfOperation = (operation: string): string => operation.slice(0, operation.lastIndexOf(':'));
export const stageOfOperation = (operation: string): Stage =>
  operation.slice(operation.lastIndexOf(':') + 1) as Stage;
