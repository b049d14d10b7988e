import { lotWords } from '../material/lot.ts';
import type { Sheet } from '../material/material.ts';
import type { Shop } from '../shop/state.ts';
import type { Delivery } from '../shop/stock.ts';
import { startOfDay } from '../time/wall.ts';
import { instant, type Instant } from '../units/brand.ts';
import type { RunCut } from './cut-run.ts';

/** What a run has reserved of a stock, from the moment it begins. */
interface Reservation {
  readonly runId: string;
  readonly at: Instant;
  readonly pieces: number;
  readonly short: number;
  /** Of a run whose sheets are all bought of one lot: how many, and what is asked of it, in words; else ''. */
  readonly oneLot: string;
}

export interface StockRow {
  readonly sheet: Sheet;
  /** What is expected of it, the soonest first. */
  readonly expected: readonly Delivery[];
  /** In plan order. */
  readonly reserved: readonly Reservation[];
  /** On hand and expected, less all that is reserved; below 0 as many are missing. */
  readonly left: number;
  /** Pieces that are missing. */
  readonly short: number;
  /** When it first runs short; null when it reaches. */
  readonly shortFrom: Instant | null;
}

/** "13 of one lot, PVDF" */
function oneLotWords({ lot }: RunCut['run'], pieces: number): string {
  if (lot?.from !== 'purchase') return '';
  return [`${pieces} of one lot`, lotWords(lot.lot)].filter(Boolean).join(', ');
}

/** What is left of a stock. What a run buys since no lot here suffices leaves what lies here where it is. */
const less = (left: number, { pieces, short }: Pick<Reservation, 'pieces' | 'short'>): number =>
  left - (pieces - short) > 0 ? left - (pieces - short) : left - pieces;

/** All stock with what the plan reserves of it, day by day. Sheets in the shop's order. */
export function stockRows(shop: Shop, cuts: readonly RunCut[]): StockRow[] {
  return shop.sheet.map((sheet) => {
    const expected = shop.delivery
      .filter(({ sheetId }) => sheetId === sheet.id)
      .sort((a, b) => a.due - b.due);
    const there = expected.reduce((sum, { pieces }) => sum + pieces, sheet.onHand);
    const reserved = cuts.flatMap(({ run, takings }) =>
      takings
        .filter((taking) => taking.sheetId === sheet.id)
        .map(({ pieces, short }) => ({
          runId: run.id,
          at: run.start,
          pieces,
          short,
          oneLot: oneLotWords(run, pieces),
        })),
    );
    return {
      sheet,
      expected,
      reserved,
      left: reserved.reduce(less, there),
      short: reserved.reduce((sum, { short }) => sum + short, 0),
      shortFrom: reserved.find(({ short }) => short > 0)?.at ?? null,
    };
  });
}

/** What comes of a stock and what the plan takes of it on one day. */
interface DayTaken {
  /** Midnight at the shop. */
  readonly day: Instant;
  readonly came: number;
  readonly pieces: number;
  /** On hand at the end of the day; below 0 as many are missing. */
  readonly left: number;
  readonly runs: readonly string[];
}

/** A stock's deliveries and reservations day by day, first day first; a run counts on the day it begins. */
export function takenByDay({ sheet, expected, reserved }: StockRow, timeZone: string): DayTaken[] {
  const days: DayTaken[] = [];
  let left = sheet.onHand;
  const note = (at: number, came: number, one: Reservation | null): void => {
    left = one ? less(left, one) : left + came;
    const day = startOfDay(instant(at), timeZone);
    const last = days.at(-1)?.day === day ? days.pop() : undefined;
    days.push({
      day,
      came: (last?.came ?? 0) + came,
      pieces: (last?.pieces ?? 0) + (one?.pieces ?? 0),
      left,
      runs: [...(last?.runs ?? []), ...(one ? [one.runId] : [])],
    });
  };
  const coming = [...expected];
  const come = (until: number): void => {
    while (coming[0] && coming[0].due <= until) {
      const { due, pieces } = coming.shift()!;
      note(due, pieces, null);
    }
  };
  for (const one of reserved.toSorted((a, b) => a.at - b.at)) {
    come(one.at);
    note(one.at, 0, one);
  }
  come(Infinity);
  return days;
}

/** What to buy: how many pieces, what they cost, and when the first of them is needed. */
export interface Purchase {
  readonly sheet: Sheet;
  readonly pieces: number;
  readonly costCents: number;
  readonly neededBy: Instant;
  /** Runs that wait for it; behind those whose sheets must be of one lot it is said: "1042/1 (13 of one lot)". */
  readonly runs: readonly string[];
}

/** The purchase list, what is needed first on top. */
export function purchasesOf(rows: readonly StockRow[]): Purchase[] {
  return rows
    .flatMap(({ sheet, reserved, shortFrom }): Purchase[] => {
      const short = reserved.filter((one) => one.short > 0);
      if (shortFrom === null) return [];
      const pieces = short.reduce((sum, one) => sum + one.short, 0);
      const runs = short.map(({ runId, oneLot }) => (oneLot === '' ? runId : `${runId} (${oneLot})`));
      return [{ sheet, pieces, costCents: pieces * sheet.costCents, neededBy: shortFrom, runs }];
    })
    .sort((a, b) => a.neededBy - b.neededBy || (a.sheet.id < b.sheet.id ? -1 : 1));
}
