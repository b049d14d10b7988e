import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, durationS, gaugeLabel, instantS, lengthMm, note } from '../fields.ts';
import { lineId, operationId, orderLine, workOrder } from '../shop/order.ts';
import { personName } from '../shop/plan.ts';
import { rowKinds } from '../shop/state.ts';

/** Rows a person edits on a form, one at a time. Orders, queues and pins have commands of their own. */
const formKinds = [
  'material',
  'colour',
  'sheet',
  'part',
  'calendar',
  'machine',
  'downtime',
  'absence',
] as const;
export type FormKind = (typeof formKinds)[number];

const saveOf = <K extends FormKind>(kind: K) =>
  z.strictObject({ do: z.literal('row.save'), kind: z.literal(kind), row: rowKinds[kind] });

const pieces = z.int().min(0).max(100_000);

/** What a proposal says of one figure of a machine. */
const learnedFigures = {
  key: true,
  before: true,
  after: true,
  low: true,
  high: true,
  observations: true,
} as const;

/**
 * Everything the planner can do, as data. `core/edit/apply.ts` turns a command into row changes; the history keeps the
 * changes, so undo and redo need no code per command.
 * A saved row carries the revision that was read; a newer one in the shop refuses the command.
 */
export const command = z.union([
  /** Put an operation at a rank (count of operations before it) of a machine's queue. */
  z.strictObject({
    do: z.literal('operation.move'),
    operation: operationId,
    machineId: code,
    position: z.int().min(0),
  }),
  z.strictObject({ do: z.literal('operation.pin'), operation: operationId }),
  z.strictObject({ do: z.literal('operation.unpin'), operation: operationId }),
  /** Take a whole new plan, e.g. the search's. Pins stay. */
  z.strictObject({
    do: z.literal('plan.replace'),
    queues: z.record(z.string(), z.array(operationId)),
    label: z.string().min(1).max(120),
  }),
  /** Add or change a work order, its new and changed lines, and name those that go; all others stay as they are. */
  z.strictObject({
    do: z.literal('order.save'),
    order: workOrder,
    lines: z.array(orderLine).max(500),
    removed: z.array(orderLine.pick({ id: true, revision: true })).max(500),
    /** When it is done or cancelled, if it is. */
    at: instantS,
  }),
  z.strictObject({ do: z.literal('order.remove'), orderId: code }),
  z.strictObject({ do: z.literal('line.save'), line: orderLine }),
  z.strictObject({ do: z.literal('line.remove'), lineId }),
  /** Add orders and lines that came from a file; orders that exist get the new lines only. */
  z.strictObject({
    do: z.literal('orders.import'),
    fileName: z.string(),
    orders: z.array(workOrder),
    lines: z.array(orderLine),
  }),
  /** Work on an operation begins, after a changeover that may have been timed. `who` is kept where the shop asks for it. */
  z.strictObject({
    do: z.literal('floor.start'),
    operation: operationId,
    machineId: code,
    at: instantS,
    changeoverSeconds: durationS.nullable(),
    who: personName.optional(),
  }),
  z.strictObject({ do: z.literal('floor.pause'), operation: operationId, at: instantS, reason: note }),
  /** A paused operation leaves its machine; the rest of it waits behind the next one. Pieces are those finished so far. */
  z.strictObject({ do: z.literal('floor.suspend'), operation: operationId, good: pieces, scrapped: pieces }),
  z.strictObject({ do: z.literal('floor.resume'), operation: operationId, at: instantS }),
  /** Pieces finished so far, in all. */
  z.strictObject({ do: z.literal('floor.count'), operation: operationId, good: pieces, scrapped: pieces }),
  z.strictObject({
    do: z.literal('floor.done'),
    operation: operationId,
    at: instantS,
    good: pieces,
    scrapped: pieces,
    who: personName.optional(),
  }),
  /** Finished operations that came from a file; none of them stands in the shop yet. */
  z.strictObject({
    do: z.literal('records.import'),
    fileName: z.string(),
    records: z.array(rowKinds.record).max(20_000),
  }),
  /** Take over figures that finished work shows. `before` is the figure the proposal was made from. */
  z.strictObject({
    do: z.literal('standards.accept'),
    machineId: code,
    at: instantS,
    changes: z.array(rowKinds.learned.pick(learnedFigures)).min(1).max(100),
  }),
  /** Put back the figure from before. */
  z.strictObject({ do: z.literal('standards.revert'), learnedId: rowKinds.learned.shape.id, at: instantS }),
  /** Stock came, was counted, or is put right by so many: one entry of its history each. */
  z.strictObject({
    do: z.literal('stock.receive'),
    sheetId: code,
    pieces: pieces.min(1),
    at: instantS,
    note,
  }),
  z.strictObject({ do: z.literal('stock.count'), sheetId: code, pieces, at: instantS, note }),
  z.strictObject({
    do: z.literal('stock.correct'),
    sheetId: code,
    by: z.int().min(-100_000).max(100_000),
    at: instantS,
    note,
  }),
  /** The sheets of a run are taken from stock, to be cut by this list; its remnants are kept. */
  z.strictObject({ do: z.literal('stock.use'), list: rowKinds.cutList, machineId: code, at: instantS }),
  z.strictObject({
    do: z.literal('cutting.save'),
    list: rowKinds.cutList,
    label: z.string().min(1).max(120),
  }),
  z.strictObject({ do: z.literal('cutting.remove'), id: lineId }),
  /** Flat pieces for someone at the counter (core/import/walk-in.ts reads the line they were typed in). */
  z.strictObject({
    do: z.literal('walkin.take'),
    text: z.string().max(200),
    pieces: pieces.min(1),
    girthMm: lengthMm,
    lengthMm,
    materialId: code,
    gauge: gaugeLabel,
    colourId: code,
    due: instantS,
  }),
  z.strictObject({ do: z.literal('settings.save'), row: rowKinds.settings }),
  saveOf('material'),
  saveOf('colour'),
  saveOf('sheet'),
  saveOf('part'),
  saveOf('calendar'),
  saveOf('machine'),
  saveOf('downtime'),
  saveOf('absence'),
  z.strictObject({ do: z.literal('row.remove'), kind: z.enum(formKinds), id: code }),
]);
export type Command = DeepReadonly<z.infer<typeof command>>;
