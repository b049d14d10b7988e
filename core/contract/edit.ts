import { z } from 'zod';
import { command } from '../edit/command.ts';
import { call } from './call.ts';

/** One step that can be undone or redone, as the history lists it. */
const historyEntry = z.strictObject({ id: z.int(), label: z.string(), at: z.int() });

/**
 * Carry out one command; it becomes one entry of the history. Refused with sentences when a rule speaks against it.
 * `stepId` is the newest step after it, 0 without one.
 */
export const editApply = call(
  'edit.apply',
  z.strictObject({ command }),
  z.strictObject({ label: z.string(), stepId: z.int() }),
);

/** Undo the newest step, or redo the last undone one; null when there is none. Survives a restart. */
export const editUndo = call(
  'edit.undo',
  z.strictObject({}),
  z.strictObject({ label: z.string().nullable() }),
);
export const editRedo = call(
  'edit.redo',
  z.strictObject({}),
  z.strictObject({ label: z.string().nullable() }),
);

/** Newest first, at most 50 of each. */
export const editHistory = call(
  'edit.history',
  z.strictObject({}),
  z.strictObject({ undo: z.array(historyEntry), redo: z.array(historyEntry) }),
);
