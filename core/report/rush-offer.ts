import type { LineLateness } from '../planning/lateness.ts';
import { termsOf } from '../shop/line-terms.ts';
import type { OrderLine, WorkOrder } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { counted } from '../units/count.ts';
import { instant } from '../units/brand.ts';
import { shortDuration } from '../units/duration.ts';

/** A line of which it may be asked how to fit it in sooner, and why just now. */
export interface RushOffer {
  readonly lineId: string;
  /** `due`: its date was moved forward; `makeUp`: it makes spoiled pieces again; `free`: its order is held no more. */
  readonly why: 'due' | 'makeUp' | 'free';
}

/**
 * The lines that a change of the shop may have made urgent where they stand: nothing moves by such a change, so a line may
 * stand behind work that can wait longer. New work is not among them: it is asked about where it is entered.
 */
export function rushOffers(before: Shop, after: Shop): RushOffer[] {
  const [ordersWere, orders] = [byId(before.order), byId(after.order)];
  const linesWere = byId(before.line);
  return after.line.flatMap((line): RushOffer[] => {
    const order = orders.get(line.orderId);
    if (!order || order.status !== 'open' || line.status !== 'open') return [];
    const [was, orderWas] = [linesWere.get(line.id), ordersWere.get(line.orderId)];
    if (was === line && orderWas === order) return [];
    const why = whyAsk(line, order, was, orderWas);
    return why ? [{ lineId: line.id, why }] : [];
  });
}

function whyAsk(
  line: OrderLine,
  order: WorkOrder,
  was: OrderLine | undefined,
  orderWas: WorkOrder | undefined,
): RushOffer['why'] | null {
  if (!orderWas) return null;
  if (!was) return line.makeUpFor === null ? null : 'makeUp';
  if (orderWas.status === 'held') return 'free';
  return termsOf(order, line).due < termsOf(orderWas, was).due ? 'due' : null;
}

const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
  new Map(rows.map((row) => [row.id, row]));

/** Those of the offers whose lines are late as they stand, the latest first. @param rows lateness of every line as planned */
export function lateOffers(
  offers: readonly RushOffer[],
  rows: readonly LineLateness[],
): (RushOffer & LineLateness)[] {
  const late = new Map(rows.filter(({ lateness }) => lateness > 0).map((row) => [row.lineId, row]));
  return offers
    .flatMap((offer) => {
      const row = late.get(offer.lineId);
      return row ? [{ ...row, ...offer }] : [];
    })
    .sort((a, b) => b.lateness - a.lateness || (a.lineId < b.lineId ? -1 : 1));
}

const whyWords: Readonly<Record<RushOffer['why'], string>> = {
  due: 'is due earlier now',
  makeUp: 'makes pieces again',
  free: 'is held no more',
};

/**
 * What was noticed, as a sentence: "1042/3 makes pieces again. As it stands, it is ready Mon 21 Dec 10:00, 20 days late."
 * @param offers at least one, the latest first
 */
export function offerSentence(offers: readonly (RushOffer & LineLateness)[], timeZone: string): string {
  const [first] = offers;
  if (!first) return '';
  const stands = `ready ${formatDayAndClock(instant(first.end), timeZone)}, ${shortDuration(first.lateness)} late`;
  if (offers.length === 1) return `${first.lineId} ${whyWords[first.why]}. As it stands, it is ${stands}.`;
  return `${counted(offers.length, 'line')} may want to go sooner. The latest as they stand: ${first.lineId} ${whyWords[first.why]}, ${stands}.`;
}
