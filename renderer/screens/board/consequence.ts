import { operationName } from '../../../core/edit/plan-commands.ts';
import { lateSentence, savedSentence } from '../../../core/report/late-words.ts';
import { becameLater, latenessOf, type BecameLate } from '../../../core/planning/lateness.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import type { Drop } from '../../gantt/drop.ts';

/** What a change of the queues brings: lines that become late or later, lines saved, changeover gained or lost. */
interface Consequence {
  /** Worst first. */
  readonly later: readonly BecameLate[];
  /** Lines that were late and are no more. */
  readonly saved: readonly string[];
  /** Seconds of changeover added; below zero saved. */
  readonly changeover: number;
}

export function consequenceOf(shop: Shop, before: PlanView, after: PlanView): Consequence {
  const [old, next] = [latenessOf(shop, before.schedule), latenessOf(shop, after.schedule)];
  const late = new Set(next.filter((row) => row.lateness > 0).map((row) => row.lineId));
  return {
    later: becameLater(old, next),
    saved: old.filter((row) => row.lateness > 0 && !late.has(row.lineId)).map((row) => row.lineId),
    changeover: after.figures.changeoverSeconds - before.figures.changeoverSeconds,
  };
}

/** The consequence in a sentence or two, the worst lines by name. */
export const consequenceWords = ({ later, saved, changeover }: Consequence): string =>
  [
    lateSentence(later),
    savedSentence(saved),
    changeover !== 0 && `Changeover ${changeover > 0 ? '+' : ''}${formatDuration(changeover)}.`,
  ]
    .filter(Boolean)
    .join(' ');

/** "1042/2 bending to position 3 on Brake 1." */
export const moveWords = (operation: string, drop: Drop, machineName: string): string =>
  `${operationName(operation)} to position ${drop.position + 1} on ${machineName}.`;
