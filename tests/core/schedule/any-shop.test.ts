import { expect, it } from 'vitest';
import { anyShop, FEATURES } from './any-shop.ts';

it('the random shops have every part of the model, each in at least one of four hundred', () => {
  const shops = Array.from({ length: 2000 }, (_, seed) => anyShop(seed));
  const rare = Object.entries(FEATURES).filter(([, has]) => shops.filter(has).length < 5);
  expect(rare.map(([name]) => name)).toEqual([]);
});
