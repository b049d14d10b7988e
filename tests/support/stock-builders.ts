import type { RowOf } from '../../core/shop/state.ts';
import { type With, at } from './builders.ts';

/** Ten sheets came on the Friday before. */
export const aMovement = (own: With<'movement'> = {}): RowOf<'movement'> => ({
  id: 'galv-24-moss.1',
  sheetId: 'galv-24-moss',
  at: at('2026-11-27', '10:00'),
  what: 'received',
  pieces: 10,
  after: 40,
  note: '',
  revision: 0,
  ...own,
});

/** A list whose steps were all taken out. */
export const aCutList = (own: With<'cutList'> = {}): RowOf<'cutList'> => ({
  id: '1042/1',
  lines: ['1042/1'],
  groups: [],
  steps: [],
  revision: 0,
  ...own,
});
