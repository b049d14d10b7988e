import { describe, expect, it } from 'vitest';
import { lateOffers, offerSentence, rushOffers } from '../../../core/report/rush-offer.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShop, at, ZONE } from '../../support/builders.ts';

const HOUR = 3600;
const shop = (order: Parameters<typeof anOrder>[0], line: Partial<Shop> = {}): Shop =>
  aShop({ order: [anOrder({ id: '1042', due: at('2026-12-04'), ...order })], line: [aLine()], ...line });

describe('lines that may want to go sooner', () => {
  it('a due date moved forward is one, moved back is none; a line with a date of its own keeps that', () => {
    const sooner = shop({ due: at('2026-12-02') });
    expect(rushOffers(shop({}), sooner)).toEqual([{ lineId: '1042/1', why: 'due' }]);
    expect(rushOffers(sooner, shop({}))).toEqual([]);
    const own = { line: [aLine({ due: at('2026-12-03') })] };
    expect(rushOffers(shop({}, own), shop({ due: at('2026-12-02') }, own))).toEqual([]);
  });

  it('an order set free is one, one that is held is none', () => {
    expect(rushOffers(shop({ status: 'held' }), shop({}))).toEqual([{ lineId: '1042/1', why: 'free' }]);
    expect(rushOffers(shop({}), shop({ status: 'held' }))).toEqual([]);
  });

  it('a line that makes pieces again is one; a new line of an order is asked about where it is entered', () => {
    const more = (own: Parameters<typeof aLine>[0]) =>
      shop({}, { line: [aLine(), aLine({ number: 2, ...own })] });
    expect(rushOffers(shop({}), more({ makeUpFor: '1042/1' }))).toEqual([
      { lineId: '1042/2', why: 'makeUp' },
    ]);
    expect(rushOffers(shop({}), more({}))).toEqual([]);
  });

  it('a new order is none, and nothing is asked of a shop just read', () => {
    expect(rushOffers(aShop({ order: [], line: [] }), shop({}))).toEqual([]);
  });
});

describe('what is said of them', () => {
  const row = (lineId: string, lateness: number) => ({
    lineId,
    orderId: '1042',
    end: at('2026-12-21', '10:00'),
    due: at('2026-12-21', '10:00') - lateness,
    lateness,
    importance: 1,
  });
  const offers = [
    { lineId: '1042/1', why: 'due' } as const,
    { lineId: '1042/2', why: 'free' } as const,
    { lineId: '1042/3', why: 'makeUp' } as const,
  ];

  it('only those that are late as they stand, the latest first', () => {
    const late = lateOffers(offers, [row('1042/1', HOUR), row('1042/2', -HOUR), row('1042/3', 3 * HOUR)]);
    expect(late.map(({ lineId }) => lineId)).toEqual(['1042/3', '1042/1']);
    expect(offerSentence(late, ZONE)).toBe(
      '2 lines may want to go sooner. The latest as they stand: 1042/3 makes pieces again, ready Mon 21 Dec 10:00, 3 h late.',
    );
    expect(offerSentence(late.slice(1), ZONE)).toBe(
      '1042/1 is due earlier now. As it stands, it is ready Mon 21 Dec 10:00, 1 h late.',
    );
    expect(offerSentence([], ZONE)).toBe('');
  });
});
