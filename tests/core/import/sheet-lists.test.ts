import { describe, expect, it } from 'vitest';
import { aShop, aSheet, someSettings } from '../../support/builders.ts';
import { readList, taken } from './list-table.ts';

const shop = aShop();

describe('sheet sizes from a file', () => {
  const header = 'Metal | Ga | Color | Width | Length | Trim | Price';

  it('are known by metal, gauge, colour and size; prices are changed, sizes added', () => {
    const own = aShop({ sheet: [aSheet()] });
    const read = readList('sheets', own, [
      header,
      'galv | 24 | moss | 48 | 10 ft | 0 | 65.00',
      'galv | 26 | moss | 48 | 120 | 1/4 | $',
      'galv | 26 | moss | 48 | 144 | 1/4 | 80',
    ]);
    expect([read.of('changed'), read.of('new'), read.of('wrong')]).toEqual([[2], [4], [3]]);
    expect(read.cell(2, 'price')).toMatchObject({ read: '65.00', was: '62.00' });
    const { label, after } = taken(own, read);
    expect(label).toBe('Import 1 sheet size from sheets.csv, change 1');
    expect(after.sheet.find(({ lengthMm }) => lengthMm === 3657.6)).toMatchObject({
      trimMm: 6.35,
      costCents: 8000,
      onHand: 0,
      form: 'sheet',
    });
    expect(after.sheet.find(({ id }) => id === 'galv-24-moss')).toMatchObject({
      costCents: 6500,
      onHand: 40,
    });
  });

  it('of a gauge that the metal has not are refused, of an unknown colour asked about', () => {
    const read = readList('sheets', shop, [
      header,
      'galv | 12 | moss | 48 | 120 | 0 | 1',
      'galv | 24 | puce | 48 | 120 | 0 | 1',
    ]);
    expect([read.of('wrong'), read.of('waiting')]).toEqual([[2], [3]]);
    expect(read.reading.questions).toMatchObject([{ is: 'same', what: 'colour', text: 'puce' }]);
  });

  it('stand in a file once', () => {
    const row = 'galv | 26 | moss | 50 | 120 | 0 | 1';
    const read = readList('sheets', shop, [header, row, row]);
    expect([read.of('new'), read.of('wrong')]).toEqual([[2], [3]]);
  });
});

describe('stock counts from a file', () => {
  const own = aShop({
    sheet: [
      aSheet({ id: 'coil', gauge: '26', form: 'coil', onHand: 3 }),
      aSheet(),
      aSheet({ id: 'galv-24-moss-12', lengthMm: 3657.6, onHand: 7 }),
    ],
  });

  it('set what is on hand by a difference, as an entry of the stock’s history; what the file lacks is listed', () => {
    const read = readList('stock', own, [
      'Werkstoff | Blechdicke | Farbe | Breite (mm) | Länge (mm) | Bestand',
      'galv | 24 ga | moss | 1219,2 | 3048 | 38',
      'galv | 24 ga | moss | 1219,2 | 3657,6 | 7',
    ]);
    expect([read.of('changed'), read.of('known')]).toEqual([[2], [3]]);
    expect(read.cell(2, 'count')).toMatchObject({ read: '38', was: '40' });
    expect(read.reading.missing.map(({ id }) => id)).toEqual(['coil']);
    const { label, after, undone } = taken(own, read);
    expect(label).toBe('Set 1 count of stock by stock.csv');
    expect(after.sheet.find(({ id }) => id === 'galv-24-moss')?.onHand).toBe(38);
    expect(after.movement).toMatchObject([
      { what: 'counted', pieces: -2, after: 38, note: 'from stock.csv' },
    ]);
    expect(undone.sheet).toEqual(own.sheet);
  });

  it('say the lot of what was counted, where the shop tells lots apart: a new one becomes a stock of its own', () => {
    const lots = aShop({
      settings: someSettings({ stockKnows: { lot: true, paint: true, film: true } }),
      sheet: [aSheet({ onHand: 0 }), aSheet({ id: 'moss-a', lot: 'A', onHand: 9 })],
    });
    const read = readList('stock', lots, [
      'Material | Gauge | Colour | Width (mm) | Length (mm) | Dye lot | Paint system | Film | Count',
      'galv | 24 | moss | 1219,2 | 3048 | A | | | 7',
      'galv | 24 | moss | 1219,2 | 3048 | B | PVDF | yes | 5',
      'galv | 24 | moss | 1219,2 | 3048 | | | | 2',
      'galv | 24 | moss | 1219,2 | 3048 | A | | | 6',
    ]);
    expect([read.of('changed'), read.of('new')]).toEqual([[2, 4], [3]]);
    expect(read.why(5)).toContain('Row 2 counts “moss-a” already');
    const { after, undone } = taken(lots, read);
    expect(after.sheet.map(({ lot, paint, film, onHand }) => [lot, paint, film, onHand])).toEqual([
      ['', null, null, 2],
      ['B', 'pvdf', 'with', 5],
      ['A', null, null, 7],
    ]);
    expect(undone.sheet).toEqual(lots.sheet);
  });

  it('name their stock by its code, or by all of it that is needed to tell', () => {
    const read = readList('stock', own, [
      'Code | Material | Gauge | Colour | Count',
      'COIL | | | | 2',
      ' | galv | 24 | moss | 9',
      'nothing | | | | 9',
      ' | | | | 9',
      'coil | | | | 4',
    ]);
    expect(read.of('changed')).toEqual([2]);
    expect(read.why(3)).toContain('Several stocks can be meant');
    expect(read.why(4)).toContain('There is no stock nothing');
    expect(read.why(5)).toContain('cannot be told');
    expect(read.why(6)).toContain('Row 2 counts “coil” already');
  });
});
