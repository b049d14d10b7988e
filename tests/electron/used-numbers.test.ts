import { describe, expect, it } from 'vitest';
import { editService } from '../../electron/service/edit.ts';
import { instant } from '../../core/units/brand.ts';
import type { Shop } from '../../core/shop/state.ts';
import { aLine, anOrder, aRecord, aShop, NOW } from '../support/builders.ts';
import { keptPushes, livingIn, storeWith } from './support.ts';

const LONG_AGO = instant(NOW - 30 * 86_400);
const clock = { now: () => NOW, fixed: true };

function start(shop: Shop) {
  const living = livingIn(storeWith(shop), keptPushes(), clock);
  return { living, edit: editService(living, clock) };
}

describe('numbers that old work has used', () => {
  it('are passed over by the line for pieces to make again, so that the operator is never refused for it', () => {
    const { living, edit } = start(
      aShop({
        order: [anOrder()],
        line: [aLine()],
        record: [
          aRecord({ good: 0, scrapped: 0, end: null }),
          aRecord({ id: '1042/2:shear', start: LONG_AGO - 7200, end: LONG_AGO - 3600 }),
          aRecord({ id: '900/1:shear', start: LONG_AGO - 3600, end: LONG_AGO }),
        ],
      }),
    );
    edit.apply({ do: 'floor.done', operation: '1042/1:shear', at: NOW + 7200, good: 18, scrapped: 2 });
    expect(living.shop.line.map(({ id }) => id)).toEqual(['1042/1', '1042/3']);
  });

  it('are passed over by walk-in cuts, those in the archive too', () => {
    const { living, edit } = start(
      aShop({
        order: [
          anOrder(),
          anOrder({ id: 'walk-in-9', status: 'done', closedAt: LONG_AGO }),
          anOrder({ id: 'walk-in-10', status: 'done', closedAt: LONG_AGO }),
        ],
        line: [aLine(), aLine({ orderId: 'walk-in-10', status: 'done' })],
      }),
    );
    edit.apply({
      do: 'walkin.take',
      text: '4 @ 6 x 96 24 moss',
      pieces: 4,
      girthMm: 152.4,
      lengthMm: 2438.4,
      materialId: 'galv',
      gauge: '24',
      colourId: 'moss',
      due: instant(NOW + 7200),
    });
    expect(living.shop.order.map(({ id }) => id)).toEqual(['1042', 'walk-in-11']);
  });
});
