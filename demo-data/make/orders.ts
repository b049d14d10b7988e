import type { OrderColumn } from '../../core/import/order-fields.ts';
import { shiftDate } from '../../core/time/wall.ts';
import type { Rng } from './rng.ts';

/** One line of a work order, each column as it is written. */
export type OrderRow = Readonly<Record<OrderColumn, string | number>>;

/** Invented; none is meant to be anybody. */
const customers = [
  'Applecart Sheds',
  'Bramblecote Homes',
  'Copperbeak Gutters',
  'Crooked Gate Builders',
  'Dunnock Yard Joinery',
  'Four Kettles Construction',
  'Gosling Bridge Roofing',
  'Harrow Lane Roofing',
  'Haywain Farm Buildings',
  'Hobnail Barns',
  'Marrowfat Roofing',
  'Mossy Gable Roofing',
  'Nine Sparrows Roofing',
  'Owl and Ladder Roofing',
  'Pepperpot Masonry',
  'Puddlewick Builders',
  'Quillfeather School Board',
  'Thimble and Daughters Roofing',
  'Tinderbox Lane Builders',
  'Windle Top Siding',
] as const;

/** How often each part is asked for, and the usual (median) quantity. */
const demand: readonly (readonly [part: string, weight: number, pieces: number, usualLength: number])[] = [
  ['drip-edge', 14, 55, 120],
  ['fascia-6', 8, 34, 120],
  ['fascia-8', 6, 30, 120],
  ['fascia-10', 3, 24, 120],
  ['ridge-cap', 9, 30, 120],
  ['ridge-cap-wide', 4, 22, 120],
  ['hip-cap', 3, 20, 120],
  ['gable-trim', 8, 32, 120],
  ['gable-trim-stepped', 4, 22, 120],
  ['valley-plain', 4, 16, 120],
  ['valley-w', 3, 14, 120],
  ['coping-8', 7, 26, 96],
  ['coping-12', 5, 22, 96],
  ['sill', 9, 44, 72],
  ['head', 6, 40, 72],
  ['inside-corner', 5, 20, 120],
  ['outside-corner', 5, 20, 120],
  ['j-channel', 9, 60, 120],
  ['z-bar', 5, 44, 120],
  ['base-trim', 5, 44, 120],
  ['counterflashing', 7, 36, 96],
  ['apron', 5, 30, 96],
  ['cleat', 6, 70, 96],
  ['cover-strip', 2, 30, 120],
];

const stocks: readonly (readonly [{ readonly material: string; readonly gauge: string }, number])[] = [
  [{ material: 'galv', gauge: '24' }, 56],
  [{ material: 'galv', gauge: '26' }, 22],
  [{ material: 'galv', gauge: '22' }, 10],
  [{ material: 'alum', gauge: '.032' }, 12],
];

const colours = [
  ['charcoal', 18],
  ['bone', 15],
  ['slate', 14],
  ['barn-red', 11],
  ['moss', 10],
  ['walnut', 9],
  ['chalk', 8],
  ['dusk', 6],
  ['clay', 5],
  ['wheat', 4],
] as const;

const notes = [
  'Customer collects.',
  'Bundle by elevation.',
  'Leave film on.',
  'Mark each bundle with the lot.',
  'Call before loading.',
] as const;

/** Log-normal about the median, rounded as people order: single pieces below 20, then by five. */
function quantity(median: number, rng: Rng): number {
  const drawn = Math.max(2, median * Math.exp(0.55 * rng.normal()));
  return drawn < 20 ? Math.round(drawn) : 5 * Math.round(drawn / 5);
}

/** Pieces longer than 8 ft are also sold in 8 ft and shorter lengths, which fit either brake. */
const lengthOf = (usual: number, rng: Rng): number =>
  usual > 96 && rng.chance(0.38)
    ? rng.weighted([[96, 5] as const, [72, 2] as const, [60, 1] as const])
    : usual;

/** What the order as a whole says; the same on each of its lines. */
export type OrderHead = Pick<
  OrderRow,
  'order' | 'customer' | 'not before' | 'due' | 'importance' | 'rush' | 'note'
>;

/** A work order's lines: mostly one gauge and colour, sometimes a second colour for a contrasting piece. */
export function orderLines(head: OrderHead, count: number, rng: Rng): OrderRow[] {
  const stock = rng.weighted(stocks);
  const main = rng.weighted(colours);
  const wanted = new Map<string, (typeof demand)[number]>();
  while (wanted.size < count) {
    const item = rng.weighted(demand.map((d) => [d, d[1]] as const));
    wanted.set(item[0], item);
  }
  return [...wanted.values()].map(([part, , pieces, usualLength], index) => ({
    ...head,
    line: index + 1,
    part,
    quantity: quantity(pieces, rng),
    'extra pieces': '',
    ...stock,
    colour: rng.chance(0.15) ? rng.weighted(colours) : main,
    length: String(lengthOf(usualLength, rng)),
  }));
}

/** `lines` shared out over `orders`, each getting 1 to 6. */
export function lineCounts(orders: number, lines: number, rng: Rng): number[] {
  const counts = Array.from({ length: orders }, () => 1);
  for (let left = lines - orders; left > 0;) {
    const at = rng.whole(0, orders - 1);
    const count = counts[at] ?? 6;
    if (count >= 6) continue;
    counts[at] = count + 1;
    left -= 1;
  }
  return counts;
}

export const customer = (rng: Rng): string => rng.pick(customers);
export const remark = (rng: Rng): string => (rng.chance(0.15) ? rng.pick(notes) : '');

/** The date of a working day counted from the anchor Monday (0): -1 is the Friday before, 5 the Monday after. */
export function workday(monday: string, index: number): string {
  const week = Math.floor(index / 5);
  return shiftDate(monday, 7 * week + (index - 5 * week));
}

/** Promised by the end of a day shift: 15:00, on a Friday 12:30. */
export const dueOn = (monday: string, index: number): string =>
  `${workday(monday, index)} ${((index % 5) + 5) % 5 === 4 ? '12:30' : '15:00'}`;
