import { z } from 'zod';
import { code, instantS, revision } from '../fields.ts';
import { MOST } from '../input-limits.ts';
import { lineId, orderLine, workOrder } from '../shop/order.ts';

const lineRead = orderLine.pick({ id: true, revision: true });

/** Commands about work orders and their lines, as data (core/edit/command.ts). */
export const orderCommands = [
  /** Add or change a work order, its new and changed lines, and name those that go; all others stay as they are. */
  z.strictObject({
    do: z.literal('order.save'),
    order: workOrder,
    lines: z.array(orderLine).max(500),
    removed: z.array(lineRead).max(500),
    /** When it is done or cancelled, if it is. */
    at: instantS,
  }),
  /** Remove a work order with its lines, each named as it was read. */
  z.strictObject({
    do: z.literal('order.remove'),
    orderId: code,
    revision,
    lines: z.array(lineRead).max(MOST.rows),
  }),
  z.strictObject({ do: z.literal('line.save'), line: orderLine }),
  z.strictObject({ do: z.literal('line.remove'), lineId, revision }),
  /** So many pieces of a line become a line of their own, due then. */
  z.strictObject({
    do: z.literal('line.split'),
    lineId,
    revision,
    later: orderLine.shape.quantity,
    due: instantS,
  }),
] as const;
