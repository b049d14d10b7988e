import { describe, expect, it } from 'vitest';
import { aBrake, aShear, aShop, someSettings } from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';
import { readList, taken } from './list-table.ts';

const brakes = [aBrake({ id: 'B1', name: 'Long brake' }), aBrake({ id: 'B2', name: 'Short brake' })];
const shop = aShop({ machine: [aShear(), ...brakes], tool: [aTool({ ratingKnPerM: 900 })] });
const german = { ...shop, settings: someSettings({ units: 'mm', decimals: 'comma' }) };

describe('brake tools from a file', () => {
  it('are dies, punches and hemming tools with their figures, each for the brakes that it names', () => {
    const read = readList('tools', german, [
      'Nr. | Bezeichnung | Werkzeugart | V-Weite (mm) | Winkel | Schwanenhals | Radius (mm) | Länge (mm) | kN/m | Passt auf',
      'M10 | Matrize V 10 | Matrize | 10 | 85 | | | 3050 | 1000 | Long brake; B2',
      'S1 | Stempel | Oberwerkzeug | | 60 | ja | 0,6 | 2550 | | B2',
      'F1 | Falzwerkzeug | Umschlagwerkzeug | | | | | 2550 | 600 | B1',
    ]);
    expect(read.of('new')).toEqual([2, 3, 4]);
    expect(read.row(3).words).toBe('Its rating is not known, so no load on it stops a part.');
    const { label, after, undone } = taken(german, read);
    expect(label).toBe('Import 3 tools from tools.csv');
    const made = ['M10', 'S1', 'F1'].map((id) => after.tool.find((one) => one.id === id));
    expect(made).toMatchObject([
      { id: 'M10', kind: 'die', openingMm: 10, angleDeg: 85, ratingKnPerM: 1000, machineIds: ['B1', 'B2'] },
      { id: 'S1', kind: 'punch', openingMm: null, angleDeg: 60, gooseneck: true, radiusMm: 0.6 },
      { id: 'F1', kind: 'hemming', angleDeg: null, lengthMm: 2550, machineIds: ['B1'] },
    ]);
    expect(undone.tool).toEqual(german.tool);
  });

  it('of the shop are changed by code or name; what the file lacks stays', () => {
    const read = readList('tools', shop, ['Code | Name | Length | Fits', 'v8 | Die, V 8 | 12 ft | B1, B2']);
    expect(read.of('changed')).toEqual([2]);
    expect(read.cell(2, 'length')?.was).toBe('120.079 in');
    expect(taken(shop, read).after.tool).toMatchObject([
      {
        id: 'V8',
        openingMm: 8,
        ratingKnPerM: 900,
        lengthMm: expect.closeTo(3657.6, 6),
        machineIds: ['B1', 'B2'],
      },
    ]);
  });

  it('have a rating in the unit of its heading: 1 t/m is 9.81 kN/m, 1 t/ft 32.2', () => {
    for (const [heading, knPerM] of [
      ['Rating (t/m)', 981],
      ['Rating (t/ft)', 3217],
      ['Rating (kN/m)', 100],
    ] as const) {
      const read = readList('tools', shop, [`Code | Name | ${heading}`, 'V8 | Die, V 8 | 100']);
      expect(taken(shop, read).after.tool[0]!.ratingKnPerM, heading).toBeCloseTo(knPerM, -1);
    }
  });

  it('are not guessed: what they are, how long, and which brakes they fit', () => {
    const read = readList('tools', shop, [
      'Name | Kind | V | Angle | Length | Fits',
      'A | | | 85 | 10 ft | B1',
      'B | die | | 85 | 10 ft | B1',
      'C | punch | | 85 | | B1',
      'D | hemming | | | 10 ft | ',
      'E | hemming | | | 10 ft | Shear',
      'F | hemming | 1/2 | | 10 ft | B1',
    ]);
    expect(read.of('wrong')).toEqual([2, 3, 4, 5, 6, 7]);
    expect(read.why(2)).toContain('Is it a die, a punch or hemming tools?');
    expect(read.why(3)).toContain('A die needs its V opening.');
    expect(read.why(4)).toContain('How long is it?');
    expect(read.why(5)).toContain('Which brakes does it fit?');
    expect(read.why(6)).toContain('“Shear” is no press brake of the shop.');
    expect(read.why(7)).toContain('Hemming tools have no v opening.');
  });

  it('fit the only brake of a shop that has one', () => {
    const one = aShop({ machine: [aShear(), brakes[0]!], tool: [] });
    const read = readList('tools', one, ['Name | Kind | Length', 'Hemming tools | hemming | 10 ft']);
    expect(taken(one, read).after.tool).toMatchObject([{ id: 'hemming-tools', machineIds: ['B1'] }]);
  });
});
