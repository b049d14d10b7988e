import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aLine, aMaterial, anOrder, aShear, aShop, at } from '../../support/builders.ts';
import { check, checkedOf, readOrders, RIGHT, wrongCell } from './order-table.ts';

describe('a row that is right', () => {
  it('becomes an order and a line with every cell in its place', () => {
    const { orders, lines, issues, of } = check([{}]);
    expect(issues).toEqual([]);
    expect(of('new')).toEqual([2]);
    expect(orders).toEqual([
      anOrder({
        id: '2001',
        customer: 'Sheds',
        release: at('2026-12-01', '00:00'),
        due: at('2026-12-10', '14:00'),
        importance: 2,
        rush: true,
        note: 'call first',
      }),
    ]);
    expect(lines).toEqual([aLine({ orderId: '2001', quantity: 40, overrun: 3, lengthMm: 96 * 25.4 })]);
  });

  it('may leave out what has a usual value', () => {
    const { orders, lines } = check([
      {
        line: '',
        'extra pieces': '',
        material: '',
        length: '',
        'not before': '',
        importance: '',
        rush: '',
        note: '',
      },
    ]);
    expect(orders[0]).toMatchObject({ release: null, importance: 1, rush: false, note: '' });
    expect(lines[0]).toMatchObject({ id: '2001/1', overrun: 0, materialId: 'galv', lengthMm: 2540 });
  });

  it('may name part, material and colour by name, in any case, and the gauge with its unit', () => {
    const { lines } = check([
      { part: 'FLAT STRIP', material: 'galvanized', colour: 'Bone White', gauge: '#26 ga' },
    ]);
    expect(lines[0]).toMatchObject({
      partId: 'flat-strip',
      materialId: 'galv',
      colourId: 'bone',
      gauge: '26',
    });
  });

  it('has the columns in any order, whatever their case, and others are named as not used', () => {
    const header = ['Colour', 'GAUGE', 'phone', 'due', 'qty', 'Part', 'customer', 'Work order'];
    const cells = ['moss', '24', '555', '2026-12-10', '3', 'corner', 'Sheds', '2001'];
    const { of, read } = checkedOf(readOrders([header, cells]));
    expect(of('new')).toEqual([2]);
    expect(read.reading.notes).toEqual(['Columns not used: “phone”.']);
  });

  it('may come from a file with the older names of columns', () => {
    const older = Object.keys(RIGHT)
      .join()
      .replace('extra pieces', 'overrun')
      .replace('not before', 'release')
      .replace('importance', 'weight')
      .split(',');
    expect(older).toEqual(expect.arrayContaining(['overrun', 'release', 'weight']));
    expect(checkedOf(readOrders([older, Object.values(RIGHT)])).lines).toEqual(check([{}]).lines);
    expect(checkedOf(readOrders([older, Object.values(RIGHT)])).orders).toEqual(check([{}]).orders);
  });

  it('has no column twice: which is meant is asked', () => {
    const read = readOrders([
      [...Object.keys(RIGHT), 'Quantity'],
      [...Object.values(RIGHT), '4'],
    ]);
    expect(read.reading.questions).toMatchObject([
      { is: 'column', field: 'quantity', titles: ['quantity', 'Quantity'] },
    ]);
    expect(read.reading.counts).toMatchObject({ waiting: 1, new: 0 });
    expect(read.command).toBeNull();
  });

  it('may give a length in another unit than the shop’s', () => {
    expect(check([{ length: '2400 mm' }]).lines[0]?.lengthMm).toBe(2400);
  });
});

describe('a quantity', () => {
  it.each([
    ['-5', /at least 1, not -5/],
    ['0', /at least 1, not 0/],
    ['2.5', /whole number, not 2.5/],
    ['ten', /“ten” is not a number/],
    ['1000000', /at most 100000/],
    ['', /quantity is missing/],
  ])('of “%s” is refused', (quantity, reason) => {
    expect(wrongCell({ quantity })).toMatchObject({
      row: 2,
      column: 'quantity',
      value: quantity,
      reason: expect.stringMatching(reason),
    });
  });

  it('may group its thousands', () => {
    expect(check([{ quantity: '1,200' }]).lines[0]?.quantity).toBe(1200);
  });
});

describe('a number of extra pieces', () => {
  it.each([
    ['-1', /at least 0, not -1/],
    ['1.5', /whole number, not 1.5/],
    ['some', /“some” is not a number/],
    ['20000', /at most 10000/],
  ])('of “%s” is refused', (extra, reason) => {
    expect(wrongCell({ 'extra pieces': extra })).toMatchObject({
      column: 'extra pieces',
      reason: expect.stringMatching(reason),
    });
  });
});

describe('a date', () => {
  it.each([
    ['2026-12-10', '17:00'],
    ['2026-12-10 09:30', '09:30'],
    ['2026-12-10T09:30', '09:30'],
    ['2026-12-10T09:30:00', '09:30'],
  ])('written “%s” is due at %s on the shop’s clock', (due, clock) => {
    expect(check([{ due }]).orders[0]?.due).toBe(at('2026-12-10', clock));
  });

  it.each(['12/24/2026', '24/12/2026', '24.12.2026'])('written “%s” can mean one day only', (due) => {
    expect(check([{ due }]).orders[0]?.due).toBe(at('2026-12-24'));
  });

  it.each([
    ['2027-02-29', /“2027-02-29” is no date/],
    ['13/13/2026', /is no date/],
    ['soon', /“soon” is no date/],
    ['2026-12-10 25:00', /“2026-12-10 25:00” is no date/],
    ['2026-11-27', /Fri 27 Nov 2026 17:00 is past/],
    ['1999-12-10', /is no date from 2001/],
  ])('written “%s” is refused', (due, reason) => {
    expect(wrongCell({ due, 'not before': '' })).toMatchObject({
      column: 'due',
      reason: expect.stringMatching(reason),
    });
  });

  it('not to start before must come before the due date', () => {
    expect(wrongCell({ 'not before': '2026-12-11' })).toMatchObject({
      column: 'not before',
      reason: expect.stringMatching(/not before the due date/),
    });
  });
});

