import type { OrderLine, WorkOrder } from '../shop/order.ts';
import type { Place } from './order-place.ts';
import type { OrderHead, SaidTerms } from './order-said.ts';

/** When and how an order or a line of its own is wanted. */
type Terms = Pick<WorkOrder, 'release' | 'importance' | 'note'> & { readonly due: number | null };
type LineTerms = Pick<OrderLine, 'due' | 'release' | 'importance' | 'note'>;

export interface SpreadTerms {
  readonly order: Terms;
  /** In the order of the places. */
  readonly lines: readonly LineTerms[];
}

const NO_TERMS: LineTerms = { due: null, release: null, importance: null, note: '' };
const KEYS = ['due', 'release', 'importance', 'note'] as const;
type Key = (typeof KEYS)[number];

/**
 * What rows say about due dates, earliest starts, importance and notes, spread over an order and its lines. What all rows of
 * an order agree about is the order's; where they differ it stands on the lines. Of a new order the first row that says so
 * sets the order's date and importance, and rows that say nothing follow it. Lines that the file lacks stay as they are: where
 * there are any, nothing of the order changes. An empty cell takes nothing away.
 * @param order as it stands in the shop; null: it is new
 * @param heads all rows of the order, also those that cannot be taken
 * @param whole the file has every line of the order
 */
export function spreadTerms(
  order: WorkOrder | null,
  places: readonly Place[],
  heads: readonly OrderHead[],
  whole: boolean,
): SpreadTerms {
  const usual: Terms = order ?? { due: null, release: null, importance: 1, note: '' };
  const befores = places.map(({ before }): LineTerms => {
    const { due, release, importance, note } = before ?? NO_TERMS;
    return { due, release, importance, note };
  });
  let own: Terms = usual;
  let lines: LineTerms[] = befores;
  for (const key of KEYS) {
    const said = places.map(({ row }) => row.terms[key]);
    const ofAll = heads.map(({ terms }) => terms[key]);
    const ofOrder = orderValue(key, ofAll, usual, order === null, whole);
    const next = lines.map((line, k) => ({
      ...line,
      [key]: lineValue(key, said[k] ?? null, ofOrder, keptOf(key, befores[k]!, usual, ofOrder)),
    }));
    const changes = next.some(
      (line, k) => effective(key, ofOrder, line) !== effective(key, usual[key], befores[k]!),
    );
    if (order !== null && places.every(({ before }) => before !== null) && !changes) continue;
    own = { ...own, [key]: ofOrder };
    lines = next;
  }
  return { order: own, lines };
}

function orderValue(
  key: Key,
  said: readonly (SaidTerms[Key] | null)[],
  usual: Terms,
  isNew: boolean,
  whole: boolean,
): Terms[Key] {
  const spoken = said.filter((one) => one !== null);
  const [first] = spoken;
  // A row without a date follows its order; a note belongs to the rows that have it.
  const agreed = spoken.every((one) => one === first) && (key !== 'note' || spoken.length === said.length);
  if (isNew) return key === 'note' ? (agreed ? (first ?? '') : '') : (first ?? usual[key]);
  if (whole && agreed && first !== undefined) return first;
  // The notes of an order and its line are both shown: one that no longer holds for all goes to the lines.
  return key === 'note' && whole && first !== undefined ? '' : usual[key];
}

/** What a line keeps whose row says nothing; the order's note, where that goes to the lines. */
const keptOf = (key: Key, before: LineTerms, usual: Terms, ofOrder: Terms[Key]): LineTerms[Key] =>
  key === 'note' && ofOrder === '' && usual.note !== '' ? before.note || usual.note : before[key];

/** What a line says itself: nothing where it is as the order says. */
function lineValue(
  key: Key,
  said: SaidTerms[Key] | null,
  ofOrder: Terms[Key],
  kept: LineTerms[Key],
): LineTerms[Key] {
  if (said === null) return kept;
  if (said !== ofOrder) return said;
  return key === 'note' ? '' : null;
}

const effective = (key: Key, ofOrder: Terms[Key], line: LineTerms): Terms[Key] =>
  line[key] === null || line[key] === '' ? ofOrder : line[key];
