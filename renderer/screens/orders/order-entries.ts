import { z } from 'zod';
import type { Command } from '../../../core/edit/command.ts';
import {
  orderLine,
  type OrderLine,
  usualLine,
  usualOrder,
  workOrder,
  type WorkOrder,
} from '../../../core/shop/order.ts';
import { lotOf, lotWords, type StockKnows } from '../../../core/material/lot.ts';
import type { Conflict, Issue } from '../../../core/result.ts';
import { nextLineNumber } from '../../../core/shop/line-number.ts';
import { sameContent } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';

/** A line on the form: its key is made from the order's number when it is saved. */
const lineEntry = orderLine.omit({ id: true, orderId: true });
export type LineEntry = z.infer<typeof lineEntry>;

/** What the order's form holds. */
export const orderEntries = z.strictObject({
  order: workOrder,
  lines: z.array(lineEntry).min(1, 'needs at least one line').max(500, 'at most 500 lines'),
  /** The lines as they were when the form was opened: what was changed, and what is to go, is told by them. */
  read: z.array(orderLine),
});
export type OrderEntries = z.infer<typeof orderEntries>;

/** An order as it is; null when there is none of that number. */
export function entriesOf(shop: Shop, orderId: string): OrderEntries | null {
  const order = shop.order.find((o) => o.id === orderId);
  if (!order) return null;
  const lines = shop.line.filter((line) => line.orderId === orderId);
  return { order, lines: lines.map(entryOf), read: lines };
}

const entryOf = ({ id: _, orderId: __, ...line }: OrderLine): LineEntry => line;

/** Entries that were kept before lines had terms, or a lot, of their own. */
export const withTerms = (kept: OrderEntries): OrderEntries =>
  kept.lines.every((line) => 'due' in line && 'mixLots' in line)
    ? kept
    : {
        ...kept,
        lines: kept.lines.map((line) => ({ ...usualLine, ...line })),
        read: kept.read.map((line) => ({ ...usualLine, ...line })),
      };

/** The next work-order number: one more than the greatest that is a plain number. */
export function nextOrderId(shop: Shop): string {
  const numbers = shop.order.map(({ id }) => (/^\d{1,9}$/.test(id) ? Number(id) : 0));
  return String(Math.max(1000, ...numbers) + 1);
}

/** A new line: the part is still to be chosen, metal and length as in the line before it, or in the shop's last. */
export function freshLine(shop: Shop, orderId: string, before: readonly LineEntry[]): LineEntry {
  const last = before.at(-1) ?? shop.line.at(-1);
  const material = shop.material[0];
  return {
    ...usualLine,
    number: nextLineNumber(
      shop,
      orderId,
      before.map((line) => line.number),
    ),
    partId: '',
    materialId: last?.materialId ?? material?.id ?? '',
    gauge: last?.gauge ?? material?.gauges[0]?.label ?? '',
    colourId: last?.colourId ?? shop.colour[0]?.id ?? '',
    lengthMm: last?.lengthMm ?? NaN,
    quantity: NaN,
  };
}

/** A new order with one line; customer, due date and the line are still to be typed. */
export const freshOrder = (shop: Shop): OrderEntries => ({
  order: {
    ...usualOrder,
    id: nextOrderId(shop),
    customer: '',
    due: NaN,
  },
  lines: [freshLine(shop, nextOrderId(shop), [])],
  read: [],
});

/** A line of another part takes that part's usual length. */
export const withPart = (shop: Shop, line: LineEntry, partId: string): LineEntry => ({
  ...line,
  partId,
  lengthMm: shop.part.find((part) => part.id === partId)?.lengthMm ?? line.lengthMm,
});

/** Another material keeps the gauge where it has it, else takes its first. */
export function withMaterial(shop: Shop, line: LineEntry, materialId: string): LineEntry {
  const gauges = shop.material.find((material) => material.id === materialId)?.gauges ?? [];
  const gauge = gauges.some(({ label }) => label === line.gauge) ? line.gauge : (gauges[0]?.label ?? '');
  return { ...line, materialId, gauge };
}

