import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { beginService } from '../../electron/service/begin.ts';
import { makeClock } from '../../electron/service/clock.ts';
import { aShop } from '../support/builders.ts';
import {
  appFolder,
  fixedClock,
  openTestStore,
  refusalOf,
  storeWith,
  tempFolder,
  shopIn,
  livingIn,
} from './support.ts';

const start = (store = openTestStore(join(tempFolder(), 'fresh.db'))) => ({
  store,
  ...beginService(livingIn(store), fixedClock(), appFolder),
});

describe('the first start', () => {
  it('can open the demo shop, with its finished operations', () => {
    const { fresh, demo, store } = start();
    expect(fresh()).toBe(true);
    demo();
    expect(fresh()).toBe(false);
    const shop = shopIn(store);
    expect(shop.order.length).toBeGreaterThanOrEqual(60);
    expect(store.run('read', ({ rows }) => rows.finishedRecords(null, 1).total)).toBeGreaterThan(1000);
  });

  it('can begin an empty shop that has a calendar but no machine', () => {
    const { empty, store } = start();
    empty({ name: 'Hill Trim', timeZone: 'Europe/Helsinki', units: 'mm', decimals: 'comma' });
    const shop = shopIn(store);
    expect(shop.settings).toMatchObject({
      name: 'Hill Trim',
      timeZone: 'Europe/Helsinki',
      units: 'mm',
      decimals: 'comma',
    });
    expect(shop.calendar).toHaveLength(1);
    expect(shop.machine).toEqual([]);
  });

  it('refuses a time zone that does not exist, and the file stays fresh', () => {
    const { empty, fresh } = start();
    expect(
      refusalOf(() => empty({ name: 'Hill Trim', timeZone: 'Mars/Base', units: 'mm', decimals: 'comma' }))
        .message,
    ).toMatch(/“Mars\/Base” is not a time zone/);
    expect(fresh()).toBe(true);
  });

  it('never writes over a shop that is there', () => {
    const { demo, store } = start(storeWith(aShop()));
    expect(refusalOf(demo).message).toMatch(/already holds a shop/);
    expect(shopIn(store).settings.name).toBe('Test shop');
  });

  it('has nothing to read before it has begun', () => {
    expect(refusalOf(() => shopIn(start().store)).code).toBe('unavailable');
  });
});

describe('the clock', () => {
  it('can stand still for tests and pictures', () => {
    const clock = makeClock('2026-11-30T12:00:00Z');
    expect(clock.fixed).toBe(true);
    expect(clock.now()).toBe(Date.UTC(2026, 10, 30, 12) / 1000);
  });

  it('refuses an instant it cannot read', () => {
    expect(refusalOf(() => makeClock('tomorrow')).message).toMatch(/FOLDWEEK_NOW is "tomorrow"/);
  });
});
