import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import writeXlsxFile, { type Cell } from 'write-excel-file/node';
import { Refused } from '../../electron/refused.ts';
import { readGrid } from '../../electron/service/table-file.ts';
import { stored, unzip } from '../../electron/service/unzip.ts';

const SHEET = 'xl/worksheets/sheet1.xml';

const made = (rows: Cell[][]): Promise<Uint8Array> => writeXlsxFile(rows).toBuffer();

/** A small list: a text, a number that could be misread as text, a date. */
const list = (): Promise<Uint8Array> =>
  made([
    [{ value: 'order' }, { value: 'length' }, { value: 'due' }],
    [
      { value: '2001', type: String },
      { value: 1.234, type: Number },
      { value: new Date(Date.UTC(2026, 11, 4, 14)), type: Date, format: 'dd.mm.yyyy hh:mm' },
    ],
    [null, null, null],
    [
      { value: '2002', type: String },
      null,
      { value: new Date(Date.UTC(2026, 3, 12)), type: Date, format: 'd/m/yy' },
    ],
  ]);

/** The file with the text of a part changed. */
async function withPart(name: string, change: (text: string) => string): Promise<Uint8Array> {
  const parts = new Map(unzip(await list()));
  const text = Buffer.from(parts.get(name) ?? []).toString('utf8');
  return new Uint8Array(stored(parts.set(name, Buffer.from(change(text)))));
}

async function refusal(bytes: Uint8Array, sheet?: string): Promise<string> {
  try {
    await readGrid('list.xlsx', bytes, sheet);
  } catch (error) {
    if (error instanceof Refused) return error.message;
    throw error;
  }
  throw new Error('it was read');
}

describe('a spreadsheet', () => {
  it('says which cells are numbers, and gives dates as the clock on the wall shows them', async () => {
    const { rows } = await readGrid('list.xlsx', await list());
    expect(rows).toEqual([
      { row: 1, cells: [{ text: 'order' }, { text: 'length' }, { text: 'due' }] },
      { row: 2, cells: [{ text: '2001' }, { text: '1.234', number: 1.234 }, { text: '2026-12-04 14:00' }] },
      { row: 4, cells: [{ text: '2002' }, { text: '' }, { text: '2026-04-12' }] },
    ]);
  });

  it('is read whatever its name says', async () => {
    expect((await readGrid('list.csv', await list())).rows).toHaveLength(3);
  });

  it('with several sheets is read by its first, which is said, or by the one that is asked for', async () => {
    const sheet = (text: string) => [[{ value: text }, { value: 'b' }]];
    const bytes = await writeXlsxFile([
      { data: sheet('first'), sheet: 'Orders' },
      { data: sheet('second'), sheet: 'Old' },
    ]).toBuffer();
    const first = await readGrid('list.xlsx', bytes);
    expect(first.notes).toEqual(['The sheet “Orders” is read; “Old” is not.']);
    expect(first.rows[0]?.cells[0]?.text).toBe('first');
    expect((await readGrid('list.xlsx', bytes, 'Old')).rows[0]?.cells[0]?.text).toBe('second');
    expect(await refusal(bytes, 'None')).toBe(
      'list.xlsx has no sheet “None”; it has “Orders”, “Old”. Nothing was imported.',
    );
  });
});

describe('a spreadsheet that means no good', () => {
  it('is refused before it is unpacked to more than is allowed, whatever size it claims', async () => {
    const parts = new Map(unzip(await list()));
    const packed = deflateRawSync(Buffer.alloc(200_000_000, 0x20));
    expect(packed.length).toBeLessThan(250_000);
    const file = Buffer.from(stored(parts.set(SHEET, packed)));
    // Both of its headers say that this part is packed; its size stays as small as it was.
    for (const [mark, method, name] of [
      ['PK\u0003\u0004', 8, 30],
      ['PK\u0001\u0002', 10, 46],
    ] as const)
      for (let at = file.indexOf(mark); at >= 0; at = file.indexOf(mark, at + 4))
        if (file.toString('latin1', at + name, at + name + SHEET.length) === SHEET)
          file.writeUInt16LE(8, at + method);
    const from = performance.now();
    expect(await refusal(file)).toMatch(/^list.xlsx is larger than can be read once it is unpacked. Nothing/);
    expect(performance.now() - from).toBeLessThan(2000);
  });

  it.each([
    ['a line far down', 'A9999999', /has more than 20\s000 lines/],
    ['a column far out', 'XFD2', /has a cell in column XFD; at most 100 columns/],
    ['no place', '&#88;FD2', /a cell whose place cannot be read/],
  ])('with %s is refused instead of being filled up to there', async (_what, place, words) => {
    const bytes = await withPart(SHEET, (text) => text.replace(/r="B2"/, `r="${place}"`));
    expect(await refusal(bytes)).toMatch(words);
  });

  it.each([
    ['an element that never ends', '<c r="A1" ' + 'x'.repeat(3_500_000)],
    ['a text that never ends', '<c>' + 'x'.repeat(3_500_000)],
    ['a comment that never ends', '<!-- ' + '<c>'.repeat(1_100_000)],
    ['a mark inside a mark', '<c r="' + '<c>'.repeat(1_100_000)],
  ])('with %s is refused at once', async (_, tail) => {
    const bytes = await withPart(SHEET, (text) => text + tail);
    const from = performance.now();
    expect(await refusal(bytes)).toContain('is damaged');
    // The reader took 77 seconds over the first.
    expect(performance.now() - from).toBeLessThan(5000);
  });

  it('that is cut off is refused as damaged', async () => {
    const bytes = await list();
    expect(await refusal(bytes.subarray(0, bytes.length - 100))).toMatch(/^list.xlsx is damaged. Nothing/);
  });
});