describe('a name that the shop does not know', () => {
  it('is asked once for all rows, the nearest offered first', () => {
    const { read, of } = check([{ part: 'cornr' }, { line: '2', part: 'cornr' }, { line: '3' }]);
    expect(read.reading.questions).toMatchObject([
      { is: 'same', what: 'part', text: 'cornr', rows: 2, choices: [{ id: 'corner' }, {}] },
    ]);
    expect(of('waiting')).toEqual([2, 3]);
    expect(of('new')).toEqual([4]);
    expect(check([{ colour: 'mos' }]).read.reading.questions).toMatchObject([
      { what: 'colour', choices: [{ id: 'moss' }, {}] },
    ]);
  });

  it('is read as what it was said to be, in every row, and that is remembered', () => {
    const same = [{ what: 'part', text: 'Cornr', is: 'corner' }] as const;
    const { lines, read } = check([{ part: 'cornr' }, { line: '2', part: 'CORNR' }], aShop(), { same });
    expect(lines.map(({ partId }) => partId)).toEqual(['corner', 'corner']);
    const command = read.command as Extract<typeof read.command, { do: 'orders.import' }>;
    expect(command.remembered?.names).toMatchObject([{ id: 'part:cornr', text: 'Cornr', oursId: 'corner' }]);
  });

  it('of a gauge is asked where it may be one: a word, or a thickness near that of one', () => {
    // Gauge 24 of the shop is 0.701 mm (0.0276 in) thick.
    for (const gauge of ['thin', '0.75 mm'])
      expect(check([{ gauge }]).read.reading.questions).toMatchObject([
        { what: 'gauge', text: gauge, choices: [{ id: '24' }, { id: '26' }] },
      ]);
  });

  it('of a gauge that is none is refused with those the material has', () => {
    for (const gauge of ['23', '0.62 mm'])
      expect(wrongCell({ gauge }).reason).toBe(`Galvanized has no gauge “${gauge}”. It has 24, 26.`);
  });

  it('of a gauge may be its thickness, to the last place in which that is written', () => {
    for (const gauge of ['0.70 mm', '0,7 mm', '.0276 in'])
      expect(check([{ gauge }]).lines.map((line) => line.gauge)).toEqual(['24']);
  });

  it('of a decimal gauge is found the way a sheet program writes it', () => {
    const alum = aMaterial({
      id: 'alum',
      name: 'Aluminium',
      gauges: [{ label: '.040', thicknessMm: 1.016, kgPerM2: 2.75 }],
    });
    const shop = aShop({ material: [alum, aMaterial()] });
    expect(check([{ material: 'alum', gauge: '0.04' }], shop).lines[0]?.gauge).toBe('.040');
  });

  it('of a material must be given when the shop has several', () => {
    const shop = aShop({ material: [aMaterial({ id: 'alum', name: 'Aluminium' }), aMaterial()] });
    expect(wrongCell({ material: '' }, shop)).toMatchObject({
      column: 'material',
      reason: 'The material is missing.',
    });
  });
});

describe('a piece longer than any machine takes', () => {
  it('is refused, naming the longest machine of the stage', () => {
    expect(wrongCell({ length: '144' }).reason).toMatch(
      /^144 in is longer than the [\d. /]+ in that the longest shear, Shear, takes/,
    );
  });

  it('is refused at the brake only when it is bent', () => {
    const shop = aShop({ machine: [aShop().machine[0]!, aShear({ maxLengthMm: 4000 })] });
    expect(wrongCell({ length: '144' }, shop).reason).toMatch(/longest brake/);
    expect(check([{ length: '144', part: 'flat-strip' }], shop).of('new')).toEqual([2]);
  });
});

describe('whatever stands in the cells', () => {
  it('every row is in one state, a wrong one says why, and the lines taken have ids of their own', () => {
    const anyCell = fc.oneof(
      fc.string(),
      fc.constantFrom('', '1', '2', '1042', '1/2', 'corner', 'moss', '24', '2026-12-10', '-3', '1e9'),
    );
    const anyRow = fc.array(anyCell, { minLength: 14, maxLength: 15 });
    fc.assert(
      fc.property(fc.array(anyRow, { maxLength: 8 }), (cellsOf) => {
        const read = readOrders([Object.keys(RIGHT), ...cellsOf]);
        const { rows, counts } = read.reading;
        const { lines } = checkedOf(read);
        expect(new Set(rows.map(({ row }) => row)).size).toBe(rows.length);
        expect(Object.values(counts).reduce((sum, one) => sum + one, 0)).toBe(rows.length);
        expect(new Set(lines.map((l) => l.id)).size).toBe(counts.new + counts.changed);
        for (const { cells, state, words } of rows)
          if (state === 'wrong')
            expect(words !== '' || cells.some(({ issue }) => issue !== undefined && issue !== '')).toBe(true);
      }),
    );
  });
});
