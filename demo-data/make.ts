import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { importFiles, shopFiles } from './make/files.ts';
import { readAnchor } from './read.ts';

/**
 * Writes the generated files of the demo (README.md says which are written by hand):
 *   node demo-data/make.ts [--week MONDAY]
 * The shop folder always comes out the same. `--week 2026-11-30` dates the files to import for that week; without it
 * they are dated for the shop folder's own Monday.
 */
const root = fileURLToPath(new URL('.', import.meta.url));
const { values } = parseArgs({ options: { week: { type: 'string' } } });
const week = values.week ?? readAnchor(join(root, 'shop'));
if (!/^\d{4}-\d{2}-\d{2}$/.test(week) || new Date(`${week}T00:00:00Z`).getUTCDay() !== 1) {
  console.error(`--week ${week} is not a Monday. Nothing was written. Give a Monday like 2026-11-30.`);
  process.exit(1);
}
for (const [path, text] of Object.entries({ ...shopFiles(root), ...importFiles(root, week) })) {
  writeFileSync(join(root, path), text);
}
