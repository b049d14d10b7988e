import type { Block } from '../../../core/edit/blocks.ts';
import { namesOf } from '../../../core/edit/plan-commands.ts';
import { lateSentence, savedSentence, someOf } from '../../../core/report/late-words.ts';
import {
  becameLater,
  latenessOf,
  type BecameLate,
  type LineLateness,
} from '../../../core/planning/lateness.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDuration } from '../../../core/units/duration.ts';

/** What a change of the queues brings: lines that become late or later, lines saved, changeover gained or lost. */
interface Consequence {
  /** Worst first. */
  readonly later: readonly BecameLate[];
  /** Lines that were late and are no more. */
  readonly saved: readonly string[];
  /** Seconds late of all lines together, added; below zero saved. */
  readonly lateness: number;
  /** Seconds of changeover added; below zero saved. */
  readonly changeover: number;
}

const secondsLate = (rows: readonly LineLateness[]): number =>
  rows.reduce((sum, { lateness }) => sum + Math.max(0, lateness), 0);

export function consequenceOf(shop: Shop, before: PlanView, after: PlanView): Consequence {
  const [old, next] = [latenessOf(shop, before.schedule), latenessOf(shop, after.schedule)];
  const late = new Set(next.filter((row) => row.lateness > 0).map((row) => row.lineId));
  return {
    later: becameLater(old, next),
    saved: old.filter((row) => row.lateness > 0 && !late.has(row.lineId)).map((row) => row.lineId),
    lateness: secondsLate(next) - secondsLate(old),
    changeover: after.figures.changeoverSeconds - before.figures.changeoverSeconds,
  };
}

/** The consequence in a sentence or two, the worst lines by name. */
export const consequenceWords = ({ later, saved, lateness, changeover }: Consequence): string =>
  [
    lateSentence(later),
    savedSentence(saved),
    // Of one line its own words say it.
    later.length + saved.length > 1 && lateness !== 0 && `Lateness ${signed(lateness)} in all.`,
    changeover !== 0 && `Changeover ${signed(changeover)}.`,
  ]
    .filter(Boolean)
    .join(' ');

const signed = (seconds: number): string => `${seconds > 0 ? '+' : ''}${formatDuration(seconds)}`;

/** "1042/2 bending to position 3 on Brake 1.", "5 operations on Shear and Brake 1." */
export function moveWords(blocks: readonly Block[], nameOf: (machineId: string) => string): string {
  const what = namesOf(blocks.flatMap(({ operations }) => operations));
  const [first, ...others] = blocks;
  if (first && others.length === 0)
    return `${what} to position ${first.position + 1} on ${nameOf(first.machineId)}.`;
  return `${what} on ${someOf([...new Set(blocks.map((block) => nameOf(block.machineId)))], 3)}.`;
}
