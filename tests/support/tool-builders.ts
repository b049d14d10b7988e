import type { RowOf } from '../../core/shop/state.ts';
import type { With } from './builders.ts';

/** A die of an 8 mm V that fits B1. */
export const aTool = (own: With<'tool'> = {}): RowOf<'tool'> => ({
  id: 'V8',
  name: 'Die, V 8',
  kind: 'die',
  openingMm: 8,
  angleDeg: 85,
  radiusMm: null,
  gooseneck: false,
  lengthMm: 3050,
  ratingKnPerM: null,
  machineIds: ['B1'],
  note: '',
  revision: 0,
  ...own,
});
