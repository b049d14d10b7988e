import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { auftraege } from './auftraege.ts';
import { jobs } from './jobs.ts';
import { workOrders } from './work-orders.ts';

/**
 * Writes tests/fixtures/import: three lists of orders as foreign systems write them, each with what it means beside it.
 *   node tests/support/fixture-files/make.ts
 */
const folder = join(import.meta.dirname, '../../fixtures/import');
mkdirSync(folder, { recursive: true });
const files = { 'auftraege.csv': auftraege(), 'work-orders.xlsx': await workOrders(), 'jobs.txt': jobs() };
for (const [name, { bytes, truth }] of Object.entries(files)) {
  writeFileSync(join(folder, name), bytes);
  const json = await format(JSON.stringify(truth), { parser: 'json', printWidth: 110 });
  writeFileSync(join(folder, name.replace(/\.\w+$/, '.truth.json')), json);
}
