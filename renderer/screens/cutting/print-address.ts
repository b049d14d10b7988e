import { placeOf } from '../../router.ts';

/** Where a run's steps stand on paper, "#/print/cutting?run=1042%2F1". */
export const cutPrintAddress = (runId: string): string =>
  `${placeOf('print', 'cutting')}?${new URLSearchParams({ run: runId }).toString()}`;
