import type Database from 'better-sqlite3';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { Refused } from '../refused.ts';

/** "Fold" in ASCII: tells our files from other SQLite files. */
export const APPLICATION_ID = 0x466f6c64;

/**
 * Bring a data file to this version. The file's `user_version` is the count of migrations it has had.
 * Foreign keys go off before the transaction (inside one the pragma does nothing, and a table rebuild would then
 * empty the tables that refer to it), and every reference is checked before the commit.
 * @param backup called before a file that holds data is changed
 * @throws Refused on a file from a newer version, or when a reference would break; the file is then as before
 */
export function migrate(
  connection: Database.Database,
  folder: string,
  file: string,
  backup: () => void,
): void {
  const migrations = readMigrationFiles({ migrationsFolder: folder });
  const version = connection.pragma('user_version', { simple: true }) as number;
  if (version > migrations.length)
    throw new Refused(
      'unavailable',
      `The data file ${file} comes from a newer Foldweek (format ${version}; this one knows up to ${migrations.length}). ` +
        'It was left as it is. Install the newer version to open it.',
    );
  if (version === migrations.length) return;
  if (version > 0) backup();
  connection.pragma('foreign_keys = OFF');
  connection.transaction(() => {
    for (const migration of migrations.slice(version))
      for (const statement of migration.sql) connection.exec(statement);
    const broken = connection.pragma('foreign_key_check') as { table: string }[];
    if (broken.length > 0)
      throw new Refused(
        'damaged',
        `The data file ${file} could not be brought to this version: ${broken.length} rows of "${broken[0]?.table}" refer to ` +
          'missing ones. It was left as it is, with a copy in the folder backups.',
      );
    connection.pragma(`user_version = ${migrations.length}`);
  })();
  connection.pragma('foreign_keys = ON');
}
