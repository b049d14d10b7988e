import {
  Archive,
  CalendarRange,
  ClipboardList,
  List,
  Shapes,
  UserRound,
  type LucideIcon,
} from 'lucide-react';
import { useEffect, useMemo, useState } from 'react';
import { findInShop, type Found } from '../../core/report/find.ts';
import type { Shop } from '../../core/shop/state.ts';
import { useBoardView } from '../gantt/view.ts';
import { useFoundInArchive } from '../queries/archive.ts';
import { useShop } from '../queries/hooks.ts';
import { navigate } from '../router.ts';
import { everything } from '../screens/orders/line-filter.ts';
import { useOrdersView } from '../screens/orders/orders-view.ts';
import type { Action } from './actions.ts';

const MOST_OF_A_KIND = 5;
/** The archive is asked when typing rests. */
const REST_MS = 150;

const icons: Readonly<Record<Found['kind'], LucideIcon>> = {
  order: ClipboardList,
  line: List,
  part: Shapes,
  customer: UserRound,
};

/** Orders, narrowed to what was found: closed lines too, where it may be one. */
function showLines(text: string, lineId: string | null): void {
  const { narrow, choose } = useOrdersView.getState();
  narrow({ ...everything, text, on: ['closed'] });
  choose(lineId);
  navigate('orders');
}

/** The board, at a line. */
function showOnBoard(lineId: string): void {
  useBoardView.getState().seek(lineId);
  navigate('board');
}

const isOpen = (shop: Shop | undefined, lineId: string): boolean =>
  shop?.line.some(({ id, status }) => id === lineId && status === 'open') ?? false;

function goTo({ kind, id }: Found): void {
  switch (kind) {
    case 'order':
      return navigate('orders', id);
    case 'line':
      return showLines(id, id);
    case 'part':
      return navigate('shop', 'parts', id);
    case 'customer':
      return showLines(id, null);
  }
}

/** What a text finds: of the living shop at once, of the archive when typing rests. Each goes there. */
export function useFound(text: string): Action[] {
  const { data: shop } = useShop();
  const rested = useRested(text.trim());
  const { data: archived } = useFoundInArchive(rested);
  const here = useMemo(() => (shop ? findInShop(shop, text, MOST_OF_A_KIND) : []), [shop, text]);
  const orders = rested.length > 1 && text.trim() !== '' ? (archived?.orders ?? []) : [];
  return [
    ...here.map((found) => ({
      id: `found ${found.kind} ${found.id}`,
      label: found.title,
      detail: found.detail,
      icon: icons[found.kind],
      act: () => goTo(found),
    })),
    ...here
      .filter(({ kind, id }) => kind === 'line' && isOpen(shop, id))
      .map(({ id }) => ({
        id: `board ${id}`,
        label: `${id} on the board`,
        icon: CalendarRange,
        act: () => showOnBoard(id),
      })),
    ...orders.map(({ order }) => ({
      id: `found archived ${order.id}`,
      label: `Work order ${order.id}`,
      detail: `${order.customer}, in the archive`,
      icon: Archive,
      act: () => navigate('orders', 'archive', order.id),
    })),
  ];
}

/** A text as it stood when it had not changed for a while. */
function useRested(text: string): string {
  const [rested, setRested] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setRested(text), REST_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return rested;
}
