import type { RushWay } from '../planning/answers.ts';
import type { Settings } from '../shop/settings.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { formatDuration, shortDuration } from '../units/duration.ts';
import { delayedSentence, lateOf, lateSentence, savedSentence } from './late-words.ts';
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
  /** Who becomes late or later, and who is saved by it. */
  readonly others: string;
  /** How many end later without being late; empty when none do. */
  readonly delayed: string;
  readonly changeovers: string;
  readonly cost: string;
}

/** @param settings the shop's: its time zone, and the weights that make the cost */
export function wayWords(way: RushWay, { timeZone, weights }: Settings): WayWords {
  const late = lateOf(way.later);
  const saved = way.earlier.filter(({ lateBefore, lateAfter }) => lateBefore > 0 && lateAfter === 0);
  return {
    ...rushWays[way.way],
    ready: `Ready ${formatDayAndClock(way.ready, timeZone)}`,
    onTime: way.late === 0,
    timely: way.late === 0 ? 'on time' : `${shortDuration(way.late)} late`,
    others: [lateSentence(late, 3), savedSentence(saved.map(({ job }) => job))].filter(Boolean).join(' '),
    delayed: delayedSentence(way.later),
    changeovers: changeoverWords(way.changeoversAdded, way.changeoverSecondsAdded),
    cost: costWords(way.objectiveAdded, weights.lateness),
  };
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
