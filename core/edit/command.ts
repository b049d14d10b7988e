import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, durationS, gaugeLabel, instantS, lengthMm, note, revision } from '../fields.ts';
import { MOST } from '../input-limits.ts';
import { lot } from '../material/lot.ts';
import { lineId, operationId, orderLine, workOrder } from '../shop/order.ts';
import { personName } from '../shop/plan.ts';
import { rowKinds } from '../shop/state.ts';
import { orderCommands } from './order-shapes.ts';

/** Rows a person edits on a form, one at a time. Orders, queues and pins have commands of their own. */
const formKinds = [
  'material',
  'colour',
  'sheet',
  'part',
  'calendar',
  'machine',
  'tool',
  'downtime',
  'absence',
  'delivery',
] as const;
export type FormKind = (typeof formKinds)[number];

const saveOf = <K extends FormKind>(kind: K) =>
  z.strictObject({ do: z.literal('row.save'), kind: z.literal(kind), row: rowKinds[kind] });

const rowOf = <K extends FormKind>(kind: K) => z.strictObject({ kind: z.literal(kind), row: rowKinds[kind] });

/** Any such row with its kind. */
const formRow = z.discriminatedUnion('kind', [
  rowOf('material'),
  rowOf('colour'),
  rowOf('sheet'),
  rowOf('part'),
  rowOf('calendar'),
  rowOf('machine'),
  rowOf('tool'),
  rowOf('downtime'),
  rowOf('absence'),
  rowOf('delivery'),
]);
export type FormRow = DeepReadonly<z.infer<typeof formRow>>;

/** A plan's name, or what is noted of it. */
export const MOST_OF_A_NAME = 80;

const pieces = z.int().min(0).max(100_000);
/** Pieces more (above 0) or fewer than are recorded: two who count at once are both right. */
const more = z.int().min(-100_000).max(100_000);
/** The time was typed in: it is refused where it cannot be. A press is kept at the earliest moment that can be. */
const given = z.literal(true).optional();

/** The revision of each machine's queue as it was seen (`seenQueues` in core/edit/stale.ts); 0: it had none. */
export const seen = z.record(z.string(), revision);
/** So many as were chosen together. */
const someOperations = z.array(operationId).min(1).max(MOST.rows);

/** How a file was read, and what its texts stand for: kept for the next one (core/import/remember.ts). */
const remembered = z
  .strictObject({ names: z.array(rowKinds.otherName).max(MOST.rows), layout: rowKinds.fileLayout })
  .optional();
export type Remembered = DeepReadonly<NonNullable<z.infer<typeof remembered>>>;

/** The lot of the pieces, where it is another than the stock's: they are, or become, a stock of their own. */
const ofLot = lot.optional();

/** What of a record can be corrected. */
const correctable = {
  machineId: true,
  start: true,
  end: true,
  good: true,
  scrapped: true,
  changeoverSeconds: true,
  pauses: true,
} as const;

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
 * A saved or removed row carries the revision that was read, a change of the plan those of the queues that were seen; a
 * newer one in the shop refuses the command.
 */
