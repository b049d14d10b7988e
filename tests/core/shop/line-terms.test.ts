import { describe, expect, it } from 'vitest';
import { startsBeforeDue } from '../../../core/shop/order.ts';
import { termsOf } from '../../../core/shop/line-terms.ts';
import { aLine, anOrder, at } from '../../support/builders.ts';

const order = anOrder({
  due: at('2026-12-04'),
  release: at('2026-12-01', '07:00'),
  importance: 2,
  note: 'Site B',
});

describe('what holds for a line', () => {
  it('is what its order says, where it says nothing itself', () => {
    expect(termsOf(order, aLine())).toEqual({
      due: order.due,
      release: order.release,
      importance: 2,
      notes: ['Site B'],
    });
  });

  it('is what it says itself, each term alone', () => {
    const due = at('2026-12-02');
    expect(termsOf(order, aLine({ due }))).toMatchObject({ due, release: order.release, importance: 2 });
    const release = at('2026-12-03', '07:00');
    expect(termsOf(order, aLine({ release }))).toMatchObject({ due: order.due, release });
    expect(termsOf(order, aLine({ importance: 0.5 }))).toMatchObject({ importance: 0.5 });
  });

  it('has both notes, the order’s first; blank ones are none', () => {
    expect(termsOf(order, aLine({ note: 'Film side out' })).notes).toEqual(['Site B', 'Film side out']);
    expect(termsOf(anOrder({ note: '  ' }), aLine({ note: 'Film side out' })).notes).toEqual([
      'Film side out',
    ]);
    expect(termsOf(anOrder(), aLine()).notes).toEqual([]);
  });

  it('may clash where both are mixed: a line due before its order may be begun', () => {
    expect(startsBeforeDue(termsOf(order, aLine({ due: at('2026-12-01', '07:00') })))).toBe(false);
    expect(startsBeforeDue(termsOf(order, aLine({ due: at('2026-12-01', '07:01') })))).toBe(true);
  });
});
