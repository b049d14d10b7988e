import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, instantS, note, revision } from '../fields.ts';
import { lineId } from './order.ts';

/** One entry in the history of what lies in stock. Its id is the stock's, a dot, the revision the stock got by it. */
export const movement = z.strictObject({
  id: z.string().min(1).max(120),
  sheetId: code,
  at: instantS,
  what: z.enum(['received', 'counted', 'corrected', 'used', 'kept']),
  /** Pieces that came (above 0) or went (below 0). */
  pieces: z.int().min(-1_000_000).max(1_000_000),
  /** On hand afterwards. */
  after: z.int().min(0).max(1_000_000),
  note,
  revision,
});
export type Movement = DeepReadonly<z.infer<typeof movement>>;

/** Metal that was ordered and has not come yet: so many of a stock, which knows its size, metal and lot. */
export const delivery = z.strictObject({
  id: code,
  /** The stock that it will be; of a lot that is new to the shop, the row that was made for it with nothing on hand. */
  sheetId: code,
  /** Sheets, of a coil stretches. */
  pieces: z.int('must be a whole number').min(1, 'at least 1').max(1_000_000, 'at most 1 000 000'),
  /** When it is expected. */
  due: instantS,
  /** What the supplier said. */
  note,
  revision,
});
export type Delivery = DeepReadonly<z.infer<typeof delivery>>;

const mm = z.number().min(0).max(50_000);
const count = z.int().min(0).max(1_000_000);
const rect = { x: mm, y: mm, w: mm, h: mm };
const destination = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('blank'), girthMm: mm, lengthMm: mm }),
  z.strictObject({ kind: z.literal('stack'), stack: z.string().max(20) }),
  z.strictObject({ kind: z.enum(['remnant', 'scrap']) }),
]);

/** core/cutting/step.ts `CutStep`. */
export const cutStep = z.strictObject({
  number: count,
  group: z.string().max(20),
  stack: z.string().max(20),
  fed: count,
  axis: z.enum(['length', 'width']),
  sizeMm: mm,
  backGaugeMm: mm.nullable(),
  cutsEach: count,
  stroke: z.enum(['single', 'continuous']),
  to: destination,
  rest: destination.nullable(),
  lines: z.array(z.strictObject({ line: lineId, pieces: count })),
  heading: z.string().min(1).max(60).optional(),
  blanks: count,
  blanksSoFar: count,
});

/** core/cutting/plan.ts `SheetGroup`. */
export const sheetGroup = z.strictObject({
  id: z.string().max(20),
  stockId: code,
  remnantStock: z.boolean(),
  count,
  widthMm: mm,
  lengthMm: mm,
  costCents: z.number().min(0),
  blanks: z.array(z.strictObject({ ...rect, lines: z.array(lineId) })),
  offcuts: z.array(z.strictObject({ ...rect, kind: z.enum(['remnant', 'scrap', 'trim', 'left']) })),
});

/**
 * The step list of a run with the sheets it is cut from: as a person changed it, or as the sheets were taken from stock
 * for it. A changed list stands for the run with the first of its lines that still waits; whether it still yields what
 * the run asks is checked whenever it is shown.
 */
export const cutList = z.strictObject({
  /** The run's; of a list that sheets were taken for, the run's and the moment. */
  id: z.string().min(1).max(80),
  /** The run's lines when the list was made. */
  lines: z.array(lineId).min(1).max(500),
  groups: z.array(sheetGroup).max(500),
  steps: z.array(cutStep).max(2000),
  /** When its sheets were taken from stock; null: they were not yet. */
  taken: instantS.nullable(),
  /** Blanks of its lines that were counted on the floor when its sheets were taken; lines without any are left out. */
  counted: z.array(z.strictObject({ line: lineId, pieces: count })),
  revision,
});
export type CutList = DeepReadonly<z.infer<typeof cutList>>;

/**
 * Cuts that the floor counted of one step of a list whose sheets were issued: over all pieces fed. A row of its own and
 * small, since it is kept with every press.
 */
export const cutCount = z.strictObject({
  /** The list's, and the step's number (`cutCountId`). */
  id: z.string().min(1).max(100),
  listId: cutList.shape.id,
  step: count,
  made: count,
  revision,
});
export type CutCount = DeepReadonly<z.infer<typeof cutCount>>;

export const cutCountId = (listId: string, step: number): string => `${listId}#${step}`;

/** A list of steps kept under a name, for runs that ask the same blanks again; no line of any run stands in it. */
export const keptList = z.strictObject({
  /** The name that it was given. */
  id: z.string().trim().min(1, 'needs a name').max(80, 'at most 80 characters'),
  groups: z.array(sheetGroup).max(500),
  steps: z.array(cutStep).min(1, 'has no steps').max(2000),
  revision,
});
export type KeptList = DeepReadonly<z.infer<typeof keptList>>;
