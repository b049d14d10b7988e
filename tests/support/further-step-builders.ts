import type { FurtherStep } from '../../core/part/further-step.ts';
import type { RowOf } from '../../core/shop/state.ts';
import { machine, type With } from './builders.ts';

/** A packing bench, without limits or changeovers. */
export const aBench = (own: With<'machine'> = {}): RowOf<'machine'> => ({
  ...machine,
  ...{ maxLengthMm: null, maxThicknessMm: null, tonnes: null },
  ...{ dieOpeningMm: null, backGaugeMm: null, minStripMm: null },
  id: 'P1',
  name: 'Packing bench',
  stage: 'pack',
  changeover: { combine: 'sum', attributes: {}, exceptions: [] },
  ...own,
});

/** A further step by the standards of wherever it is done. */
export const aFurtherStep = (stage: FurtherStep['stage'], own: Partial<FurtherStep> = {}): FurtherStep => ({
  stage,
  placeId: null,
  secondsPerPiece: null,
  days: null,
  note: '',
  ...own,
});
