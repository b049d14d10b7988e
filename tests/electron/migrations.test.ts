import { createHash } from 'node:crypto';
import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { APPLICATION_ID } from '../../electron/db/migrate.ts';
import { openStore } from '../../electron/db/open.ts';
import { aShop } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { contentOf } from './data-files.ts';
import { memoryLog, migrations, openTestStore, putShop, STAMP, refusalOf, tempFolder } from './support.ts';

/** Released migrations by the SHA-256 of their text. A new one is added here when it is released; none ever changes. */
const RELEASED: Record<string, string> = {
  '0000_first.sql': '3f68beff2c98d9f1254b4b127e43b6d441ad31a9631fd047d2448f8433593010',
  '0001_floor_and_learning.sql': '71a7fddb73f3e1011ebe2a507194e939a2b34f46e07df3163e1f8aa40dc734de',
  '0002_stock_and_cutting.sql': 'e915a10049e857d6f4453fa73dc778d4d4b1c6ba5a8c7000351937d4110bdca0',
  '0003_overrun_and_stock_weight.sql': '12028b6e7039cdb4d24007c0843e6b969ae3bb76ad207bc28b9703f8381c4b67',
  '0004_parts.sql': '3f6a93e27d1d7ac6b4b7b2e4ad9fa437079494a505fb9f98384c0312c9d39b26',
  '0005_sheets_taken.sql': 'df9f3751ba43f3d8be1f873e1be11f40b8d41e91dfdba26c428f73250c46933d',
  '0006_who_ran_it.sql': 'e3e31b4e6ccdf5dccda0ebd078b579093e5683d7d04da75d081a997a8071880b',
  '0007_people_out.sql': 'f5eab4323d213887bf055d7ca26dc1e04175245c208e5f5ae69786b335d41072',
  '0008_importance_stability_currency.sql':
    'bb018c273cf78fe84ee9401ed920bda14fc36bd41bf548bda746ae91c0283b1d',
  '0009_facts_plans_and_backups.sql': '1e63e2a489bf868b5206f6cf4b387d27bf873d77873e5cdf7b170c87222976e6',
  '0010_line_terms_and_names.sql': '1200019f552d7a4c1e6387919b097c634e01a18e62520b60c6e5acb995f180c6',
  '0011_brake_tools.sql': '12bb9e6ef5763d72f753f061d3cb41ddb071da8f09b42e079a7148072be64e0c',
  '0012_extra_blanks.sql': '5e9d3bf7291c3bd856e79bac30704d74bc454fe2dd98bf2bf1efc35c77daa1b6',
  '0013_lots.sql': 'a4b705ad14160b9dfb7353d8b7fa964c64fd80321c0b395eaaf5f01044958d51',
  '0014_kept_lists.sql': '957127caf28eb41a0257d3a70de34d3efc7cef24e3f55fcc7999ca0dac13e1b2',
  '0015_further_steps.sql': 'd85bbad8e0f8a94eec05d98eb5b06a5abeb8f25f6eced9d0902c34d6f5e60f71',
  '0016_deliveries.sql': '57e3fd1b74c1b4aaddc63c31ca7adc9b20bfeef4ce665eb8c4fb1fc44d7cf623',
  '0017_cuts_counted.sql': 'f448279459c4881b35bbc01933bf6f1edb4af6f25f4a47d839faf80324bf2802',
};

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });

/** The migrations with one more, as the next version will have them. */
function withNextMigration(sql: string): string {
  const folder = join(tempFolder(), 'migrations');
  cpSync(migrations, folder, { recursive: true });
  const journalFile = join(folder, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(journalFile, 'utf8')) as {
    entries: { idx: number; when: number; tag: string }[];
  };
  const last = journal.entries.at(-1)!;
  journal.entries.push({ ...last, idx: last.idx + 1, when: last.when + 1, tag: 'next' });
  writeFileSync(journalFile, JSON.stringify(journal));
  writeFileSync(join(folder, 'next.sql'), sql);
  return folder;
}

describe('a fresh data file', () => {
  it('has one strict table a row kind, and the history', () => {
    const file = join(tempFolder(), 'fresh.db');
    open(file).close();
    const connection = new Database(file, { readonly: true });
    const tables = connection
      .prepare(
        "select name, strict from pragma_table_list where schema = 'main' and name not like 'sqlite_%'",
      )
      .all() as { name: string; strict: number }[];
    expect(tables.map((t) => t.name).sort()).toEqual(
      'absence calendar changeover colour cutAnswer cutCount cutList delivery downtime fact fileLayout keptList learned line machine material movement order otherName part pin published queue record savedPlan setAside settings sheet step tool'.split(
        ' ',
      ),
    );
    expect(tables.every((t) => t.strict === 1)).toBe(true);
    expect(connection.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    connection.close();
  });

  it('may begin as an empty file', () => {
    const file = join(tempFolder(), 'empty.db');
    writeFileSync(file, '');
    open(file).close();
    expect(Object.keys(contentOf(file))).toContain('order');
  });
});

describe('released migrations', () => {
  it('are never edited', () => {
    const files = readdirSync(migrations).filter((name) => name.endsWith('.sql'));
    const hashes = files.map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(migrations, name)))
        .digest('hex'),
    ]);
    expect(Object.fromEntries(hashes)).toEqual(RELEASED);
  });
});

