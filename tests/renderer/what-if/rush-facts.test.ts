import { describe, expect, it } from 'vitest';
import { openRushLines, rushAfterSave, rushFacts } from '../../../renderer/screens/what-if/rush-facts.ts';
import { aLine, anOrder, aRecord, aShop, at } from '../../support/builders.ts';

const due = at('2026-12-01', '15:00');
const rush = anOrder({ rush: true, due });
const lines = [aLine(), aLine({ number: 2 })];

describe('what a rush is, in a sentence', () => {
  it('says what, for whom and by when', () => {
    const shop = aShop({ order: [rush], line: lines });
    expect(rushFacts(shop, ['1042/1'])).toBe('20 × Corner for Invented Roofing, due Tue 1 Dec 15:00.');
    expect(rushFacts(shop, ['1042/1', '1042/2'])).toBe('2 lines for Invented Roofing, due Tue 1 Dec 15:00.');
  });

  it('gives the earliest due date of several work orders', () => {
    const shop = aShop({
      order: [rush, anOrder({ id: '1043', due: at('2026-12-03') })],
      line: [aLine(), aLine({ orderId: '1043' })],
    });
    expect(rushFacts(shop, ['1042/1', '1043/1'])).toBe(
      '2 lines of 2 work orders, the first of them due Tue 1 Dec 15:00.',
    );
  });

  it('gives a line’s own due date', () => {
    const own = [aLine({ due: at('2026-11-30', '12:00') }), aLine({ number: 2 })];
    const shop = aShop({ order: [rush], line: own });
    expect(rushFacts(shop, ['1042/1'])).toBe('20 × Corner for Invented Roofing, due Mon 30 Nov 12:00.');
    expect(rushFacts(shop, ['1042/1', '1042/2'])).toMatch(/the first of them due Mon 30 Nov 12:00\.$/);
    expect(rushFacts(shop, ['1042/2'])).toMatch(/due Tue 1 Dec 15:00\.$/);
  });
});

describe('lines that are asked about', () => {
  it('are the open ones of open rush orders on which no work has begun', () => {
    const shop = aShop({
      order: [rush, anOrder({ id: '1043' }), anOrder({ id: '1044', rush: true, status: 'held' })],
      line: [
        ...lines,
        aLine({ number: 3, status: 'done' }),
        aLine({ orderId: '1043' }),
        aLine({ orderId: '1044' }),
      ],
      record: [aRecord({ id: '1042/2:shear' })],
    });
    expect(openRushLines(shop)).toEqual(['1042/1']);
  });

  it('are asked about after saving when something came in that the plan has not seen', () => {
    const before = { order: rush, lines };
    expect(rushAfterSave(null, before)).toEqual(['1042/1', '1042/2']);
    expect(rushAfterSave({ ...before, order: anOrder({ due }) }, before)).toHaveLength(2);
    expect(
      rushAfterSave({ ...before, order: { ...rush, due: due + 60 } as typeof rush }, before),
    ).toHaveLength(2);
    expect(rushAfterSave({ ...before, lines: lines.slice(0, 1) }, before)).toHaveLength(2);
  });

  it('are not asked about for a changed note, a held order, or an order that is no rush', () => {
    const before = { order: rush, lines };
    expect(rushAfterSave(before, { ...before, order: { ...rush, note: 'ring first' } })).toEqual([]);
    expect(rushAfterSave(null, { lines, order: { ...rush, status: 'held' } })).toEqual([]);
    expect(rushAfterSave(null, { lines, order: anOrder() })).toEqual([]);
  });
});