export const command = z.union([
  /** Put operations at places of queues (core/edit/blocks.ts says what a block is). */
  z.strictObject({
    do: z.literal('operation.move'),
    blocks: z
      .array(z.strictObject({ operations: someOperations, machineId: code, position: z.int().min(0) }))
      .min(1)
      .max(MOST.rows),
    seen,
  }),
  z.strictObject({ do: z.literal('operation.pin'), operations: someOperations, seen }),
  z.strictObject({ do: z.literal('operation.unpin'), operations: someOperations, seen }),
  /** Take a whole new plan, e.g. the search's. Pins stay. */
  z.strictObject({
    do: z.literal('plan.replace'),
    queues: z.record(z.string(), z.array(operationId)),
    label: z.string().min(1).max(120),
    seen,
  }),
  /** Let floor and paper follow the queues as they are, where plans are published by hand. The note says what for. */
  z.strictObject({ do: z.literal('plan.publish'), note: z.string().trim().max(MOST_OF_A_NAME), seen }),
  /** Take a plan that was kept: what is newer than it stands behind. */
  z.strictObject({
    do: z.literal('plan.goBack'),
    name: z.string().min(1).max(200),
    queues: z.record(z.string(), z.array(operationId)),
    pins: z.array(operationId),
    seen,
  }),
  ...orderCommands,
  /** Orders and lines that came from a file, new and changed. */
  z.strictObject({
    do: z.literal('orders.import'),
    fileName: z.string().max(MOST.fileNameCharacters),
    orders: z.array(workOrder).max(MOST.rows),
    lines: z.array(orderLine).max(MOST.rows),
    remembered,
  }),
  /** A changeover for an operation begins on its machine; it ends when work starts there. */
  z.strictObject({
    do: z.literal('floor.changeover'),
    operation: operationId,
    machineId: code,
    at: instantS,
  }),
  /**
   * Work on an operation begins. What its changeover took: as given, or since it was begun on the machine; null without
   * either. `who` is kept where the shop asks for it.
   */
  z.strictObject({
    do: z.literal('floor.start'),
    operation: operationId,
    machineId: code,
    at: instantS,
    given,
    changeoverSeconds: durationS.nullable(),
    who: personName.optional(),
  }),
  z.strictObject({ do: z.literal('floor.pause'), operation: operationId, at: instantS, reason: note }),
  /** A paused operation leaves its machine; the rest of it waits behind the next one. */
  z.strictObject({ do: z.literal('floor.suspend'), operation: operationId, good: more, scrapped: more }),
  z.strictObject({ do: z.literal('floor.resume'), operation: operationId, at: instantS }),
  /** Pieces finished since the last count. */
  z.strictObject({ do: z.literal('floor.count'), operation: operationId, good: more, scrapped: more }),
  /** Cuts made of one step of a list whose sheets were issued, since the last count. */
  z.strictObject({
    do: z.literal('floor.cut'),
    listId: rowKinds.cutList.shape.id,
    step: z.int().min(1).max(2000),
    machineId: code,
    by: more,
  }),
  z.strictObject({
    do: z.literal('floor.done'),
    operation: operationId,
    at: instantS,
    given,
    good: more,
    scrapped: more,
    who: personName.optional(),
  }),
  /** What was recorded of an operation was wrong: these of its figures, and why. */
  z.strictObject({
    do: z.literal('floor.correct'),
    operation: operationId,
    at: instantS,
    patch: rowKinds.record.pick(correctable).partial(),
    reason: z.string().trim().min(1, 'say why').max(500, 'at most 500 characters'),
  }),
  /** Finished operations that came from a file; none of them stands in the shop yet. */
  z.strictObject({
    do: z.literal('records.import'),
    fileName: z.string().max(MOST.fileNameCharacters),
    records: z.array(rowKinds.record).max(MOST.rows),
    remembered,
  }),
  /** Rows of one kind that came from a file, new and changed. */
  z.strictObject({
    do: z.literal('rows.import'),
    fileName: z.string().max(MOST.fileNameCharacters),
    rows: z.array(formRow).max(MOST.rows),
    remembered,
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
    lot: ofLot,
    /** The delivery that it came by: what is left of it stays expected, and one that came whole is no more. */
    deliveryId: code.optional(),
    pieces: pieces.min(1),
    at: instantS,
    note,
  }),
  z.strictObject({ do: z.literal('stock.count'), sheetId: code, lot: ofLot, pieces, at: instantS, note }),
  /** Counts that came from a file: each sets what is on hand, as `stock.count` does. */
  z.strictObject({
    do: z.literal('stock.import'),
    fileName: z.string().max(MOST.fileNameCharacters),
    counts: z
      .array(z.strictObject({ sheetId: code, lot: ofLot, pieces: z.int().min(0).max(1_000_000) }))
      .max(MOST.rows),
    at: instantS,
    remembered,
  }),
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
  /** A list of steps is kept under a name, and is no longer. */
  z.strictObject({ do: z.literal('cutting.keep'), list: rowKinds.keptList }),
  z.strictObject({
    do: z.literal('cutting.forget'),
    list: rowKinds.keptList.pick({ id: true, revision: true }),
  }),
  /** Flat pieces for someone at the counter (core/import/walk-in.ts reads the line they were typed in). */
  z.strictObject({
    do: z.literal('walkin.take'),
    /** The number that follows `walk-in-`, as the host knows those of long ago; missing: the next of the shop's. */
    number: z.int().min(1).optional(),
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
  saveOf('tool'),
  saveOf('downtime'),
  saveOf('absence'),
  saveOf('delivery'),
  /** Several rows in one step, those first that others name; all of them or none. */
  z.strictObject({
    do: z.literal('rows.save'),
    rows: z.array(formRow).min(1).max(5000),
    label: z.string().min(1).max(120),
  }),
  z.strictObject({ do: z.literal('row.remove'), kind: z.enum(formKinds), id: code, revision }),
  /** What was remembered of files: another name, or how files of a shape are read; the next file asks again. */
  z.strictObject({
    do: z.literal('memory.forget'),
    kind: z.enum(['otherName', 'fileLayout']),
    id: z.string().min(1).max(500),
    revision,
  }),
]);
export type Command = DeepReadonly<z.infer<typeof command>>;
