import { compareIds } from '../shop/row-change.ts';
import { metalName } from '../shop/metal-name.ts';
import type { Shop } from '../shop/state.ts';

/** Something of the shop that has the text one looks for in it. */
export interface Found {
  readonly kind: 'order' | 'line' | 'part' | 'customer';
  /** The order's number, the line's or part's code, the customer's name. */
  readonly id: string;
  /** What it is called. */
  readonly title: string;
  /** What else tells it from others. */
  readonly detail: string;
}

interface Candidate extends Found {
  /** Everything it can be found by. */
  readonly text: string;
}

const KINDS: readonly Found['kind'][] = ['order', 'line', 'part', 'customer'];

/** As people type: capitals and accents do not matter. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase();

/**
 * Work orders, lines, parts and customers of the living shop that have every word of a text in them. Those whose number,
 * code or name is the text come first, then those that begin with it; else orders before lines, parts and customers.
 * @param most of each kind
 * @returns nothing for an empty text
 */
export function findInShop(shop: Shop, text: string, most: number): Found[] {
  const sought = plain(text).trim();
  const words = sought.split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const rank = ({ id }: Candidate): number => {
    const own = plain(id);
    if (own === sought) return 0;
    return own.startsWith(sought) ? 1 : 2;
  };
  const fitting = candidates(shop).filter(({ text: own }) => words.every((word) => own.includes(word)));
  const sorted = fitting.sort(
    (a, b) => rank(a) - rank(b) || KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || compareIds(a.id, b.id),
  );
  const counts = new Map<string, number>();
  return sorted.flatMap(({ text: _, ...found }) => {
    const count = (counts.get(found.kind) ?? 0) + 1;
    counts.set(found.kind, count);
    return count > most ? [] : [found];
  });
}

function candidates(shop: Shop): Candidate[] {
  const orders = new Map(shop.order.map((order) => [order.id, order]));
  const parts = new Map(shop.part.map((part) => [part.id, part]));
  const made = (kind: Found['kind'], id: string, title: string, detail: string, more = ''): Candidate => ({
    ...{ kind, id, title, detail },
    text: plain(`${id} ${title} ${detail} ${more}`),
  });
  const customers = new Map<string, number>();
  for (const { customer } of shop.order) customers.set(customer, (customers.get(customer) ?? 0) + 1);
  return [
    ...shop.order.map(({ id, customer, note, status }) =>
      made('order', id, `Work order ${id}`, status === 'open' ? customer : `${customer}, ${status}`, note),
    ),
    ...shop.line.map((line) => {
      const name = parts.get(line.partId)?.name ?? line.partId;
      const detail = `${line.quantity} × ${name}, ${metalName(shop, line)}`;
      return made(
        'line',
        line.id,
        `Line ${line.id}`,
        detail,
        `${line.partId} ${orders.get(line.orderId)?.customer}`,
      );
    }),
    ...shop.part.map(({ id, name, note }) => made('part', id, `Part ${id}`, name, note)),
    ...[...customers].map(([customer, count]) =>
      made('customer', customer, customer, count === 1 ? 'one work order' : `${count} work orders`),
    ),
  ];
}
