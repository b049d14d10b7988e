import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { tableNames } from '../../electron/db/whole.ts';
import { beginService } from '../../electron/service/begin.ts';
import { exportAll } from '../../electron/service/export.ts';
import { madeFrom } from '../support/edits.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { beforeTerms, contentOf, without } from './data-files.ts';
import {
  appFolder,
  editorOf,
  fixedClock,
  livingIn,
  openTestStore,
  refusalOf,
  shopIn,
  storeWith,
  tempFolder,
} from './support.ts';

/** A data file with rows in every table. */
function everything() {
  const file = join(tempFolder(), 'shop.db');
  const store = storeWith(anEverythingShop(), file);
  const edit = editorOf(store);
  edit.apply(madeFrom(anEverythingShop(), { do: 'operation.pin', operations: ['1042/1:brake'] }), 'desk');
  edit.apply(
    { do: 'row.save', kind: 'colour', row: { ...anEverythingShop().colour[0]!, name: '=1+1, "red"\rroof' } },
    'desk',
  );
  const [change] = [
    { kind: 'pin', id: '1043/1:shear', before: null, after: { id: '1043/1:shear', revision: 0 } } as const,
  ];
  store.run('fill', ({ facts, whole }) => {
    facts.add({
      at: 1,
      keptAt: 2,
      command: { do: 'operation.pin', operations: ['1043/1:shear'], seen: {} },
      label: 'x',
      operation: '1043/1:shear',
      machineId: 'S1',
      by: 'floor S1',
      corrects: null,
      reason: '',
      changes: [change],
    });
    whole.put('savedPlan', [
      {
        id: 4,
        name: 'Week 49',
        what: 'named',
        at: 3,
        by: 'desk',
        queues: { S1: [] },
        pins: ['1042/1:shear'],
        figures: { lateLines: 1, lateSeconds: 60, changeovers: 2, changeoverSeconds: 900 },
        stepId: null,
      },
    ]);
    whole.put('cutAnswer', [{ key: 'k', plan: { groups: [] }, settled: true, usedAt: 5 }]);
    whole.put('setAside', [
      { id: 9, kind: 'order', rowId: '7', content: '{"id":"7"}', reason: 'status: lost', at: 6 },
    ]);
  });
  return { file, store };
}

const fill = (file: string, json: string) => {
  const store = openTestStore(file);
  beginService(livingIn(store), fixedClock(), appFolder).export('everything.json', gzipSync(json));
  return store;
};

