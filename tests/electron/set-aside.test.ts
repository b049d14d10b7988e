import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { anEverythingShop } from '../support/everything-shop.ts';
import { openTestStore, shopIn, storeWith, tempFolder } from './support.ts';

/** The shop's file with something spoilt in it, opened again. */
function spoilt(...statements: string[]) {
  const file = join(tempFolder(), 'row.db');
  storeWith(anEverythingShop(), file).close();
  const connection = new Database(file);
  for (const statement of statements) connection.exec(statement);
  connection.close();
  return openTestStore(file);
}

const asideIn = (store: ReturnType<typeof spoilt>) =>
  store.run('read', ({ rows }) => rows.aside.list()).map(({ kind, rowId, reason }) => [kind, rowId, reason]);

describe('a row that cannot be read', () => {
  it('is set aside as it was found, with the reason; the rest opens', () => {
    const store = spoilt(`update "record" set pauses = '[{"from":' where id = '1042/1:shear'`);
    const shop = shopIn(store);
    expect(shop.record).toEqual([]);
    expect(shop.order).toEqual(anEverythingShop().order);
    expect(shop.line).toEqual(anEverythingShop().line);
    expect(asideIn(store)).toEqual([['record', '1042/1:shear', expect.stringMatching(/^pauses: /)]]);
    const [kept] = store.run('read', ({ rows }) => rows.aside.list());
    expect(JSON.parse(kept!.content)).toMatchObject({
      id: '1042/1:shear',
      pauses: '[{"from":',
      machineId: 'S1',
    });
  });

  it('takes those along that could not stand without it, and no others', () => {
    const store = spoilt(`update "order" set status = 'lost' where id = '1042'`);
    const shop = shopIn(store);
    expect(shop.order.map(({ id }) => id)).toEqual(['1043']);
    expect(shop.line.map(({ orderId }) => orderId)).not.toContain('1042');
    expect(shop.line.map(({ orderId }) => orderId)).toContain('1043');
    expect(asideIn(store)).toContainEqual(['order', '1042', expect.stringMatching(/^status: /)]);
    expect(asideIn(store)).toContainEqual([
      'line',
      '1042/1',
      'It belongs to order “1042”, which could not be read.',
    ]);
  });

  it('is not read a second time, also where it stood behind others', () => {
    const store = spoilt(`update "part" set profile = 'x' where id = 'corner'`);
    const first = shopIn(store);
    const parts = new Set(first.part.map(({ id }) => id));
    expect(first.line.every(({ partId }) => parts.has(partId))).toBe(true);
    const aside = asideIn(store);
    expect(shopIn(store)).toEqual(first);
    expect(asideIn(store)).toEqual(aside);
  });

  it('of the settings is mended field by field, since nothing works without them', () => {
    const store = spoilt(`update "settings" set units = 'cubits', weights = '{}'`);
    const { settings } = anEverythingShop();
    expect(shopIn(store).settings).toMatchObject({
      name: settings.name,
      timeZone: settings.timeZone,
      units: 'in',
      weights: { lateness: 1 },
    });
    expect(asideIn(store)).toEqual([['settings', 'shop', expect.any(String)]]);
  });

  it('leaves a file without broken references', () => {
    const file = join(tempFolder(), 'row.db');
    storeWith(anEverythingShop(), file).close();
    const connection = new Database(file);
    connection.exec(`update "calendar" set shifts = 'x'`);
    connection.close();
    const store = openTestStore(file);
    shopIn(store);
    store.close();
    const after = new Database(file);
    expect(after.pragma('foreign_key_check')).toEqual([]);
    after.close();
  });
});

describe('a row that was set aside', () => {
  const broken = `update "order" set status = 'lost' where id = '1042'`;
  const asideOf = (store: ReturnType<typeof spoilt>) => {
    shopIn(store);
    return store.run('read', ({ rows }) => rows.aside.list());
  };
  const putBack = (store: ReturnType<typeof spoilt>, id: number) =>
    store.run('put back', ({ rows }) => rows.aside.putBack(id));

  it('stays there while it cannot be read, or what it belongs to is not back', () => {
    const store = spoilt(broken);
    const aside = asideOf(store);
    const order = aside.find(({ kind }) => kind === 'order')!;
    const line = aside.find(({ kind }) => kind === 'line')!;
    expect(putBack(store, order.id)).toMatch(/^It still cannot be read: status: /);
    expect(putBack(store, line.id)).toBe(
      'It belongs to order “1042”, which is not there; put that back first.',
    );
    expect(asideOf(store)).toEqual(aside);
  });

  it('goes back as it was once it can be read, those that belong to it after it', () => {
    const first = spoilt(broken);
    const aside = asideOf(first);
    const { file } = first;
    first.close();
    // As a newer version reads it that knows this status.
    const connection = new Database(file);
    connection.exec(`update "setAside" set content = replace(content, '"lost"', '"open"')`);
    connection.close();
    const store = openTestStore(file);
    for (const kind of ['order', 'line', 'record', 'cutList'])
      for (const row of aside.filter((one) => one.kind === kind)) expect(putBack(store, row.id)).toBeNull();
    expect(asideOf(store)).toEqual([]);
    expect(shopIn(store).order).toEqual(anEverythingShop().order);
    expect(shopIn(store).line).toEqual(anEverythingShop().line);
  });

  it('writes over nothing that stands there now', () => {
    const store = spoilt(`update "settings" set units = 'cubits'`);
    const [row] = asideOf(store);
    expect(putBack(store, row!.id)).toMatch(/^It still cannot be read: units: /);
    const mended = spoilt(
      `insert into "setAside" (kind, rowId, content, reason, at) select 'colour', id, json_object('id', id, 'name', 'Old', 'hex', hex, 'revision', revision), 'x', 1 from "colour" where id = 'moss'`,
    );
    const [colour] = asideOf(mended);
    expect(putBack(mended, colour!.id)).toBe('The shop has a colour “moss” again by now.');
    expect(shopIn(mended).colour).toEqual(anEverythingShop().colour);
  });

  it('goes for good when it is removed', () => {
    const store = spoilt(broken);
    for (const { id } of asideOf(store)) store.run('remove', ({ rows }) => rows.aside.remove(id));
    expect(asideOf(store)).toEqual([]);
  });
});
