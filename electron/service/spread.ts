import type { Spread } from '../../core/estimate/learn/spread.ts';
import { NEWEST_WORK, shopSpread } from '../../core/report/chances.ts';
import type { Result } from '../../core/shop/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Store } from '../db/open.ts';

/** How finished work came out against the estimates of the shop as it is; a problem while there is too little of it. */
export function spreadReader(store: Store): (shop: Shop) => Result<Spread> {
  let known: { of: string; spread: Result<Spread> } | null = null;
  return (shop) => {
    const { records } = store.run('read records', ({ rows }) => rows.finishedRecords(null, NEWEST_WORK));
    const { settings, machine, part, material, sheet, calendar } = shop;
    // What estimates are made from: as long as it is the same, so is the spread.
    const of = JSON.stringify([
      records.map(({ id, revision }) => [id, revision]),
      settings,
      machine,
      part,
      material,
      sheet,
      calendar,
    ]);
    if (known?.of !== of) known = { of, spread: shopSpread(shop, records) };
    return known.spread;
  };
}