describe('a data file from the version before', () => {
  /** drizzle-kit rebuilds a table so when a column changes: drop the old one, rename the new one. */
  const REBUILD_ORDER = `CREATE TABLE "__new_order" ("id" text PRIMARY KEY NOT NULL, "customer" text NOT NULL, "release" integer,
    "due" integer NOT NULL, "importance" real NOT NULL, "rush" integer NOT NULL, "status" text NOT NULL, "note" text NOT NULL,
    "revision" integer NOT NULL, "closedAt" integer) STRICT;
--> statement-breakpoint
INSERT INTO "__new_order" SELECT * FROM "order";
--> statement-breakpoint
DROP TABLE "order";
--> statement-breakpoint
ALTER TABLE "__new_order" RENAME TO "order";`;

  it('keeps every row when a table that others refer to is rebuilt', () => {
    const file = join(tempFolder(), 'old.db');
    const store = open(file);
    putShop(store, anEverythingShop());
    store.close();
    const before = contentOf(file);
    open(file, withNextMigration(REBUILD_ORDER)).close();
    expect(contentOf(file)).toEqual(before);
    expect(before.line).toHaveLength(3);
  });

  it('is copied beside itself before anything is changed', () => {
    const file = join(tempFolder(), 'old.db');
    const store = open(file);
    putShop(store, aShop());
    store.close();
    const before = contentOf(file);
    open(file, withNextMigration('ALTER TABLE "order" ADD COLUMN "extra" text;')).close();
    expect(contentOf(join(dirname(file), 'backups', `old ${STAMP} before-update.db`))).toEqual(before);
    expect(contentOf(file)).not.toEqual(before);
  });

  it('stays as it was when the new version would break a reference', () => {
    const file = join(tempFolder(), 'old.db');
    const store = open(file);
    putShop(store, aShop());
    store.close();
    const before = contentOf(file);
    const refusal = refusalOf(() => open(file, withNextMigration('DELETE FROM "colour";')));
    expect(refusal.message).toMatch(/could not be brought to this version.*left as it is/);
    expect(contentOf(file)).toEqual(before);
    open(file).close();
  });

  it('is not copied when there is nothing to bring up to date', () => {
    const file = join(tempFolder(), 'same.db');
    open(file).close();
    open(file).close();
    expect(existsSync(join(dirname(file), 'backups'))).toBe(false);
  });
});

describe('a data file that cannot be used', () => {
  /** Refused with a sentence, and still the same bytes. */
  function refusedUntouched(file: string, as = 'damaged'): string {
    const before = readFileSync(file);
    const { message, code } = refusalOf(() => open(file));
    expect(code).toBe(as);
    expect(message).toContain(file);
    expect(readFileSync(file).equals(before)).toBe(true);
    return message;
  }

  it('from a newer version is refused, naming both formats', () => {
    const file = join(tempFolder(), 'newer.db');
    open(file, withNextMigration('ALTER TABLE "order" ADD COLUMN "extra" text;')).close();
    expect(refusedUntouched(file, 'unavailable')).toMatch(
      /newer Foldweek \(format 19; this one knows up to 18\)/,
    );
  });

  it('that is no database at all is named and left alone', () => {
    const file = join(tempFolder(), 'text.db');
    writeFileSync(file, 'This is a letter, not a database, and long enough for a header.');
    expect(refusedUntouched(file)).toMatch(/is damaged and was left as it is/);
  });

  it('with destroyed pages is named and left alone', () => {
    const file = join(tempFolder(), 'torn.db');
    const store = open(file);
    putShop(store, aShop());
    store.close();
    const bytes = readFileSync(file);
    bytes.fill(0xff, 4096, 40_960);
    writeFileSync(file, bytes);
    expect(refusedUntouched(file)).toMatch(/is damaged and was left as it is/);
  });

  it('that was cut short is named and left alone', () => {
    const file = join(tempFolder(), 'short.db');
    const store = open(file);
    putShop(store, aShop());
    store.close();
    writeFileSync(file, readFileSync(file).subarray(0, 10_000));
    expect(refusedUntouched(file)).toMatch(/is damaged and was left as it is/);
  });

  it('of another program is named and left alone', () => {
    const file = join(tempFolder(), 'other.db');
    const other = new Database(file);
    other.exec('create table recipes (id integer primary key, name text)');
    other.close();
    expect(refusedUntouched(file)).toMatch(/is not a Foldweek data file/);
  });

  it('is refused while another Foldweek has it open', () => {
    const file = join(tempFolder(), 'shared.db');
    openTestStore(file);
    expect(refusalOf(() => open(file))).toMatchObject({ code: 'busy' });
  });
});

describe('the log', () => {
  it('says where the copy was kept', () => {
    const file = join(tempFolder(), 'old.db');
    open(file).close();
    const log = memoryLog();
    openTestStore(file, withNextMigration('ALTER TABLE "order" ADD COLUMN "extra" text;'), log);
    expect(log.lines.join('\n')).toContain(`old ${STAMP} before-update.db`);
  });
});
