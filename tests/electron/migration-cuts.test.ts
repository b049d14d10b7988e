import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { contentOf, COUNT_TABLES, oldMigrations } from './data-files.ts';
import { memoryLog, migrations, STAMP, tempFolder } from './support.ts';

it('a data file from before cuts were counted keeps every row, and has none counted', () => {
  const file = join(tempFolder(), 'before.db');
  const open = (folder: string) => openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
  open(oldMigrations(17)).close();
  const before = contentOf(file);
  expect(before).not.toHaveProperty('cutCount');
  open(migrations).close();
  expect(contentOf(file)).toEqual({ ...before, ...COUNT_TABLES });
});