describe('everything exported', () => {
  it('fills an empty shop with the same rows in every table', async () => {
    const { file, store } = everything();
    const { folder, rows } = await exportAll(store, fixedClock(), '1.2.3');
    store.close();
    const before = contentOf(file);
    expect(Object.keys(before).sort()).toEqual([...tableNames].sort());
    for (const table of tableNames) expect(before[table]!.length, table).toBeGreaterThan(0);
    expect(rows).toBe(Object.values(before).flat().length);

    const other = join(tempFolder(), 'other.db');
    fill(other, readFileSync(join(folder, 'everything.json'), 'utf8')).close();
    expect(contentOf(other)).toEqual(before);
  });

  it('of earlier versions fills it too: lines without terms of their own, no names known, no tools', async () => {
    const { store } = everything();
    const { folder } = await exportAll(store, fixedClock(), '1.2.3');
    type Rows = Record<string, unknown>[];
    const whole = JSON.parse(readFileSync(join(folder, 'everything.json'), 'utf8')) as {
      tables: Record<string, Rows>;
    };
    const line = whole.tables.line![0]!;
    const changes = [{ kind: 'line', id: line.id, before: { ...line, quantity: 3 }, after: line }];
    whole.tables.step!.at(-1)!.changes = changes;
    const older = (kind: string, row: object): object => beforeTerms(kind, row);
    const before = {
      ...whole,
      tables: {
        ...without(whole.tables, 'otherName', 'fileLayout', 'tool', 'keptList', 'delivery', 'cutCount'),
        machine: whole.tables.machine!.map((row) => older('machine', row)),
        line: whole.tables.line!.map((row) => older('line', row)),
        settings: whole.tables.settings!.map((row) => older('settings', row)),
        step: whole.tables.step!.map((row) => ({
          ...row,
          changes: (row.changes as { kind: string; before: object | null; after: object | null }[]).map(
            (one) => ({
              ...one,
              before: one.before && older(one.kind, one.before),
              after: one.after && older(one.kind, one.after),
            }),
          ),
        })),
      },
    };
    const filled = fill(join(tempFolder(), 'other.db'), JSON.stringify(before));
    expect(shopIn(filled)).toMatchObject({
      line: anEverythingShop().line,
      machine: anEverythingShop().machine,
      ...{ otherName: [], fileLayout: [], tool: [], keptList: [], delivery: [], cutCount: [] },
    });
    const steps = filled.run('read', ({ whole: all }) => [...all.pages('step', 1000)].flat());
    expect(steps.at(-1)!.changes).toEqual(changes);
  });

  it('goes on counting where the other shop left off', async () => {
    const { store } = everything();
    const { folder } = await exportAll(store, fixedClock(), '1.2.3');
    const filled = fill(
      join(tempFolder(), 'other.db'),
      readFileSync(join(folder, 'everything.json'), 'utf8'),
    );
    const last = (of: typeof store) =>
      Math.max(
        ...of.run('read', ({ whole }) => [...whole.pages('step', 1000)].flat()).map((s) => s.id as number),
      );
    const before = last(filled);
    editorOf(filled).apply(
      madeFrom(shopIn(filled), { do: 'operation.pin', operations: ['1042/1:shear'] }),
      'desk',
    );
    expect(last(filled)).toBe(before + 1);
  });

  it('has a CSV file a table: days with their year, numbers as numbers, no formula', async () => {
    const { file, store } = everything();
    const { folder } = await exportAll(store, fixedClock(), '1.2.3');
    expect(readdirSync(folder).sort()).toEqual(
      ['everything.json', ...tableNames.map((t) => `${t}.csv`)].sort(),
    );
    expect(dirname(folder)).toBe(join(dirname(file), 'exports'));
    const read = (table: string) =>
      Papa.parse<Record<string, string>>(readFileSync(join(folder, `${table}.csv`), 'utf8'), {
        header: true,
        newline: '\r\n',
        skipEmptyLines: true,
      }).data;
    expect(read('order')[0]).toMatchObject({
      id: '1042',
      due: expect.stringMatching(/^2026-12-\d\d \d\d:\d\d:\d\d$/),
    });
    expect(read('line')[0]).toMatchObject({ quantity: String(anEverythingShop().line[0]!.quantity) });
    expect(read('colour')[0]).toMatchObject({ name: `'=1+1, "red"\rroof` });
  });

  it('is refused with its first wrong row named, and nothing is taken from it', async () => {
    const { store } = everything();
    const { folder } = await exportAll(store, fixedClock(), '1.2.3');
    const whole = JSON.parse(readFileSync(join(folder, 'everything.json'), 'utf8')) as {
      tables: { line: { quantity: unknown }[] };
    };
    whole.tables.line[1]!.quantity = 'many';
    const other = join(tempFolder(), 'other.db');
    expect(refusalOf(() => fill(other, JSON.stringify(whole))).message).toMatch(
      /^everything.json cannot be read: line, row 2, quantity: .* Nothing was taken from it\.$/,
    );
    for (const wrong of ['', '{}', '[1]', '{"format":"else/1"}', JSON.stringify({ ...whole, surplus: 1 })])
      expect(refusalOf(() => fill(join(tempFolder(), 'x.db'), wrong)).message).toMatch(
        /Nothing was taken from it/,
      );
  });

  it('with a row that refers to nothing leaves the shop empty', async () => {
    const { store } = everything();
    const { folder } = await exportAll(store, fixedClock(), '1.2.3');
    const whole = JSON.parse(readFileSync(join(folder, 'everything.json'), 'utf8')) as {
      tables: { part: unknown[] };
    };
    whole.tables.part = [];
    const empty = openTestStore(join(tempFolder(), 'other.db'));
    const begin = beginService(livingIn(empty), fixedClock(), appFolder);
    const refusal = refusalOf(() => begin.export('everything.json', gzipSync(JSON.stringify(whole))));
    expect(refusal.message).toMatch(/refer/);
    expect(
      empty.run('count', ({ whole: w }) => tableNames.map((table) => [...w.pages(table, 1000)].length)),
    ).toEqual(tableNames.map(() => 0));
    expect(begin.fresh()).toBe(true);
  });

  it('does not fill a shop that holds something', async () => {
    const { file, store } = everything();
    const { folder } = await exportAll(store, fixedClock(), '1.2.3');
    store.close();
    expect(
      refusalOf(() => fill(file, readFileSync(join(folder, 'everything.json'), 'utf8'))).message,
    ).toMatch(/already holds a shop/);
  });
});
