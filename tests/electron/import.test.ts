import { editService } from '../../electron/service/edit.ts';
import { describe, expect, it } from 'vitest';
import type { Answers } from '../../core/import/answers.ts';
import type { Reading, RowState } from '../../core/import/reading.ts';
import { fileImport } from '../../electron/service/file-import.ts';
import { Refused } from '../../electron/refused.ts';
import { aShop } from '../support/builders.ts';
import { fixedClock, storeWith, shopIn, livingIn } from './support.ts';

const HEADER = 'order,line,customer,part,quantity,gauge,colour,length,due';
const GOOD = [
  HEADER,
  '2001,1,Gütersloh Sheds,corner,40,24,moss,96,2026-12-10',
  '2001,2,,flat-strip,12,26,bone,96,',
].join('\r\n');

function start() {
  const store = storeWith(aShop());
  const living = livingIn(store);
  const edit = editService(living, fixedClock());
  const service = fileImport(living, fixedClock(), edit);
  const asked = (bytes: Uint8Array | string, answers: Answers = {}) => ({
    kind: 'orders' as const,
    fileName: 'orders.csv',
    bytes: Buffer.from(bytes as string),
    answers,
  });
  return {
    edit,
    shop: () => shopIn(store),
    read: (bytes: Uint8Array | string, answers?: Answers) => service.read(asked(bytes, answers)),
    take: (bytes: Uint8Array | string, answers?: Answers) => service.take(asked(bytes, answers)),
  };
}

/** The rows in a state, in the file's order. */
const rowsOf = ({ rows }: Reading, ...states: RowState[]): number[] =>
  rows.filter(({ state }) => states.includes(state)).map(({ row }) => row);

const issuesOf = ({ rows }: Reading) =>
  rows.flatMap(({ row, cells }) =>
    cells.flatMap(({ field, text, issue }) => (issue === undefined ? [] : [{ row, field, text, issue }])),
  );

const cellOf = ({ rows }: Reading, row: number, field: string): string | undefined =>
  rows.find((one) => one.row === row)?.cells.find((cell) => cell.field === field)?.text;

/** What a file is refused with. */
async function refusal(bytes: Uint8Array | string): Promise<string> {
  try {
    await start().read(bytes);
  } catch (error) {
    if (error instanceof Refused) return error.message;
    throw error;
  }
  throw new Error('it was read');
}

/** UTF-16 with its byte-order mark. */
function utf16(text: string, order: 'le' | 'be'): Buffer {
  const bytes = Buffer.from(`\ufeff${text}`, 'utf16le');
  return order === 'le' ? bytes : bytes.swap16();
}

