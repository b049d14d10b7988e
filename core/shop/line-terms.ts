import type { OrderLine, WorkOrder } from './order.ts';

/** What was agreed about a line, wherever it is written. */
export interface LineTerms {
  /** The promised end; epoch seconds, as `release`. */
  readonly due: number;
  /** Nothing of it may start earlier; null: at once. */
  readonly release: number | null;
  readonly importance: number;
  /** What was noted, the order's first; none of them blank. */
  readonly notes: readonly string[];
}

/**
 * What holds for a line: its own due date, earliest start and importance, where it has them, else its order's; the notes
 * of both. This is the one place that knows.
 */
export const termsOf = (
  order: Pick<WorkOrder, 'due' | 'release' | 'importance' | 'note'>,
  line: Pick<OrderLine, 'due' | 'release' | 'importance' | 'note'>,
): LineTerms => ({
  due: line.due ?? order.due,
  release: line.release ?? order.release,
  importance: line.importance ?? order.importance,
  notes: [order.note, line.note].filter((note) => note.trim() !== ''),
});
