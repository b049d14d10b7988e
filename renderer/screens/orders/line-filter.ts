import { addDays, startOfDay, wallParts } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import type { LineRow } from './line-rows.ts';

/** What can be switched on above the table; a line must fit all that is on. */
export const facets = ['late', 'rush', 'unplannable', 'notQueued', 'thisWeek', 'closed'] as const;
export type Facet = (typeof facets)[number];

export interface LineFilter {
  readonly text: string;
  readonly on: readonly Facet[];
  /** A colour's or gauge's id; null: all. */
  readonly colourId: string | null;
  readonly gauge: string | null;
}

export const everything: LineFilter = { text: '', on: [], colourId: null, gauge: null };

/** The first instant after this week, Monday to Sunday, on the shop's wall. */
export function endOfWeek(now: Instant, timeZone: string): Instant {
  const { weekday } = wallParts(now, timeZone);
  return startOfDay(addDays(now, 8 - weekday, timeZone), timeZone);
}

const fits = (row: LineRow, facet: Facet, weekEnd: Instant): boolean => {
  switch (facet) {
    case 'late':
      return (row.lateness ?? 0) > 0;
    case 'rush':
      return row.order.rush;
    case 'unplannable':
      return row.trouble !== null;
    case 'notQueued':
      return row.notQueued;
    case 'thisWeek':
      return row.terms.due < weekEnd;
    case 'closed':
      return true;
  }
};

/** Done and cancelled lines are in sight only when they are asked for. */
const isClosed = ({ current }: LineRow): boolean => current === 'done' || current === 'cancelled';

/** The lines that fit: every word of the text, every facet that is on, the chosen colour and gauge. */
export function filterLines(rows: readonly LineRow[], filter: LineFilter, weekEnd: Instant): LineRow[] {
  const words = filter.text.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter(
    (row) =>
      (filter.on.includes('closed') || !isClosed(row)) &&
      filter.on.every((facet) => fits(row, facet, weekEnd)) &&
      (filter.colourId === null || row.line.colourId === filter.colourId) &&
      (filter.gauge === null || row.line.gauge === filter.gauge) &&
      words.every((word) => row.text.includes(word)),
  );
}

/** How many lines each facet would show by itself. */
export function countFacets(rows: readonly LineRow[], weekEnd: Instant): Record<Facet, number> {
  const open = rows.filter((row) => !isClosed(row));
  const count = (facet: Facet) => open.filter((row) => fits(row, facet, weekEnd)).length;
  return {
    late: count('late'),
    rush: count('rush'),
    unplannable: count('unplannable'),
    notQueued: count('notQueued'),
    thisWeek: count('thisWeek'),
    closed: rows.length - open.length,
  };
}
