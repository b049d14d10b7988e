import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Settings } from '../../core/shop/settings.ts';
import { migrations, tempFolder } from './support.ts';

/** Every table of a data file with all its rows. */
export function contentOf(file: string): Record<string, unknown[]> {
  const connection = new Database(file, { readonly: true });
  const tables = connection
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%' order by name")
    .pluck()
    .all() as string[];
  const content = Object.fromEntries(
    tables.map((table) => [table, connection.prepare(`select * from "${table}" order by 1`).all()]),
  );
  connection.close();
  return content;
}

/** The first so many migrations, as an older version had them. */
export function oldMigrations(count: number): string {
  const folder = join(tempFolder(), 'migrations');
  cpSync(migrations, folder, { recursive: true });
  const journalFile = join(folder, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(journalFile, 'utf8')) as { entries: unknown[] };
  writeFileSync(journalFile, JSON.stringify({ ...journal, entries: journal.entries.slice(0, count) }));
  return folder;
}

/** Writes rows into a file's tables as they are, past every check. */
export const rowWriter =
  (connection: Database.Database) =>
  (table: string, row: object): void => {
    const values = Object.values(row).map((v: unknown) =>
      typeof v === 'boolean' ? Number(v) : v !== null && typeof v === 'object' ? JSON.stringify(v) : v,
    );
    const names = Object.keys(row).map((name) => `"${name}"`);
    connection
      .prepare(`insert into "${table}" (${names.join()}) values (${names.map(() => '?').join()})`)
      .run(...values);
  };

/** The table that came with the floor's counts of cuts: empty. */
export const COUNT_TABLES = { cutCount: [] };

/** The table that came with expected deliveries: empty. */
export const DELIVERY_TABLES = { ...COUNT_TABLES, delivery: [] };

/** What rows got with them, as it is stored. */
const METAL: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { settings: { awaitMetal: 1 } };

/** A row as it was before that. */
export const beforeDeliveries = (kind: string, row: object): object =>
  without(row, ...Object.keys(METAL[kind] ?? {}));

/** A stored row of such a file as it is after. */
export const sinceDeliveries = (kind: string, row: object): object => ({ ...row, ...METAL[kind] });

/** The table that came with lists kept under a name: empty. */
export const LIST_TABLES = { ...DELIVERY_TABLES, keptList: [] };

/** What rows got with further steps of a routing, as it is stored. */
const STEPS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { part: { steps: '[]' } };

/** A row as it was before that. */
export const beforeSteps = (kind: string, row: object): object =>
  without(beforeDeliveries(kind, row), ...Object.keys(STEPS[kind] ?? {}));

/** A stored row of such a file as it is after. */
export const sinceSteps = (kind: string, row: object): object => ({
  ...sinceDeliveries(kind, row),
  ...STEPS[kind],
});

/** What rows got where sheets are told apart by lot, paint system and film, as it is stored. */
const LOTS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  settings: { stockKnows: null },
  sheet: { lot: '', paint: null, film: null },
  line: { lot: '', paint: null, film: null, mixLots: 0 },
};

/** A row as it was before that. */
export const beforeLots = (kind: string, row: object): object =>
  without(beforeSteps(kind, row), ...Object.keys(LOTS[kind] ?? {}));

/** A stored row of such a file as it is after. */
export const sinceLots = (kind: string, row: object): object => ({
  ...sinceSteps(kind, row),
  ...LOTS[kind],
});

/** What rows got with blanks to set up and spare ones, as it is stored. */
const EXTRA: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  settings: { extraBlanks: '{"setUp":0,"scrapShare":0}' },
  part: { extraBlanks: null },
};

/** A row as it was before that. */
export const beforeExtra = (kind: string, row: object): object =>
  without(beforeLots(kind, row), ...Object.keys(EXTRA[kind] ?? {}));

/** A stored row of such a file as it is after. */
export const sinceExtra = (kind: string, row: object): object => ({
  ...sinceLots(kind, row),
  ...EXTRA[kind],
});

/** What rows got with brake tools, times of more than one edition and the shop's rule on remnants, as it is stored. */
const TOOLS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  settings: { remnants: null },
  machine: { betweenFramesMm: null, timesEdition: 1 },
};

