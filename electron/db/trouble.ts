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
  if (code === 'SQLITE_READONLY_DBMOVED') return new Unreachable(file, 'it was moved');
  if (/^(SQLITE_(READONLY|PERM)|EACCES|EPERM|EROFS)/.test(code)) return notWritable(file);
  if (/^(SQLITE_(CANTOPEN|IOERR)|EIO|ENOENT|ENOTDIR|EISDIR|EEXIST)/.test(code))
    return new Unreachable(file, code);
  return null;
}

export const damaged = (file: string): Refused =>
  new Refused(
    'damaged',
    `The data file ${file} is damaged and was left as it is. Backups lie in the folder “backups” beside it: open one, or name another file with --data.`,
  );

export const notWritable = (file: string): Refused =>
  new Refused(
    'unavailable',
    `The data file ${file} is whole, but this user may not write it or its folder. Nothing was changed; have the ` +
      'permission put right, then try again.',
  );

/** The file is away, or its drive does not answer: the connection to it is good for nothing any more. */
export class Unreachable extends Refused {
  /** @param why what shows it, for whoever mends it */
  constructor(file: string, why: string) {
    super(
      'unavailable',
      `The data file ${file} cannot be reached (${why}): its drive may be unplugged or its network down. Nothing of this ` +
        'step was kept, all before it is; connect the drive, then try again.',
    );
  }
}
