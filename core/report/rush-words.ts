import type { FrozenInTheWay, RushWay } from '../planning/answers.ts';
import type { Settings } from '../shop/settings.ts';
import type { Shop } from '../shop/state.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { formatDuration, HOUR, shortDuration } from '../units/duration.ts';
import { delayedSentence, lateOf, laterWords, lateSentence, savedSentence, someOf } from './late-words.ts';
import { counted } from '../units/count.ts';
import { grouped } from '../grouped.ts';

/** The three ways to take a rush in, as the dialog and the command line name them. */
export const rushWays: Readonly<Record<RushWay['way'], { readonly title: string; readonly how: string }>> = {
  front: {
    title: 'Front of the queue',
    how: 'Before everything that has not started and is not held in position.',
  },
  run: {
    title: 'Into the matching run',
    how: 'Beside work of the same gauge and colour that still meets its date.',
  },
  replan: {
    title: 'Plan again around it',
    how: 'Everything outside the frozen window may move.',
  },
};

/** What a way means, in words: every field a sentence or the end of one. */
export interface WayWords {
  readonly title: string;
  readonly how: string;
  readonly ready: string;
  readonly onTime: boolean;
  /** "on time" or "3 h late". */
  readonly timely: string;
  /** Which other rush orders become late or later; empty when none do. */
  readonly rushOthers: string;
  /** Who else becomes late or later, and who is saved by it. */
  readonly others: string;
  /** All who become late or later, rush orders first, the worst first: "1043/1 late by 2 h", and whose it is. */
  readonly allLate: readonly { readonly lineId: string; readonly words: string; readonly customer: string }[];
  /** How many end later without being late; empty when none do. */
  readonly delayed: string;
  readonly changeovers: string;
  readonly cost: string;
}

/** @param shop whose orders say which are a rush and for whom, its settings the clock and what the cost is measured by */
export function wayWords(way: RushWay, shop: Pick<Shop, 'settings' | 'order' | 'line'>): WayWords {
  const { timeZone, weights } = shop.settings;
  const orders = new Map(shop.order.map((order) => [order.id, order]));
  const orderIds = new Map(shop.line.map((line) => [line.id, line.orderId]));
  const orderOf = (lineId: string) => orders.get(orderIds.get(lineId) ?? '');
  const late = lateOf(way.later);
  const rush = late.filter(({ lineId }) => orderOf(lineId)?.rush);
  const usual = late.filter((row) => !rush.includes(row));
  const saved = way.earlier.filter(({ lateBefore, lateAfter }) => lateBefore > 0 && lateAfter === 0);
  const onlyRush = rush.length > 0 && usual.length === 0;
  return {
    ...rushWays[way.way],
    ready: `Ready ${formatDayAndClock(way.ready, timeZone)}`,
    onTime: way.late === 0,
    timely: way.late === 0 ? 'on time' : `${shortDuration(way.late)} late`,
    rushOthers:
      rush.length === 0
        ? ''
        : `Makes ${rush.length === 1 ? 'another rush' : `${rush.length} other rush lines`} late: ${someOf(rush.map(laterWords), 3)}.`,
    others: [
      onlyRush ? 'No other line becomes late.' : lateSentence(usual, 3),
      savedSentence(saved.map(({ job }) => job)),
    ]
      .filter(Boolean)
      .join(' '),
    allLate: [...rush, ...usual].map((row) => ({
      lineId: row.lineId,
      words: laterWords(row),
      customer: orderOf(row.lineId)?.customer ?? '',
    })),
    delayed: delayedSentence(way.later),
    changeovers: changeoverWords(way.changeoversAdded, way.changeoverSecondsAdded),
    cost: costWords(way.objectiveAdded, weights.lateness),
  };
}

/** What the frozen window holds in front of the rush, and what it would gain without it. */
export function frozenSentence(
  { hours, operations, ready, late }: FrozenInTheWay,
  settings: Settings,
): string {
  const held = counted(operations, 'operation');
  const timely = late === 0 ? 'on time' : `${shortDuration(late)} late`;
  return `The frozen window of ${formatDuration(hours * HOUR)} holds ${held} in front of it. Without it: ready ${formatDayAndClock(ready, settings.timeZone)}, ${timely}.`;
}

/** Why the advised way is not the cheapest one, as a sentence; empty when it is. */
export function adviceSentence(advised: RushWay, cheapest: RushWay): string {
  if (advised.way === cheapest.way || advised.late >= cheapest.late) return '';
  const title = rushWays[cheapest.way].title.toLowerCase();
  const gain = `${shortDuration(cheapest.late - advised.late)} sooner`;
  const why = advised.late === 0 ? 'it keeps the rush’s date' : `it comes ${gain} to the rush’s date`;
  return `Advised since ${why}; “${title}” costs less.`;
}

function changeoverWords(count: number, seconds: number): string {
  if (count === 0 && seconds === 0) return 'No changeover added.';
  if (count === 0)
    return `As many changeovers, ${formatDuration(Math.abs(seconds))} ${seconds < 0 ? 'less' : 'more'}.`;
  const signed = seconds === 0 ? 'no time' : `${seconds < 0 ? '−' : '+'}${formatDuration(Math.abs(seconds))}`;
  return `${counted(Math.abs(count), 'changeover')} ${count < 0 ? 'saved' : 'added'}, ${signed}.`;
}

/**
 * The objective in something a planner can weigh: how long one line of usual importance would have to be late to cost as
 * much. Where lateness weighs nothing it stays a bare figure.
 */
export function costWords(added: number, lateness: number): string {
  if (lateness === 0) return `Cost by your priorities: ${grouped(Math.round(added))}.`;
  const seconds = Math.round(Math.abs(added) / lateness);
  if (seconds < 60) return 'Costs next to nothing by your priorities.';
  return `${added < 0 ? 'Saves' : 'Costs'} as much as one usual line ${shortDuration(seconds)} late.`;
}

/** "Rush 1042/1" or "Rush of 3 lines". */
export const rushName = (lineIds: readonly string[]): string =>
  lineIds.length === 1 ? `Rush ${lineIds[0]}` : `Rush of ${lineIds.length} lines`;

/** How the history names a rush that was taken in. */
export const rushLabel = (lineIds: readonly string[], way: RushWay['way']): string =>
  `${rushName(lineIds)}: ${rushWays[way].title.toLowerCase()}`;