describe('a file of orders', () => {
  it.each([
    ['UTF-8', Buffer.from(GOOD), []],
    ['UTF-8 with a byte-order mark', Buffer.from(`\ufeff${GOOD}`), []],
    ['UTF-16, low byte first', utf16(GOOD, 'le'), ['The file is written in UTF-16.']],
    ['UTF-16, high byte first', utf16(GOOD, 'be'), ['The file is written in UTF-16.']],
    [
      'Windows-1252',
      Buffer.from(GOOD, 'latin1'),
      [expect.stringMatching(/^The file is not in UTF-8; it was read as Windows-1252/)],
    ],
  ])('is read when it is written in %s', async (_encoding, bytes, notes) => {
    const reading = await start().read(bytes);
    expect(rowsOf(reading, 'new')).toEqual([2, 3]);
    expect(reading.columns[0]).toMatchObject({ title: 'order', field: 'order', by: 'heading' });
    expect(cellOf(reading, 2, 'customer')).toBe('Gütersloh Sheds');
    expect(reading.notes.slice(0, notes.length)).toEqual(notes);
  });

  it.each([
    ['semicolons', ';'],
    ['tabs', '\t'],
  ])('is read when its cells are separated by %s', async (name, separator) => {
    const reading = await start().read(GOOD.replaceAll(',', separator));
    expect(rowsOf(reading, 'new')).toEqual([2, 3]);
    expect(reading.notes).toContain(`The cells are separated by ${name}.`);
  });

  it('with semicolons may have decimal commas', async () => {
    const { take, shop } = start();
    const text = `${HEADER};importance\n2001;1;Sheds;corner;40;24;moss;95,5;2026-12-10;2,5`;
    await take(text.replaceAll(/(?<=^[^\n]*),/g, ';'));
    expect(shop().line.find((l) => l.id === '2001/1')?.lengthMm).toBeCloseTo(95.5 * 25.4, 6);
    expect(shop().order.find((o) => o.id === '2001')?.importance).toBe(2.5);
  });

  it('in older Windows text keeps quotation marks that group thousands', async () => {
    const bytes = Buffer.concat([
      Buffer.from(`${HEADER}\n2001,1,Sheds,corner,1`),
      Buffer.from([0x92]),
      Buffer.from('200,24,moss,96,2026-12-10'),
    ]);
    expect(cellOf(await start().read(bytes), 2, 'quantity')).toBe('1’200');
  });

  it('may hold separators, line breaks and quotation marks inside quoted cells', async () => {
    const reading = await start().read(
      `${HEADER},note\n2001,1,"Sheds, Barns",corner,40,24,moss,96,2026-12-10,"say ""hello""\nat the gate"`,
    );
    expect(cellOf(reading, 2, 'customer')).toEqual('Sheds, Barns');
    expect(cellOf(reading, 2, 'note')).toBe('say "hello"\nat the gate');
    expect(rowsOf(reading, 'new')).toEqual([2]);
  });

  it('keeps its own row numbers when blank rows stand between, and says so', async () => {
    const reading = await start().read(GOOD.replaceAll('\r\n', '\n\n'));
    expect(rowsOf(reading, 'new')).toEqual([3, 5]);
    expect(reading.notes).toContain('2 blank rows are left out.');
  });

  it('with rows shorter than the header takes the rest as empty', async () => {
    const reading = await start().read(`${HEADER}\n2001,1,Sheds,corner,40`);
    expect(issuesOf(reading).map(({ field }) => field)).toEqual(['gauge', 'colour']);
  });

  it('with a row longer than the header names the surplus', async () => {
    const reading = await start().read(`${GOOD}\n2002,1,Sheds, Barns,corner,40,24,moss,96,2026-12-10`);
    expect(reading.rows[0]).toMatchObject({
      row: 4,
      state: 'wrong',
      words: expect.stringMatching(/more cells than the header \(“2026-12-10”\)/) as string,
    });
    expect(rowsOf(reading, 'new')).toEqual([2, 3]);
  });
});

describe('a file that is of no use', () => {
  it.each([
    ['empty', Buffer.from(''), /orders.csv is empty/],
    ['only blank rows', Buffer.from('\n\n , ,\n'), /orders.csv is empty/],
    ['a broken spreadsheet', Buffer.from('PK\u0003\u0004rest'), /orders.csv is damaged.*save it again/],
    ['an old spreadsheet', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 1, 2]), /an older kind.*save it as .xlsx/],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1]), /not a text file/],
    [
      'with an open quotation mark',
      Buffer.from(`${HEADER}\n1,1,"Sheds,corner\n2,1,x`),
      /quotation mark opened in row \d+ is never closed/,
    ],
  ])('(%s) is refused with a sentence', async (_what, bytes, sentence) => {
    expect(await refusal(bytes)).toMatch(sentence);
  });

  it.each([
    ['bytes', Buffer.alloc(4_100_000, 'x'), /has 4.1 MB; at most 4 MB can be read. Nothing was imported/],
    ['rows', Buffer.from(`${HEADER}${'\n1,1,a'.repeat(5001)}`), /has 5001 rows; at most 5000/],
    ['lines', Buffer.from(`${HEADER}${'\n'.repeat(20_001)}`), /more than 20\s000 lines/],
    ['columns', Buffer.from(`${GOOD}\n${','.repeat(100_000)}`), /100\s001 cells in row 4; at most 100/],
    [
      'characters in a cell',
      Buffer.from(`${GOOD},${'x'.repeat(2001)}`),
      /2001 characters in row 3; at most 2000/,
    ],
  ])('(too many %s) is refused with both numbers', async (_what, bytes, sentence) => {
    expect(await refusal(bytes)).toMatch(sentence);
  });

  it('(with a character that no data file gives back) is refused, naming the row', async () => {
    const bytes = utf16(GOOD.replace('Sheds', 'Sh\0eds'), 'le');
    expect(await refusal(bytes)).toMatch(/cell in row 2 holds a character/);
  });
});

describe('a cell that is far too long', () => {
  it('is refused with its length, and not repeated in full', async () => {
    const reading = await start().read(GOOD.replace('corner', '1 '.repeat(600)));
    expect(issuesOf(reading)[0]).toMatchObject({
      row: 2,
      field: 'part',
      issue: 'The part is 1199 characters long; at most 240 can be read.',
    });
  });

  it('as a title is cut where it is named', async () => {
    const reading = await start().read(`order,${'x'.repeat(2000)}\n1,2`);
    expect(reading.notes.join(' ')).toContain(`“${'x'.repeat(60)}”`);
    expect(reading.notes.join(' ').length).toBeLessThan(600);
  });
});

