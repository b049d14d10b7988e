import type { OrderColumn } from '../../../core/import/order-fields.ts';
import type { Shop } from '../../../core/shop/state.ts';

/** A row of an order file that this shop could take, so that the example is not about someone else's parts. */
export function exampleRow(shop: Shop): Readonly<Record<OrderColumn, string>> {
  const material = shop.material[0];
  return {
    order: '1001',
    line: '1',
    customer: 'Tin Lantern Roofing',
    part: shop.part[0]?.id ?? 'drip-edge',
    quantity: '40',
    'extra pieces': '2',
    material: material?.id ?? 'galv',
    gauge: material?.gauges[0]?.label ?? '24',
    colour: shop.colour[0]?.id ?? 'moss',
    length: shop.settings.units === 'in' ? '10 ft' : '3000',
    'not before': '',
    due: '2030-05-17 14:00',
    importance: '1',
    rush: 'no',
    note: '',
  };
}
