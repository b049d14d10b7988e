import { z } from 'zod';
import { call } from './call.ts';

const backupName = z.string().regex(/^[^/\\]{1,200}\.db$/, 'the name of a backup');

/** Why a backup was made. */
export const backupReason = z.enum([
  'start',
  'day',
  'asked',
  'before-update',
  'before-import',
  'before-restore',
]);

/** The backups of this data file, newest first, and what keeps one from being made. */
export const backupsRead = call(
  'backups.read',
  z.strictObject({}),
  z.strictObject({
    folder: z.string(),
    /** The second folder that Settings name; null: none. */
    second: z.string().nullable(),
    /** Sentences: why the last backup failed, why the second folder got none. */
    troubles: z.array(z.string()),
    backups: z.array(
      z.strictObject({
        name: z.string(),
        at: z.int(),
        reason: backupReason,
        bytes: z.int(),
        /** Where it lies. */
        where: z.enum(['first', 'second', 'both']),
      }),
    ),
  }),
);
export type BackupReason = z.infer<typeof backupReason>;

/** Make one now. */
export const backupsMake = call('backups.make', z.strictObject({}), z.strictObject({ name: z.string() }));

/** What a backup holds. Refused when it is damaged. */
export const backupsPreview = call(
  'backups.preview',
  z.strictObject({ name: backupName }),
  z.strictObject({
    orders: z.int(),
    lines: z.int(),
    /** When something was last entered in it; null: never. */
    newest: z.int().nullable(),
  }),
);

/** Go on with a backup. The present file is kept as another one first; its name is answered. */
export const backupsRestore = call(
  'backups.restore',
  z.strictObject({ name: backupName }),
  z.strictObject({ kept: z.string() }),
);

/** Rows that could not be read and were set aside, newest first. */
export const asideRead = call(
  'aside.read',
  z.strictObject({}),
  z.array(
    z.strictObject({
      id: z.int(),
      kind: z.string(),
      rowId: z.string(),
      content: z.string(),
      reason: z.string(),
      at: z.int(),
    }),
  ),
);

const rowAside = z.strictObject({ id: z.int() });
/** Put a row that was set aside back into the shop. Refused while it cannot be read, or what it belongs to is missing. */
export const asidePutBack = call('aside.putBack', rowAside, z.strictObject({}));
/** Remove a row that was set aside, for good. */
export const asideRemove = call('aside.remove', rowAside, z.strictObject({}));

/** Write everything into a folder beside the data file: one JSON file (`foldweek-export/1`) and one CSV file a table. */
export const exportWrite = call(
  'export.write',
  z.strictObject({}),
  z.strictObject({ folder: z.string(), rows: z.int() }),
);
