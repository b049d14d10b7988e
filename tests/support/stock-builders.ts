import type { CutStep } from '../../core/cutting/step.ts';
import type { CutList } from '../../core/shop/stock.ts';
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
  taken: null,
  counted: [],
  revision: 0,
  ...own,
});

/** Three cuts of the first step of that list, counted on the floor. */
export const aCutCount = (own: With<'cutCount'> = {}): RowOf<'cutCount'> => ({
  id: '1042/1#1',
  listId: '1042/1',
  step: 1,
  made: 3,
  revision: 0,
  ...own,
});

/** Ten sheets that are expected on Thursday morning. */
export const aDelivery = (own: With<'delivery'> = {}): RowOf<'delivery'> => ({
  id: 'D1',
  sheetId: 'galv-24-moss',
  pieces: 10,
  due: at('2026-12-03', '10:00'),
  note: '',
  revision: 0,
  ...own,
});

/** Twelve strips of 150 mm off three sheets, under a name. */
export const aKeptList = (own: With<'keptList'> = {}): RowOf<'keptList'> => ({
  id: 'Fascia, weekly',
  groups: [aGroup({ count: 3 })],
  steps: [aStep({ lines: [] })],
  revision: 0,
  ...own,
});

/** Twelve strips of 150 mm, ripped off three sheets. */
export const aStep = (own: Partial<CutStep> = {}): CutStep => ({
  number: 1,
  group: 'A',
  stack: 'A',
  fed: 3,
  axis: 'width',
  sizeMm: 150,
  backGaugeMm: 150,
  cutsEach: 4,
  stroke: 'single',
  to: { kind: 'blank', girthMm: 150, lengthMm: 3048 },
  rest: { kind: 'remnant' },
  lines: [{ line: '1042/1', pieces: 12 }],
  blanks: 12,
  blanksSoFar: 12,
  ...own,
});

/** Sheets of the moss stock, not yet drawn. */
export const aGroup = (own: Partial<CutList['groups'][number]> = {}): CutList['groups'][number] => ({
  id: 'A',
  stockId: 'galv-24-moss',
  remnantStock: false,
  count: 1,
  widthMm: 1219.2,
  lengthMm: 3048,
  costCents: 6200,
  blanks: [],
  offcuts: [],
  ...own,
});
