import { placeOf } from '../../router.ts';

/**
 * Where a run's steps stand on paper, "#/print/cutting?run=1042%2F1".
 * @param drawings with its sheets drawn; left out: where they are few
 */
export const cutPrintAddress = (runId: string, drawings?: boolean): string =>
  `${placeOf('print', 'cutting')}?${new URLSearchParams({
    run: runId,
    ...(drawings === undefined ? {} : { drawings: drawings ? 'yes' : 'no' }),
  }).toString()}`;

/** So many kinds of sheets are drawn with the steps unless it is said otherwise: more would be pages of drawings. */
const DRAWN = 8;

/** Whether an address asks for drawings of so many kinds of sheets. */
export const asksForDrawings = (query: URLSearchParams, kinds: number): boolean =>
  query.has('drawings') ? query.get('drawings') === 'yes' : kinds <= DRAWN;
