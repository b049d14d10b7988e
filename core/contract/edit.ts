import { z } from 'zod';
import { command } from '../edit/command.ts';
import { note } from '../fields.ts';
import { rowChange } from '../shop/row-change.ts';
import { call } from './call.ts';

/** One step that can be undone or redone, as the history lists it. */
const historyEntry = z.strictObject({ id: z.int(), label: z.string(), at: z.int() });

/** Where the shop stands after a change: a screen that knows the number before moves on by the changes. */
const moved = {
  epoch: z.string(),
  revision: z.int(),
  changes: z.array(rowChange),
};

/**
 * Carry out one command. What was decided becomes a step of the history (`stepId`), what happened an entry in the floor's
 * log (`factId`); both null where nothing changed. Refused with sentences when a rule speaks against it.
 */
export const editApply = call(
  'edit.apply',
  z.strictObject({ command }),
  z.strictObject({ label: z.string(), stepId: z.int().nullable(), factId: z.int().nullable(), ...moved }),
);

const which = z.strictObject({
  /** The step meant; null: the caller's newest. */
  stepId: z.int().nullable(),
});
/** Undo a step of the caller's, or redo one; null when there is none. Survives a restart. */
export const editUndo = call('edit.undo', which, z.strictObject({ label: z.string().nullable() }));
export const editRedo = call('edit.redo', which, z.strictObject({ label: z.string().nullable() }));

/**
 * Take back what was reported: it stays in the log, beside an entry that takes it back. For a minute by who reported it,
 * later by anyone who says why. Refused when something else happened on top of it.
 */
export const editTakeBack = call(
  'edit.takeBack',
  z.strictObject({ factId: z.int(), reason: note }),
  z.strictObject({ label: z.string() }),
);

/** The caller's own steps, newest first, at most 50 of each. */
export const editHistory = call(
  'edit.history',
  z.strictObject({}),
  z.strictObject({ undo: z.array(historyEntry), redo: z.array(historyEntry) }),
);
