import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { toCsv } from '../../core/csv.ts';

describe('a table that leaves the app', () => {
  it('holds numbers as numbers, nothing as nothing, and quotes what would break a row', () => {
    expect(
      toCsv([
        ['a', -2.5, true, null],
        ['b, c', 'say "no"', 'two\nlines', 'old\rMac'],
      ]),
    ).toBe('a,-2.5,true,\r\n"b, c","say ""no""","two\nlines","old\rMac"\r\n');
  });

  it('holds no text that a spreadsheet would compute', () => {
    for (const text of ['=1+1', '+cmd', '-2+3', '@sum', '\t=1', '\r=1'])
      expect(Papa.parse<string[]>(toCsv([[text]]), { newline: '\r\n' }).data[0]).toEqual([`'${text}`]);
  });

  it('leaves a text that is a plain number as it is', () => {
    expect(toCsv([['-5', '+3.25']])).toBe('-5,+3.25\r\n');
  });

  it('reads back as it was written', () => {
    const text = fc.string().filter((one) => !/^[=+\-@\t\r]/.test(one));
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), { minLength: 1 }), (rows) => {
        const { data } = Papa.parse<string[]>(toCsv(rows), { delimiter: ',', newline: '\r\n' });
        expect(data.slice(0, -1)).toEqual(rows);
      }),
    );
  });
});