describe('taking a file', () => {
  it('adds its orders and lines as one step, and once undone they are gone', async () => {
    const { take, edit, shop } = start();
    const before = shop();
    const taken = await take(GOOD);
    expect(taken).toMatchObject({ counts: { new: 2, changed: 0 }, left: { counts: { known: 2, new: 0 } } });
    expect(shop().order.map((o) => o.id)).toEqual(['1042', '1043', '2001']);
    expect(edit.history().undo.map((s) => s.label)).toEqual(['Import 2 lines from orders.csv']);
    edit.undo();
    expect(shop()).toEqual(before);
  });

  it('names the new lines that are a rush', async () => {
    const text = [
      'order,customer,part,quantity,gauge,colour,due,rush',
      '2001,Gütersloh Sheds,corner,40,24,moss,2026-12-10,yes',
      '2002,Gütersloh Sheds,corner,4,24,moss,2026-12-10,',
    ].join('\n');
    expect(await start().take(text)).toMatchObject({ counts: { new: 2 }, rush: ['2001/1'] });
  });

  it('twice adds nothing the second time', async () => {
    const { take, read, edit, shop } = start();
    await take(GOOD);
    const once = shop();
    expect((await read(GOOD)).counts).toMatchObject({ new: 0, changed: 0, known: 2, wrong: 0 });
    expect(await take(GOOD)).toMatchObject({ stepId: null, counts: { new: 0, changed: 0 } });
    expect(shop()).toEqual(once);
    expect(edit.history().undo).toHaveLength(1);
  });

  it('twice adds nothing either when the lines have no numbers', async () => {
    const { take, shop } = start();
    const text = `${HEADER}\n2001,,Sheds,corner,40,24,moss,96,2026-12-10\n2001,,Sheds,corner,40,24,moss,96,2026-12-10`;
    expect((await take(text)).counts.new).toBe(2);
    expect((await take(text)).counts.new).toBe(0);
    expect(shop().line.filter((l) => l.orderId === '2001')).toHaveLength(2);
  });

  it('again with other figures changes them as one step, and undone they are as before', async () => {
    const { take, edit, shop } = start();
    await take(GOOD);
    const before = shop();
    const changed = GOOD.replace('corner,40', 'corner,45').replaceAll('2026-12-10', '2026-12-12');
    expect(await take(changed)).toMatchObject({ counts: { new: 0, changed: 2 } });
    expect(shop().line.find((l) => l.id === '2001/1')).toMatchObject({ quantity: 45, due: null });
    edit.undo();
    expect(shop().line).toMatchObject(before.line.map(({ revision: _revision, ...line }) => line));
  });

  it('remembers what was said of texts and columns for the next file of its shape', async () => {
    const { take, read } = start();
    const file = GOOD.replace('moss', 'RAL 6005').replace('quantity', 'No of');
    const first = await read(file);
    expect(first.questions.map(({ id }) => id)).toEqual(['column:quantity', 'same:colour:ral 6005']);
    const answers: Answers = {
      columns: { quantity: 'No of' },
      same: [{ what: 'colour', text: 'RAL 6005', is: 'moss' }],
    };
    expect((await take(file, answers)).counts.new).toBe(2);
    const next = await read(file.replaceAll('2001', '2002'));
    expect(next.questions).toEqual([]);
    expect(next.columns.find(({ field }) => field === 'quantity')).toMatchObject({ by: 'remembered' });
    expect(next.counts.new).toBe(2);
  });

  it('leaves wrong rows, and takes them once their cells are typed again', async () => {
    const { take, shop } = start();
    const file = GOOD.replace('12,26', '-12,26');
    const { left } = await take(file);
    expect(rowsOf(left, 'wrong')).toEqual([3]);
    expect(issuesOf(left)).toEqual([
      { row: 3, field: 'quantity', text: '-12', issue: 'The quantity must be at least 1, not -12.' },
    ]);
    const cells = [{ row: 3, field: 'quantity', text: '12' }];
    expect((await take(file, { cells })).counts).toEqual({ new: 1, changed: 0 });
    expect(shop().line.filter((l) => l.orderId === '2001')).toHaveLength(2);
  });
});
