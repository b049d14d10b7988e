import { z } from 'zod';
import { answers } from '../import/answers.ts';
import { importKind } from '../import/kinds.ts';
import { reading } from '../import/reading.ts';
import { MOST } from '../input-limits.ts';
import { lineId } from '../shop/order.ts';
import { call } from './call.ts';

const file = z.strictObject({
  kind: importKind,
  fileName: z.string().max(MOST.fileNameCharacters),
  /** Longer than the largest file that is read: a file too large is refused in words of its own. */
  base64: z.string().max(MOST.packedCharacters),
  answers,
});

/**
 * How a file of orders, finished work … is understood: its columns, what must be asked, what each row is to the shop. Nothing
 * is stored. What is said about the file (core/import/answers.ts) comes along with it each time.
 */
export const importRead = call('import.read', file, reading);

/** Take the rows that are new or change something, as one step of the history; the others come back. */
export const importTake = call(
  'import.take',
  file,
  z.strictObject({
    /** The history's step that it became, or the entry in the floor's log; null: nothing was new. */
    stepId: z.int().nullable(),
    factId: z.int().nullable(),
    /** How the history names it. */
    label: z.string(),
    /** Rows that were taken. */
    counts: z.strictObject({ new: z.int(), changed: z.int() }),
    /** New lines of work orders that are marked rush. */
    rush: z.array(lineId),
    /** The same file, read again. */
    left: reading,
  }),
);
