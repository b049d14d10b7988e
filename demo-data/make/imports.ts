import { shiftDate } from '../../core/time/wall.ts';
import { customer, dueOn, lineCounts, orderLines, remark, workday, type OrderRow } from './orders.ts';
import type { Rng } from './rng.ts';

/** Files to try the import with, dated for the week that begins on a given Monday. */

const NEXT_WEEK = { orders: 12, lines: 30, firstNumber: 4161 } as const;

/** Twelve orders for the weeks after, written the way people write: lengths in feet, colours by name. */
export function nextWeekOrders(
  monday: string,
  colourNames: ReadonlyMap<string, string>,
  rng: Rng,
): OrderRow[] {
  const counts = lineCounts(NEXT_WEEK.orders, NEXT_WEEK.lines, rng);
  return counts.flatMap((count, index) => {
    const head = {
      order: String(NEXT_WEEK.firstNumber + index),
      customer: customer(rng),
      'not before': index % 4 === 3 ? `${workday(monday, 4)} 06:30` : '',
      due: dueOn(monday, 7 + rng.whole(0, 7)),
      importance: 1,
      rush: '',
      note: remark(rng),
    };
    return orderLines(head, count, rng).map((row) => ({
      ...row,
      colour: colourNames.get(String(row.colour)) ?? row.colour,
      length: `${Number(row.length) / 12} ft`,
    }));
  });
}

/** One order that cannot wait, due on Wednesday. */
export function rushOrder(monday: string): OrderRow[] {
  const head = {
    order: '4173',
    customer: 'Gosling Bridge Roofing',
    material: 'galv',
    gauge: '24',
    colour: 'charcoal',
    'not before': '',
    due: dueOn(monday, 2),
    importance: 4,
    rush: 'yes',
    note: 'A tree came down on the roof.',
  };
  return [
    { ...head, line: 1, part: 'ridge-cap', quantity: 18, 'extra pieces': 0, length: '120' },
    { ...head, line: 2, part: 'sill', quantity: 12, 'extra pieces': 0, length: '72' },
  ];
}

/** One good row, then one row of each kind that must be refused; the note says what is wrong. */
export function brokenOrders(monday: string): OrderRow[] {
  const due = dueOn(monday, 9);
  const sound: OrderRow = {
    order: '4201',
    line: 1,
    customer: 'Nine Sparrows Roofing',
    part: 'drip-edge',
    quantity: 40,
    'extra pieces': 2,
    material: 'galv',
    gauge: '24',
    colour: 'moss',
    length: '120',
    'not before': '',
    due,
    importance: 1,
    rush: '',
    note: 'Nothing is wrong here.',
  };
  const faults: Partial<OrderRow>[] = [
    { quantity: -5, note: 'Quantity below nought.' },
    { quantity: 0, note: 'Quantity nought.' },
    { quantity: '2.5', note: 'Half a piece.' },
    { quantity: 'ten', note: 'Quantity in words.' },
    { part: 'drip-egde', note: 'Part misspelt.' },
    { material: 'zinc', note: 'A metal the shop does not buy.' },
    { gauge: '23', note: 'A gauge the material does not come in.' },
    { colour: 'mos', note: 'Colour misspelt.' },
    { length: 'ten feet', note: 'Length in words.' },
    { length: '144', note: 'Longer than any machine.' },
    { due: `${shiftDate(monday, -14)} 15:00`, note: 'Due in the past.' },
    { due: `04/05/${Number(due.slice(0, 4)) + 1}`, note: 'A date that could be read two ways.' },
    { due: '', note: 'No due date.' },
    { 'not before': `${workday(monday, 12)} 06:30`, note: 'Not before a time after it is due.' },
    { 'not before': 'soon', note: 'Not before, in words.' },
    { importance: 99, note: 'Importance above the limit.' },
    { rush: 'perhaps', note: 'Rush is neither yes nor no.' },
    { customer: '', note: 'No customer.' },
    { order: '', note: 'No order number.' },
    { line: '1a', note: 'Line number is not whole.' },
  ];
  return [
    sound,
    { ...sound, quantity: 45, note: 'The same line twice.' },
    ...faults.map((fault, index) => ({ ...sound, order: String(4202 + index), ...fault })),
  ];
}
