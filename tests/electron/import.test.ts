import { editService } from '../../electron/service/edit.ts';
import { describe, expect, it } from 'vitest';
import { orderImport } from '../../electron/service/file-import.ts';
import { aShop } from '../support/builders.ts';
import { fixedClock, refusalOf, storeWith, shopIn, livingIn } from './support.ts';

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
  const service = orderImport(living, fixedClock(), edit);
  return {
    ...service,
    edit,
    shop: () => shopIn(store),
    checkText: (text: string) => service.check('orders.csv', Buffer.from(text)),
  };
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
  ])('is read when it is written in %s', (_encoding, bytes, notes) => {
    const checked = start().check('orders.csv', bytes);
    expect(checked.issues).toEqual([]);
    expect(checked.ready).toEqual([2, 3]);
    expect(checked.header[0]).toBe('order');
    expect(checked.rows[0]?.cells[2]).toBe('Gütersloh Sheds');
    expect(checked.notes).toEqual(notes);
  });

  it.each([
    ['semicolons', ';'],
    ['tabs', '\t'],
  ])('is read when its cells are separated by %s', (name, separator) => {
    const checked = start().checkText(GOOD.replaceAll(',', separator));
    expect(checked.ready).toEqual([2, 3]);
    expect(checked.notes).toEqual([`The cells are separated by ${name}.`]);
  });

  it('with semicolons may have decimal commas', () => {
    const { checkText, take, shop } = start();
    const checked = checkText(
      `${HEADER};weight\n2001;1;Sheds;corner;40;24;moss;95,5;2026-12-10;2,5`.replaceAll(
        /(?<=^[^\n]*),/g,
        ';',
      ),
    );
    expect(checked.issues).toEqual([]);
    take(checked.fileName, checked);
    expect(shop().line.find((l) => l.id === '2001/1')?.lengthMm).toBeCloseTo(95.5 * 25.4, 6);
    expect(shop().order.find((o) => o.id === '2001')?.importance).toBe(2.5);
  });

  it('may hold separators, line breaks and quotation marks inside quoted cells', () => {
    const checked = start().checkText(
      `${HEADER},note\n2001,1,"Sheds, Barns",corner,40,24,moss,96,2026-12-10,"say ""hello""\nat the gate"`,
    );
    expect(checked.rows[0]?.cells.slice(2, 3)).toEqual(['Sheds, Barns']);
    expect(checked.rows[0]?.cells.at(-1)).toBe('say "hello"\nat the gate');
    expect(checked.ready).toEqual([2]);
  });

  it('keeps its own row numbers when blank rows stand between', () => {
    expect(start().checkText(GOOD.replaceAll('\r\n', '\n\n')).ready).toEqual([3, 5]);
  });

  it('with rows shorter than the header says so and takes the rest as empty', () => {
    const checked = start().checkText(`${HEADER}\n2001,1,Sheds,corner,40`);
    expect(checked.notes).toEqual([
      'Row 2 is shorter than the header; the missing cells were read as empty.',
    ]);
    expect(checked.issues.map((p) => p.column)).toEqual(['gauge', 'colour']);
  });

  it('with a row longer than the header names the surplus', () => {
    const checked = start().checkText(`${GOOD}\n2002,1,Sheds, Barns,corner,40,24,moss,96,2026-12-10`);
    expect(
      checked.issues.some((p) => p.row === 4 && /more cells than the header \(“2026-12-10”\)/.test(p.reason)),
    ).toBe(true);
    expect(checked.ready).toEqual([2, 3]);
  });
});

describe('a file that is of no use', () => {
  it.each([
    ['empty', Buffer.from(''), /orders.csv is empty/],
    ['only blank rows', Buffer.from('\n\n , ,\n'), /orders.csv is empty/],
    ['a spreadsheet', Buffer.from('PK\u0003\u0004rest'), /spreadsheet or archive.*save it as CSV/],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1]), /not a text file/],
    ['without the needed columns', Buffer.from('a,b\n1,2'), /lacks “order”, “customer”.*it has “a”, “b”/],
    ['with a column twice', Buffer.from(`${HEADER},Order\n`), /the column “order” twice/],
    [
      'with an open quotation mark',
      Buffer.from(`${HEADER}\n1,1,"Sheds,corner\n2,1,x`),
      /quotation mark opened in row \d+ is never closed/,
    ],
  ])('(%s) is refused with a sentence', (_what, bytes, sentence) => {
    expect(refusalOf(() => start().check('orders.csv', bytes)).message).toMatch(sentence);
  });

  it.each([
    ['bytes', Buffer.alloc(4_100_000, 'x'), /has 4.1 MB; at most 4 MB can be read. Nothing was imported/],
    ['rows', Buffer.from(`${HEADER}${'\n1,1,a'.repeat(5001)}`), /has 5,001 rows; at most 5,000/],
    ['lines', Buffer.from(`${HEADER}${'\n'.repeat(20_001)}`), /more than 20,000 lines/],
    ['columns', Buffer.from(`${GOOD}\n${','.repeat(100_000)}`), /100,001 cells in row 4; at most 100/],
    [
      'characters in a cell',
      Buffer.from(`${GOOD},${'x'.repeat(2001)}`),
      /2,001 characters in row 3; at most 2,000/,
    ],
  ])('(too many %s) is refused with both numbers', (_what, bytes, sentence) => {
    expect(refusalOf(() => start().check('orders.csv', bytes)).message).toMatch(sentence);
  });

  it('(with a character that no data file gives back) is refused, naming the row', () => {
    const bytes = utf16(GOOD.replace('Sheds', 'Sh\0eds'), 'le');
    expect(refusalOf(() => start().check('orders.csv', bytes)).message).toMatch(
      /cell in row 2 holds a character/,
    );
  });
});

