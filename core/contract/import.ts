import { z } from 'zod';
import { fileCheck, table } from '../import/file-check.ts';
import { MOST } from '../input-limits.ts';
import { lineId } from '../shop/order.ts';
import { call } from './call.ts';

const fileName = z.string().max(MOST.fileNameCharacters);
/** Longer than the largest file that is read: a file too large is refused in words of its own. */
const file = z.strictObject({ fileName, base64: z.string().max(MOST.packedCharacters) });
const asFixed = z.strictObject({ fileName, ...table.shape });

/** Read a CSV file of work-order lines and check every row; nothing is stored. */
export const importCheck = call('import.check', file, fileCheck);

/** Check again after cells were fixed on screen. */
export const importRecheck = call('import.recheck', asFixed, fileCheck);

/** Take the good rows as one step of the history; the bad ones come back to be fixed. */
export const importTake = call(
  'import.take',
  asFixed,
  z.strictObject({
    orders: z.int(),
    lines: z.int(),
    /** Those of the lines whose work order is marked rush. */
    rush: z.array(lineId),
    /** The history's step that it became; null: nothing was new. */
    stepId: z.int().nullable(),
    left: fileCheck,
  }),
);

/** Read a CSV file of finished operations (core/import/finished-rows.ts) and check every row; nothing is stored. */
export const importFinishedCheck = call('import.finished.check', file, fileCheck);

/** Check such a file again after cells were fixed on screen. */
export const importFinishedRecheck = call('import.finished.recheck', asFixed, fileCheck);

/** Take the good rows of such a file as one step of the history; the bad ones come back to be fixed. */
export const importFinishedTake = call(
  'import.finished.take',
  asFixed,
  z.strictObject({ operations: z.int(), factId: z.int().nullable(), left: fileCheck }),
);
