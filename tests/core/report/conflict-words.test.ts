import { expect, it } from 'vitest';
import { conflictWords } from '../../../core/report/conflict-words.ts';
import { aColour, aLine, anOrder, aShear, aShop, at } from '../../support/builders.ts';

const shop = aShop();

it('two versions are told apart field by field, as the shop reads them', () => {
  const mine = anOrder({ due: at('2026-12-04', '17:00'), rush: true, note: '' });
  const theirs = anOrder({ due: at('2026-12-07', '09:30'), note: 'Call first', revision: 3 });
  expect(conflictWords(shop, { kind: 'order', id: '1042', mine, theirs })).toEqual({
    what: 'order 1042',
    note: null,
    fields: [
      { name: 'due', mine: 'Fri 4 Dec 17:00', theirs: 'Mon 7 Dec 09:30' },
      { name: 'rush', mine: 'yes', theirs: 'no' },
      { name: 'note', mine: 'none', theirs: 'Call first' },
    ],
  });
  const lines = { mine: aLine({ lengthMm: 2438.4, quantity: 24 }), theirs: aLine({ lengthMm: 3048 }) };
  expect(conflictWords(shop, { kind: 'line', id: '1042/1', ...lines }).fields).toEqual([
    { name: 'length', mine: '96 in', theirs: '120 in' },
    { name: 'pieces', mine: '24', theirs: '20' },
  ]);
});

it('a row that was removed, is to go, or says the same is a sentence', () => {
  const [mine, theirs] = [aColour(), aColour({ revision: 4 })];
  const noteOf = (conflict: object) =>
    conflictWords(shop, { kind: 'colour', id: 'moss', mine, theirs, ...conflict }).note;
  expect(noteOf({ theirs: null })).toBe('It was removed meanwhile.');
  expect(noteOf({ mine: null })).toBe('It was changed meanwhile; you are removing it.');
  expect(noteOf({})).toBe('Both versions say the same.');
});

it('a line without terms of its own is said to have its order’s', () => {
  const both = { mine: aLine({ due: at('2026-12-02') }), theirs: aLine({ importance: 3 }) };
  expect(conflictWords(shop, { kind: 'line', id: '1042/1', ...both }).fields).toEqual([
    { name: 'due', mine: 'Wed 2 Dec 17:00', theirs: 'as the work order' },
    { name: 'importance', mine: 'as the work order', theirs: '3' },
  ]);
});

it('what is no single value is named, not spelt out', () => {
  const both = { mine: aShear({ standards: { hitLong: 3 } }), theirs: aShear() };
  expect(conflictWords(shop, { kind: 'machine', id: 'S1', ...both }).fields).toEqual([
    { name: 'standards', mine: 'a list of its own', theirs: 'a list of its own' },
  ]);
});