describe('a cell that is far too long', () => {
  it('is refused with its length, and not repeated in full', () => {
    const checked = start().checkText(GOOD.replace('corner', '1 '.repeat(600)));
    expect(checked.issues[0]).toMatchObject({
      row: 2,
      column: 'part',
      reason: 'The part is 1199 characters long; at most 240 can be read.',
    });
  });

  it('as a title is cut where it is named', () => {
    const message = refusalOf(() => start().checkText(`order,${'x'.repeat(2000)}\n1,2`)).message;
    expect(message).toContain(`“${'x'.repeat(60)}…”`);
    expect(message.length).toBeLessThan(600);
  });
});

describe('taking a file', () => {
  it('adds its orders and lines as one step, and once undone they are gone', () => {
    const { checkText, take, edit, shop } = start();
    const before = shop();
    const taken = take('orders.csv', checkText(GOOD));
    expect(taken).toMatchObject({ orders: 1, lines: 2, left: { rows: [], issues: [] } });
    expect(shop().order.map((o) => o.id)).toEqual(['1042', '1043', '2001']);
    expect(edit.history().undo.map((s) => s.label)).toEqual(['Import 2 lines from orders.csv']);
    edit.undo();
    expect(shop()).toEqual(before);
  });

  it('names the lines that are a rush', () => {
    const { checkText, take } = start();
    const text = [
      'order,customer,part,quantity,gauge,colour,due,rush',
      '2001,Gütersloh Sheds,corner,40,24,moss,2026-12-10,yes',
      '2002,Gütersloh Sheds,corner,4,24,moss,2026-12-10,',
    ].join('\n');
    expect(take('orders.csv', checkText(text))).toMatchObject({ lines: 2, rush: ['2001/1'] });
  });

  it('twice adds nothing the second time', () => {
    const { checkText, take, edit, shop } = start();
    take('orders.csv', checkText(GOOD));
    const once = shop();
    const again = checkText(GOOD);
    expect(again).toMatchObject({ ready: [], known: [2, 3], issues: [] });
    expect(take('orders.csv', again)).toMatchObject({ orders: 0, lines: 0 });
    expect(shop()).toEqual(once);
    expect(edit.history().undo).toHaveLength(1);
  });

  it('twice adds nothing either when the lines have no numbers', () => {
    const { checkText, take, shop } = start();
    const text = `${HEADER}\n2001,,Sheds,corner,40,24,moss,96,2026-12-10\n2001,,Sheds,corner,40,24,moss,96,2026-12-10`;
    expect(take('orders.csv', checkText(text)).lines).toBe(2);
    expect(take('orders.csv', checkText(text)).lines).toBe(0);
    expect(shop().line.filter((l) => l.orderId === '2001')).toHaveLength(2);
  });

  it('gives the wrong rows back to be mended, and takes them once they are', () => {
    const { checkText, take, shop } = start();
    const { left } = take('orders.csv', checkText(GOOD.replace('12,26', '-12,26')));
    expect(left.rows.map((r) => r.row)).toEqual([3]);
    expect(left.issues).toEqual([
      { row: 3, column: 'quantity', value: '-12', reason: 'The quantity must be at least 1, not -12.' },
    ]);
    const fixed = left.rows.map(({ row, cells }) => ({
      row,
      cells: cells.map((cell) => (cell === '-12' ? '12' : cell)),
    }));
    expect(take('orders.csv', { header: left.header, rows: fixed })).toMatchObject({ orders: 0, lines: 1 });
    expect(shop().line.filter((l) => l.orderId === '2001')).toHaveLength(2);
  });
});
