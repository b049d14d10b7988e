import { describe, expect, it } from 'vitest';
import { findInShop } from '../../../core/report/find.ts';
import { aLine, anOrder, aPart, aShop } from '../../support/builders.ts';

const shop = aShop({
  part: [aPart(), aPart({ id: 'cap-10', name: 'Ridge cap' })],
  order: [
    anOrder({ id: '104', customer: 'Société Inventée' }),
    anOrder({ id: '1042', customer: 'Invented Roofing' }),
    anOrder({ id: '1043', customer: 'Invented Roofing', status: 'held', note: 'ask for the ladder' }),
  ],
  line: [aLine(), aLine({ number: 2, partId: 'cap-10' }), aLine({ orderId: '1043' })],
});
const found = (text: string, most = 5): string[] =>
  findInShop(shop, text, most).map(({ kind, id }) => `${kind} ${id}`);

describe('finding something in the shop', () => {
  it('shows the one with that very number first, then those that begin with it', () => {
    expect(found('104').slice(0, 3)).toEqual(['order 104', 'order 1042', 'order 1043']);
    expect(found('1042')).toEqual(['order 1042', 'line 1042/1', 'line 1042/2']);
    expect(found('1042/2')).toEqual(['line 1042/2']);
  });

  it('finds parts, and the lines that ask for them, by code and by name', () => {
    expect(found('ridge')).toEqual(['line 1042/2', 'part cap-10']);
    expect(found('cap-10')).toEqual(['part cap-10', 'line 1042/2']);
  });

  it('finds customers with their orders and lines, without capitals and accents', () => {
    expect(found('societe')).toEqual(['customer Société Inventée', 'order 104']);
    expect(findInShop(shop, 'invented roofing', 5).at(0)).toEqual({
      kind: 'customer',
      id: 'Invented Roofing',
      title: 'Invented Roofing',
      detail: '2 work orders',
    });
  });

  it('asks for every word, in any order, notes too', () => {
    expect(found('ladder 1043')).toEqual(['order 1043']);
    expect(found('ladder 1042')).toEqual([]);
  });

  it('gives so many of each kind, and nothing for nothing', () => {
    expect(found('10', 1)).toEqual(['order 104', 'line 1042/1', 'part cap-10']);
    expect(found('  ')).toEqual([]);
  });
});
