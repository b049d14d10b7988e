import { create } from 'zustand';
import { addDays, startOfDay } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { counted } from '../../../core/units/count.ts';
import type { Bar, Lane } from '../../gantt/lanes.ts';
import { endOfWeek } from '../orders/line-filter.ts';

/** By when a line is due. */
export const dueChoices = ['any', 'today', 'tomorrow', 'week'] as const;
export type DueChoice = (typeof dueChoices)[number];

/** What narrows the board: the lines that fit all of it stay, the others fade. */
export interface BoardFilter {
  /** Words found in line, customer, part, gauge or colour. */
  readonly text: string;
  readonly due: DueChoice;
  readonly late: boolean;
  /** By name; null: all. */
  readonly colour: string | null;
  readonly gauge: string | null;
}

export const unfiltered: BoardFilter = { text: '', due: 'any', late: false, colour: null, gauge: null };

interface FilterView {
  readonly filter: BoardFilter;
  readonly narrow: (patch: Partial<BoardFilter>) => void;
}

/** Kept while other screens are open. */
export const useBoardFilter = create<FilterView>((set) => ({
  filter: unfiltered,
  narrow: (patch) => set((view) => ({ filter: { ...view.filter, ...patch } })),
}));

/** The first instant that is too late; null: none. */
function dueBefore(due: DueChoice, now: Instant, timeZone: string): number | null {
  const days = (count: number) => addDays(startOfDay(now, timeZone), count, timeZone);
  switch (due) {
    case 'any':
      return null;
    case 'today':
      return days(1);
    case 'tomorrow':
      return days(2);
    case 'week':
      return endOfWeek(now, timeZone);
  }
}

const textOf = (bar: Bar): string =>
  `${bar.lineId} ${bar.customer} ${bar.partName} ${bar.gauge} ga ${bar.colourName}`.toLowerCase();

/**
 * The bars that fit every word of the text and all else that is asked, in the order of their starts; null where nothing
 * is asked.
 */
export function barsThatFit(
  lanes: readonly Lane[],
  filter: BoardFilter,
  now: Instant,
  timeZone: string,
): readonly Bar[] | null {
  const words = filter.text.toLowerCase().split(/\s+/).filter(Boolean);
  const { due, late, colour, gauge } = filter;
  if (words.length === 0 && due === 'any' && !late && colour === null && gauge === null) return null;
  const before = dueBefore(due, now, timeZone);
  return lanes
    .flatMap((lane) => lane.bars)
    .filter(
      (bar) =>
        (!late || bar.tardiness > 0) &&
        (before === null || bar.due < before) &&
        (colour === null || bar.colourName === colour) &&
        (gauge === null || bar.gauge === gauge) &&
        words.every((word) => textOf(bar).includes(word)),
    )
    .sort((a, b) => a.start - b.start || (a.operation < b.operation ? -1 : 1));
}

const linesOf = (bars: readonly Bar[]): number => new Set(bars.map((bar) => bar.lineId)).size;

/** "7 of 83 lines" */
export const fitWords = (lanes: readonly Lane[], fit: readonly Bar[]): string =>
  `${linesOf(fit)} of ${counted(linesOf(lanes.flatMap((lane) => lane.bars)), 'line')}`;

/** The one to go to from the selected: the next that fits, the first again after the last. */
export function nextThatFits(fit: readonly Bar[], selected: string | null): string | null {
  const at = fit.findIndex((bar) => bar.operation === selected);
  return (fit[at + 1] ?? fit[0])?.operation ?? null;
}
