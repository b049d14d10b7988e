import { operationName } from '../../../core/edit/plan-commands.ts';
import { becameLater, latenessOf, type BecameLate } from '../../../core/report/lateness.ts';
import type { PlanView } from '../../../core/report/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatDuration, shortDuration } from '../../../core/units/duration.ts';
import type { Drop } from '../../gantt/drop.ts';

/** What a change of the queues brings: lines that become late or later, lines saved, changeover gained or lost. */
export interface Consequence {
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

const NAMED = 2;

const laterWords = ({ lineId, before, after }: BecameLate): string =>
  before > 0
    ? `${lineId} later by ${shortDuration(after - before)}`
    : `${lineId} late by ${shortDuration(after)}`;

/** The consequence in a sentence or two, the worst lines by name. */
export function consequenceWords({ later, saved, changeover }: Consequence): string {
  const named = later.slice(0, NAMED).map(laterWords);
  const more = later.length - named.length;
  if (more > 0) named.push(`${more} more ${more === 1 ? 'line' : 'lines'} later`);
  const list = named.length > 1 ? `${named.slice(0, -1).join(', ')} and ${named.at(-1)}` : named[0];
  return [
    list ? `Makes ${list}.` : 'Nothing becomes late.',
    saved.length > 0 &&
      `${saved.slice(0, NAMED).join(', ')}${saved.length > NAMED ? ` and ${saved.length - NAMED} more` : ''} in time again.`,
    changeover !== 0 && `Changeover ${changeover > 0 ? '+' : ''}${formatDuration(changeover)}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** "1042/2 bending to place 3 on Brake 1." */
export const moveWords = (operation: string, drop: Drop, machineName: string): string =>
  `${operationName(operation)} to place ${drop.rank + 1} on ${machineName}.`;
