import { Refused } from '../refused.ts';

/** What SQLite and the file system say, as sentences for the user. Null: not one of these, so a bug. */
export function troubleOf(error: unknown, file: string): Refused | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED'))
    return new Refused(
      'busy',
      `The data file ${file} is open in another Foldweek. Close that one, then try again.`,
    );
  if (code.startsWith('SQLITE_CORRUPT') || code.startsWith('SQLITE_NOTADB')) return damaged(file);
  if (code.startsWith('SQLITE_FULL') || code === 'ENOSPC')
    return new Refused(
      'refused',
      'The disk is full. Nothing of this step was kept; free some space, then try again.',
    );
  if (code.startsWith('SQLITE_CONSTRAINT_FOREIGNKEY'))
    return new Refused(
      'refused',
      'Something else still refers to this. Nothing was changed; change that first.',
    );
  if (/^(SQLITE_(CANTOPEN|READONLY|PERM|IOERR)|EACCES|EPERM|EROFS|ENOTDIR|EISDIR|EEXIST)/.test(code))
    return new Refused(
      'damaged',
      `The data file ${file} cannot be opened for writing (${code}). Check the folder's permissions, or name another file with --data.`,
    );
  return null;
}

export const damaged = (file: string): Refused =>
  new Refused(
    'damaged',
    `The data file ${file} is damaged and was left as it is. Put a backup copy in its place, or name another file with --data.`,
  );
