import { describe, expect, it } from 'vitest';
import { aPart, aShop, someSettings } from '../../support/builders.ts';
import { readList, taken } from './list-table.ts';

const shop = aShop();
const german = aShop({ settings: someSettings({ units: 'mm', decimals: 'comma' }) });

describe('parts from a file', () => {
  it('have their cross-section in one cell, in the units of its heading or its own', () => {
    const read = readList('parts', german, [
      'Teile-Nr. | Bezeichnung | Querschnitt (mm) | Länge (m) | Bemerkung',
      'K-10 | Kantprofil | 60,5; 90 up; 40 | 3 | innen blank',
      'K-11 | Traufblech | in: 4 1/2; 90 up; 2 | 2,5 |',
    ]);
    expect(read.of('new')).toEqual([2, 3]);
    expect(read.cell(2, 'profile')?.read).toBe('mm: 60,5; 90 up; 40');
    const { label, after } = taken(german, read);
    expect(label).toBe('Import 2 parts from parts.csv');
    expect(after.part.find(({ id }) => id === 'K-10')).toMatchObject({
      name: 'Kantprofil',
      lengthMm: 3000,
      note: 'innen blank',
      profile: { flangesMm: [60.5, 40], bends: [{ angle: 90, direction: 'up', radiusMm: null }] },
    });
    expect(after.part.find(({ id }) => id === 'K-11')?.profile.flangesMm).toEqual([114.3, 50.8]);
  });

  it('change what is there and show what stood there; empty cells leave it as it is', () => {
    const read = readList('parts', shop, [
      'Part | Shape | Length',
      'corner | in: 3; 90 up; 4 |',
      'flat-strip | |',
    ]);
    expect([read.of('changed'), read.of('known')]).toEqual([[2], [3]]);
    expect(read.cell(2, 'profile')).toMatchObject({
      read: 'in: 3; 90 up; 4',
      was: 'in: 100 mm; 90 up; 100 mm',
    });
    const corner = taken(shop, read).after.part.find(({ id }) => id === 'corner');
    expect(corner).toMatchObject({ name: 'Corner', lengthMm: 2540, profile: { flangesMm: [76.2, 101.6] } });
  });

  it('are not made of half a row: a new one needs its profile and its length', () => {
    const read = readList('parts', shop, [
      'Part | Shape | Length',
      'A1 | | 10 ft',
      'A2 | 4; 90 up; 2 |',
      'A3 | 4; 2 | 10 ft',
    ]);
    expect(read.of('wrong')).toEqual([2, 3, 4]);
    expect(read.why(2)).toContain('Part A1 is new, and the row has no profile');
    expect(read.why(3)).toContain('Part A2 is new, and the row has no usual length');
    expect(read.why(4)).toContain('Step 2, “2”: a bend must stand between two flanges');
    expect(read.command).toBeNull();
  });

  it('ask once whether decimals stand behind the comma, and other cells of the column can tell', () => {
    const header = 'Part | Shape (mm) | Length';
    const open = readList('parts', shop, [header, 'A1 | 1,234; 90 up; 40 | 10 ft']);
    expect(open.reading.questions.map(({ is }) => is)).toEqual(['decimals']);
    expect(open.of('waiting')).toEqual([2]);
    const told = readList('parts', shop, [
      header,
      'A1 | 1,234; 90 up; 40 | 10 ft',
      'A2 | 40; 90 up; 12,5 | 10 ft',
    ]);
    expect(told.reading.questions).toEqual([]);
    expect(told.cell(2, 'profile')?.read).toContain('1.234 mm');
  });

  it('may have a column for each flange and bend; what is missing between them is never made up', () => {
    const read = readList('parts', german, [
      'Artikel | Schenkel 1 (mm) | Winkel 1 | Schenkel 2 (mm) | Winkel 2 | Schenkel 3 (in) | Umschlag 2 | Länge (m)',
      'Z1 | 50,5 | 90 up | 40 | 90 down | 1 1/2 | 12 closed up | 3',
      'L1 | 50 | 90 up | 40 | | | | 3',
      'X1 | 50 | 90 | 40 | | | | 3',
      'X2 | 50 | | 40 | | | | 3',
      'X3 | 50 | 90 up | | 90 up | 1 | | 3',
      'X4 | 50 | 90 up | | | | | 3',
    ]);
    expect([read.of('new'), read.of('wrong')]).toEqual([
      [2, 3],
      [4, 5, 6, 7],
    ]);
    const { after } = taken(german, read);
    expect(after.part.find(({ id }) => id === 'Z1')?.profile).toMatchObject({
      flangesMm: [50.5, 40, 38.1],
      bends: [{ direction: 'up' }, { direction: 'down' }],
      endHem: { lengthMm: 12, kind: 'closed' },
    });
    expect(read.why(4)).toContain('“90” does not say where to');
    expect(read.why(5)).toContain('How flange 1 and 2 meet is not said');
    expect(read.why(6)).toContain('empty between others');
    expect(read.why(7)).toContain('No flange stands behind it');
  });

  it('of a family keep the shape of their pattern', () => {
    const family = aShop({
      part: [
        aPart({
          family: {
            is: 'pattern',
            dimensions: [{ name: 'leg', flanges: [1] }],
            sizes: [{ partId: 'corner-50', name: 'Corner 50', lengthsMm: [50] }],
          },
        }),
        aPart({
          id: 'corner-50',
          name: 'Corner 50',
          family: { is: 'size', of: 'corner' },
          profile: { ...aPart().profile, flangesMm: [50, 100] },
        }),
      ],
    });
    const read = readList('parts', family, ['Part | Shape', 'corner-50 | in: 9; 90 up; 4']);
    expect(read.of('wrong')).toEqual([2]);
  });
});
