import type { PlanChange } from '../planning/answers.ts';
import type { Command } from '../edit/command.ts';
import { seenQueues } from '../edit/stale.ts';
import { openedWith, overtimeCommand } from '../edit/overtime.ts';
import { isElsewhere, stepWord } from '../part/stage.ts';
import { lineOfOperation, stageOfOperation } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { formatClock, formatDayAndClock } from '../time/wall.ts';
import { instant } from '../units/brand.ts';
import { formatDuration } from '../units/duration.ts';
import { OVERTIME_CAUTION } from './cautions.ts';
import { delayedSentence, lateOf, lateSentence } from './late-words.ts';
import { costWords } from './rush-words.ts';

/** One change that helps a line, in whole sentences. */
export interface ChangeWords {
  /** What to do. */
  readonly title: string;
  /** What it does for the line. */
  readonly effect: string;
  /** What it costs: others, hours, the plan as a whole. */
  readonly cost: string;
  /** What to mind first; null: nothing beyond the machines' own cautions. */
  readonly caution: string | null;
  /** Carries it out as one step of the history; null when it cannot be any more. */
  readonly command: Command | null;
}

export function changeWords(shop: Shop, lineId: string, change: PlanChange): ChangeWords {
  return {
    title: titleOf(shop, lineId, change),
    effect: effectOf(shop, change),
    cost: costOf(shop, change),
    caution: change.overtime ? OVERTIME_CAUTION : null,
    command: change.overtime
      ? overtimeCommand(shop, change.overtime, `For ${lineId}`)
      : {
          ...{ do: 'plan.replace', queues: change.queues, label: labelOf(lineId, change) },
          seen: seenQueues(shop),
        },
  };
}

const nameOf = (shop: Shop, machineId: string): string =>
  shop.machine.find(({ id }) => id === machineId)?.name ?? machineId;

const stepOf = (operation: string): string => stepWord[stageOfOperation(operation)];

function titleOf(shop: Shop, lineId: string, { kind, moves, overtime }: PlanChange): string {
  if (overtime) return overtimeTitle(shop, overtime);
  const to = ({ machine, position }: PlanChange['moves'][number]) =>
    `position ${position + 1} on ${nameOf(shop, machine)}`;
  const [first, other] = moves;
  if (kind === 'swap' && first && other)
    return `Swap its ${stepOf(first.operation)} with that of ${lineOfOperation(other.operation)}, to ${to(first)}.`;
  // Outside work has no position; where it is done may change.
  const own = moves.filter(
    ({ operation }) =>
      lineOfOperation(operation) === lineId &&
      (kind === 'other-machine' || !isElsewhere(stageOfOperation(operation))),
  );
  return `Move its ${own.map((move) => `${stepOf(move.operation)} to ${to(move)}`).join(' and its ')}.`;
}

function overtimeTitle(shop: Shop, { machine, from, seconds }: NonNullable<PlanChange['overtime']>): string {
  const { timeZone } = shop.settings;
  const until = formatClock(instant(from + seconds), timeZone);
  return `Keep ${nameOf(shop, machine)} open ${formatDuration(seconds)} longer, ${formatDayAndClock(from, timeZone)} to ${until}.`;
}

const effectOf = ({ settings: { timeZone } }: Shop, { end, late }: PlanChange): string =>
  `It then ends ${formatDayAndClock(end, timeZone)}, ${late === 0 ? 'on time' : `still ${formatDuration(late)} late`}.`;

const costOf = (shop: Shop, { later, overtime, objectiveAdded }: PlanChange): string =>
  [
    overtime ? overtimeCost(shop, overtime) : '',
    lateSentence(lateOf(later)),
    delayedSentence(later),
    costWords(objectiveAdded, shop.settings.weights.lateness),
  ]
    .filter(Boolean)
    .join(' ');

function overtimeCost(shop: Shop, { machine, seconds }: NonNullable<PlanChange['overtime']>): string {
  const others = openedWith(shop, machine).filter((id) => id !== machine);
  const cost = `Costs ${formatDuration(seconds)} of overtime.`;
  if (others.length === 0) return cost;
  const names = others.map((id) => nameOf(shop, id)).join(' and ');
  return `${cost} ${names} ${others.length === 1 ? 'keeps' : 'keep'} the same calendar and ${others.length === 1 ? 'is' : 'are'} open then too.`;
}

/** As the history lists it. */
function labelOf(lineId: string, { kind, moves }: PlanChange): string {
  const [first, other] = moves;
  if (kind === 'swap' && other) return `Swap ${lineId} with ${lineOfOperation(other.operation)}`;
  return kind === 'other-machine' && first ? `Move ${lineId} to ${first.machine}` : `Move ${lineId} earlier`;
}
