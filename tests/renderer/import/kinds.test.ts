// @vitest-environment jsdom
import { expect, it } from 'vitest';
import { readPlace } from '../../../renderer/router.ts';
import { screenAt } from '../../../renderer/routes.tsx';
import { KIND_WORDS, kindAt, kindsRead } from '../../../renderer/screens/import/kinds.ts';

const at = (hash: string) => kindAt(readPlace(hash));

it('a file that is dropped holds what the screen shows, work orders where that is nothing of a file', () => {
  expect(at('#/shop/colours/moss')).toBe('colours');
  expect(at('#/learning/B1')).toBe('finished');
  expect(at('#/stock')).toBe('stock');
  expect(at('#/orders/4106')).toBe('orders');
  expect(at('#/shop/calendars')).toBe('orders');
  expect(at('#/board')).toBe('orders');
});

it('every kind that is read has its import, under the screen that shows what it holds', () => {
  for (const kind of kindsRead) {
    expect(at(`#/import/${kind}`)).toBe(kind);
    expect(screenAt(readPlace(`#/import/${kind}`))?.path).toBe(KIND_WORDS[kind].home[0]);
  }
  expect(at('#/import/poems')).toBe('orders');
});
