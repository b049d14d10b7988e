import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowKinds, type RowKind, type RowOf } from '../../core/shop/state.ts';
import { aLine, aRecord, aShear, at, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { openTestStore, refusalOf, storeWith, tempFolder } from './support.ts';

describe('the data file', () => {
  const shop = anEverythingShop();

  it.each(Object.keys(rowKinds) as RowKind[])('gives back every %s as it was put', (kind) => {
    const store = storeWith(shop);
    const put: readonly RowOf<RowKind>[] = kind === 'settings' ? [shop.settings] : shop[kind];
    expect(put.length).toBeGreaterThan(0);
    expect(store.run('read', ({ rows }) => rows.read(kind))).toEqual(put);
    for (const row of put) expect(store.run('read', ({ rows }) => rows.get(kind, row.id))).toEqual(row);
  });

  it('lists line 2 before line 10', () => {
    const store = storeWith({
      ...shop,
      line: [aLine({ number: 10 }), aLine({ number: 2 }), aLine({ number: 1 })],
    });
    expect(store.run('read', ({ rows }) => rows.read('line')).map((l) => l.id)).toEqual([
      '1042/1',
      '1042/2',
      '1042/10',
    ]);
  });

  it('writes a row over the one with its id, empty fields too', () => {
    const store = storeWith(shop);
    const bare = aShear({ backGaugeMm: null, state: null, standards: {}, revision: 1 });
    store.run('put', ({ rows }) => rows.put('machine', bare));
    expect(store.run('read', ({ rows }) => rows.get('machine', 'S1'))).toEqual(bare);
  });

  it('keeps nothing of a use case that fails half-way', () => {
    const store = storeWith(shop);
    expect(() =>
      store.run('half', ({ rows }) => {
        rows.remove('pin', '1043/1:shear');
        throw new Error('the power went');
      }),
    ).toThrow('the power went');
    expect(store.run('read', ({ rows }) => rows.read('pin'))).toEqual(shop.pin);
  });

  it('has everything that was kept when the app dies: power cuts are another matter, the disk’s cache is copied here', () => {
    const file = join(tempFolder(), 'shop.db');
    storeWith(shop, file);
    // What other programs see of the file at this instant, while it is still open.
    const copy = join(tempFolder(), 'shop.db');
    for (const ending of ['', '-wal']) cpSync(`${file}${ending}`, `${copy}${ending}`);
    const after = openTestStore(copy);
    expect(after.run('read', ({ rows }) => rows.read('line'))).toEqual(shop.line);
  });

  it('takes a step that removes and adds in any order, but none that leaves a line without its part', () => {
    const store = storeWith(shop);
    const refusal = refusalOf(() => store.run('remove', ({ rows }) => rows.remove('part', 'corner')));
    expect(refusal.message).toMatch(/still refers to this/);
    store.run('swap', ({ rows }) => {
      rows.remove('part', 'corner');
      rows.put('part', { ...shop.part[0]!, name: 'Corner, new' });
    });
    expect(store.run('read', ({ rows }) => rows.get('part', 'corner'))?.name).toBe('Corner, new');
  });
});

describe('records', () => {
  const store = () => {
    const open = storeWith({ ...anEverythingShop(), record: [] });
    open.run('put', ({ rows }) => {
      rows.put('line', aLine({ number: 2, gauge: '26', status: 'done' }));
      rows.put('record', aRecord({ id: '1042/1:shear', start: at('2026-11-30', '07:00') }));
      rows.put('record', aRecord({ id: '1042/2:shear', start: at('2026-11-30', '09:00') }));
      rows.put('record', aRecord({ id: '900/1:shear', start: at('2026-11-27', '07:00') }));
      rows.put('record', aRecord({ id: '901/1:shear', start: at('2026-11-27', '07:00') }));
      rows.put('record', aRecord({ id: '1043/1:shear', start: at('2026-11-30', '08:00'), end: null }));
    });
    return open;
  };

  const present = (open: ReturnType<typeof store>) =>
    open.run('read', ({ rows }) => rows.living(NOW)).records.map((r) => r.id);

  it('of the lines of living orders go with the shop; those of forgotten lines do not', () => {
    const open = store();
    open.run('put', ({ rows }) => {
      rows.put('record', aRecord({ start: at('2026-11-30', '07:00'), end: at('2026-11-30', '11:00') }));
    });
    expect(present(open)).toEqual(['1042/1:shear', '1042/2:shear', '1043/1:shear']);
  });

  it('tell of each machine what it finished last, also when the line of it is done', () => {
    const open = store();
    open.run('put', ({ rows }) => {
      const end = at('2026-11-30', '10:00');
      rows.put('record', aRecord({ id: '1042/2:shear', start: at('2026-11-30', '09:00'), end }));
      rows.put('record', aRecord({ id: '900/1:brake', machineId: 'B1', end }));
    });
    expect(present(open)).toEqual(['900/1:brake', '1042/1:shear', '1042/2:shear', '1043/1:shear']);
  });

  it('that are finished come latest first, page by page, and none is lost between two that began together', () => {
    const open = store();
    const page = (before: number | null) => open.run('read', ({ rows }) => rows.finishedRecords(before, 3));
    const first = page(null);
    expect(first.total).toBe(4);
    expect(first.records.map((r) => r.id)).toEqual([
      '1042/2:shear',
      '1042/1:shear',
      '900/1:shear',
      '901/1:shear',
    ]);
    expect(page(first.records.at(-1)!.start).records).toEqual([]);
  });
});
