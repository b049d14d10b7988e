import { expect, it } from 'vitest';
import { readPlace } from '../../../renderer/router.ts';
import {
  partAddress,
  partOnPaper,
  printableOf,
  readPartChoice,
} from '../../../renderer/screens/print/part-choice.ts';
import { aShop } from '../../support/builders.ts';

const shop = aShop();
const part = shop.part[0]!;
const metal = { materialId: 'galv', gauge: '26' };

it('the address of a drawing names the metal chosen on screen', () => {
  const choice = { what: 'part', id: part.id, metal } as const;
  expect(readPartChoice(readPlace(partAddress(choice)))).toEqual(choice);
  expect(printableOf(choice)).toEqual({ what: 'part', partId: part.id, metal });
});

it('a drawing is of the metal chosen, and of the most usual one where none is', () => {
  expect(partOnPaper(shop, { what: 'part', id: part.id, metal })?.gauge.label).toBe('26');
  expect(partOnPaper(shop, { what: 'part', id: part.id, metal: null })?.gauge.label).toBe('24');
});

it('a metal that is gone is said, not replaced by another', () => {
  const gone = { materialId: 'galv', gauge: '18' };
  expect(partOnPaper(shop, { what: 'part', id: part.id, metal: gone })).toBeNull();
});