/** A row as it was before that. */
export const beforeTools = (kind: string, row: object): object =>
  without(beforeExtra(kind, row), ...Object.keys(TOOLS[kind] ?? {}));

/** A stored row of such a file as it is after. */
export const sinceTools = (kind: string, row: object): object => ({
  ...sinceExtra(kind, row),
  ...TOOLS[kind],
});

/** The table that came with brake tools: empty. */
export const TOOL_TABLES = { ...LIST_TABLES, tool: [] };

/** What rows got with terms of lines' own and the shop's way of writing, as it is stored. */
const TERMS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  settings: { decimals: 'point', setUpDone: '[]' },
  line: { due: null, release: null, importance: null, note: '' },
};

/** A row as it was before that. */
export const beforeTerms = (kind: string, row: object): object =>
  without(beforeTools(kind, row), ...Object.keys(TERMS[kind] ?? {}));

/** A stored row of such a file as it is after. */
export const sinceTerms = (kind: string, row: object): object => ({
  ...sinceTools(kind, row),
  ...TERMS[kind],
});

/** A row as a file before importance, stability and currencies had it (and before plans were published). */
export function beforeImportance(kind: string, later: object): object {
  const row = beforeTerms(kind, later);
  if (kind === 'order') {
    const { importance, ...rest } = row as Record<string, unknown>;
    return { ...without(rest, 'closedAt'), weight: importance };
  }
  if (kind !== 'settings') return row;
  const { stability, ...weights } = (row as Settings).weights;
  const rest = without(row, 'currency', 'publishing', 'backupFolder');
  return { ...rest, weights: { ...weights, calm: stability } };
}

/** A stored row of such a file as it is after. */
export function sinceImportance(kind: string, earlier: object): object {
  const row = sinceTerms(kind, earlier);
  if (kind === 'order') {
    const { weight, ...rest } = row as Record<string, unknown>;
    return { ...rest, importance: weight, closedAt: null };
  }
  if (kind === 'step') return { ...row, by: '' };
  if (kind !== 'settings') return row;
  const weights = (row as { weights: string }).weights.replace('"calm":', '"stability":');
  return { ...row, currency: null, weights, publishing: 'always', backupFolder: null };
}

/** The tables that came with the names remembered of files: empty. */
export const NAME_TABLES = { ...TOOL_TABLES, fileLayout: [], otherName: [] };

/** The tables that came with publishing, the floor's log and set-aside rows, and later: empty. */
export const PUBLISHING_TABLES = {
  ...NAME_TABLES,
  changeover: [],
  cutAnswer: [],
  fact: [],
  published: [],
  savedPlan: [],
  setAside: [],
};

/** The settings of a file from before stock had a weight, and rules about parts verdicts. */
export const settingsBefore = ({ settings }: { readonly settings: Settings }): object => ({
  ...withoutLaterFields('settings', settings),
  weights: without((beforeImportance('settings', settings) as Settings).weights, 'material'),
});

/** A row as it was before it had some fields. */
export const without = (row: object, ...fields: string[]): object =>
  Object.fromEntries(Object.entries(row).filter(([field]) => !fields.includes(field)));

/** A stored row of settings as it is after: stock weighs what it does in a new shop. */
export const withStockWeight = (row: object): object => ({
  ...row,
  weights: JSON.stringify({ ...JSON.parse((row as { weights: string }).weights), material: 10 }),
});

/** What rows got with the families, measured deductions and verdicts of parts, and with the names asked on the floor, as it is stored. */
const LATER_FIELDS: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  settings: { partRules: '{}', askWho: 0 },
  material: { temper: null, deductions: '[]' },
  part: { bendOrder: null, family: null },
  record: { who: '[]' },
};

/** A row as it was before all of that. */
export const withoutLaterFields = (kind: string, row: object): object =>
  without(beforeImportance(kind, row), ...Object.keys(LATER_FIELDS[kind] ?? {}));

/** Every table's stored rows after it, and the tables that came with it, empty. */
export const withLaterFields = (content: Record<string, object[]>): Record<string, object[]> => ({
  absence: [],
  ...PUBLISHING_TABLES,
  ...Object.fromEntries(
    Object.entries(content).map(([kind, rows]) => [
      kind,
      rows.map((row) => ({ ...sinceImportance(kind, row), ...LATER_FIELDS[kind] })),
    ]),
  ),
});