/** Where a line may say something of its own. */
export const OWN_TERMS = ['due', 'release', 'importance', 'lot', 'paint', 'film', 'note'] as const;

/** What a line has of its own, in short: "due Wed 2 Dec 17:00, importance 3, a note"; '': all is as the order says. */
export const ownTerms = (
  { due, release, importance, note, mixLots, ...line }: LineEntry,
  timeZone: string,
  knows: StockKnows | null,
): string =>
  [
    due !== null && `due ${formatDayAndClock(due, timeZone)}`,
    release !== null && `not before ${formatDayAndClock(release, timeZone)}`,
    importance !== null && !Number.isNaN(importance) && `importance ${importance}`,
    knows !== null && lotWords(lotOf(knows, line)),
    knows !== null && mixLots && 'lots may mix',
    note.trim() !== '' && 'a note',
  ]
    .filter(Boolean)
    .join(', ');

/** What was changed on the form, and nothing else: what the floor has done meanwhile stays as it is. */
export function saveCommand({ order, lines, read }: OrderEntries, at: Instant): Command {
  const before = new Map(read.map((line) => [line.id, line]));
  const named = lines.map((line): OrderLine => ({
    ...line,
    id: `${order.id}/${line.number}`,
    orderId: order.id,
  }));
  const stay = new Set(named.map(({ id }) => id));
  return {
    do: 'order.save',
    order,
    lines: named.filter((line) => !sameContent(before.get(line.id) ?? null, line)),
    removed: read.filter(({ id }) => !stay.has(id)).map(({ id, revision }) => ({ id, revision })),
    at,
  };
}

/** Removes the order as it was read, with the lines that were read. */
export const removeCommand = ({ order, read }: OrderEntries): Command => ({
  do: 'order.remove',
  orderId: order.id,
  revision: order.revision,
  lines: read.map(({ id, revision }) => ({ id, revision })),
});

/** The row of a conflict as the form has it; null: it does not. */
export const rowHeld = ({ order, lines }: OrderEntries, { kind, id }: Conflict): object | null =>
  kind === 'order' ? order : (lines.find((line) => `${order.id}/${line.number}` === id) ?? null);

/** The entries as a change of what stands now: nothing typed is lost, and what was read is what is there. */
export function rebased(entries: OrderEntries, conflicts: readonly Conflict[]): OrderEntries {
  return conflicts.reduce<OrderEntries>(({ order, lines, read }, { kind, id, theirs }) => {
    if (kind === 'order')
      return { order: { ...order, revision: (theirs as WorkOrder | null)?.revision ?? 0 }, lines, read };
    const stands = theirs as OrderLine | null;
    const isNew = stands && [...lines, ...read].every(({ number }) => number !== stands.number);
    const own = lines.map((line) =>
      `${order.id}/${line.number}` === id ? { ...line, revision: stands?.revision ?? 0 } : line,
    );
    return {
      order,
      lines: isNew ? [...own, entryOf(stands)] : own,
      read: [...read.filter((line) => line.id !== id), ...(stands ? [stands] : [])],
    };
  }, entries);
}

const LINE_FIELD: Readonly<Record<string, keyof LineEntry>> = {
  part: 'partId',
  colour: 'colourId',
  material: 'materialId',
  gauge: 'gauge',
  line: 'number',
  release: 'release',
};

/** Where the form shows what a rule of the shop refuses: "line 4101/2" and "gauge" → lines.1.gauge. */
export function orderField({ subject, field }: Issue, { order, lines }: OrderEntries): string {
  const at = lines.findIndex((line) => subject === `line ${order.id}/${line.number}`);
  const lineField = LINE_FIELD[field];
  if (at >= 0) return lineField ? `lines.${at}.${lineField}` : '';
  return field === 'release' || field === 'due' || field === 'status' ? `order.${field}` : '';
}
