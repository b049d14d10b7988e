import { formatDayAndClock } from '../time/wall.ts';
import type { Why } from '../planning/answers.ts';
import type { CauseKind } from '../schedule/explain/causes.ts';
import { comesAs, stepTitle } from '../part/stage.ts';
import { lineOfOperation, stageOfOperation } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { formatDuration } from '../units/duration.ts';
import { changeWords, type ChangeWords } from './change-words.ts';
import { someOf } from './late-words.ts';
import { waitsForWords } from './metal-words.ts';

/** One cause of a line's end in words: all stretches of one kind at one step, put together. Durations in seconds. */
export interface CauseWords {
  readonly kind: CauseKind;
  /** A sentence without its full stop. */
  readonly words: string;
  readonly seconds: number;
  /** The part of it after the line's due date; 0 when that had passed before the first of them. */
  readonly lateSeconds: number;
  /** Of the whole time to the line's end, 0 to 1. */
  readonly share: number;
  /** The operation that stands still or is worked on, and those it waits for. */
  readonly operations: readonly string[];
}

/** Why a line ends when it does, for people. */
interface WhyWords {
  /** "Why late?" or "Why not sooner?", for a heading. */
  readonly question: string;
  /** When it ends, and how that stands to its due date. */
  readonly title: string;
  /** What the causes add up to, and how late the line was before them. */
  readonly sum: string;
  /**
   * In order. Their seconds add up to the time until the end; their late seconds to the lateness, unless the due date
   * had passed before the first of them.
   */
  readonly causes: readonly CauseWords[];
  /** Single changes that help, the best first. */
  readonly changes: readonly ChangeWords[];
  /** Said of the changes, or in place of them; '' for a line that is on time. */
  readonly help: string;
}

export const whyQuestion = (late: boolean): string => (late ? 'Why late?' : 'Why not sooner?');

/** An answer of the engine in the words of the shop; board and command line show the same. */
export function whyWords(shop: Shop, why: Why): WhyWords {
  const { timeZone } = shop.settings;
  const begin = why.causes[0]?.from ?? why.end;
  const overdue = why.due === null ? 0 : begin - why.due;
  const causes = causeWords(shop, why, overdue > 0);
  const changes = why.changes.map((change) => changeWords(shop, why.job, change));
  return {
    question: whyQuestion(why.late > 0),
    title: `${why.job} ends ${formatDayAndClock(why.end, timeZone)}${besideDue(why, timeZone)}.`,
    sum: `${overdue > 0 ? `It was ${formatDuration(overdue)} late before. ` : ''}From ${formatDayAndClock(begin, timeZone)} to its end: ${formatDuration(why.end - begin)}.`,
    causes,
    changes,
    help: helpWords(why),
  };
}

function besideDue({ end, due, late }: Why, timeZone: string): string {
  if (due === null) return '';
  const date = `due ${formatDayAndClock(due, timeZone)}`;
  if (late > 0) return `, ${formatDuration(late)} late: it is ${date}`;
  return due === end ? `, just when it is due` : `, ${formatDuration(due - end)} before it is ${date}`;
}

function helpWords({ late, changes }: Why): string {
  if (late === 0) return '';
  const [best] = changes;
  if (!best) return 'No single change ends it earlier.';
  if (best.late > 0)
    return 'No single change makes it on time. These end it earlier, the most helpful first:';
  return changes.length === 1
    ? 'One single change would do:'
    : 'Single changes that would help, the cheapest that makes it on time first:';
}

/** Stretches of one kind at one step are told once: a wait goes on after every night. */
function causeWords(shop: Shop, { causes, awaited, due, end }: Why, overdue: boolean): CauseWords[] {
  const whole = end - (causes[0]?.from ?? end);
  const groups = new Map<string, Why['causes']>();
  for (const cause of causes) {
    const key = `${cause.operation} ${cause.kind}`;
    groups.set(key, [...(groups.get(key) ?? []), cause]);
  }
  return [...groups.values()].map((group) => {
    const { kind, operation } = group[0]!;
    const blockedBy = [...new Set(group.flatMap((cause) => cause.blockedBy))];
    const seconds = group.reduce((sum, cause) => sum + cause.seconds, 0);
    const after = (cause: Why['causes'][number]) =>
      Math.max(0, cause.to - Math.max(cause.from, overdue ? Infinity : (due ?? Infinity)));
    return {
      kind,
      words: wordsOf(shop, group, blockedBy, awaited),
      seconds,
      lateSeconds: group.reduce((sum, cause) => sum + after(cause), 0),
      share: seconds / whole,
      operations: [...(operation === null ? [] : [operation]), ...blockedBy],
    };
  });
}

function wordsOf(
  shop: Shop,
  group: Why['causes'],
  blockedBy: readonly string[],
  awaited: Why['awaited'],
): string {
  const { kind, operation, machine } = group[0]!;
  const on = shop.machine.find(({ id }) => id === machine)?.name ?? machine ?? 'The machine';
  const ahead = namesOf(blockedBy);
  switch (kind) {
    case 'release':
      if (awaited.length > 0) return waitsForWords(shop, awaited);
      return `Its work order says not before ${formatDayAndClock(group.at(-1)!.to, shop.settings.timeZone)}`;
    case 'work':
      return `${stepTitle[stageOfOperation(operation!)]} on ${on}`;
    case 'changeover':
      return `Changeover of ${on} for it`;
    case 'closed':
      return `${on} is closed`;
    case 'waiting-for-machine':
      return ahead === '' ? `${on} is not free yet` : `${on} does ${ahead} first`;
    case 'pinned-or-frozen':
      return `${on} does ${ahead} first, and what is started, pinned or in the frozen window keeps its position`;
    case 'queue-choice':
      return `${on} waits idle for the ${comesAs(stageOfOperation(operation!))} of ${ahead}, which is before it in the queue`;
    case 'idle-for-release':
      return `${on} waits idle for ${ahead}, which is before it in the queue and may not start yet (“Not before” on its work order, or metal that has not come)`;
    case 'waiting-for-step-before':
      return `${on} waits for the rest of its blanks from the shear`;
    case 'held-elsewhere':
      return `${on} waits for ${heldWords(shop, group)}`;
    case 'crew':
      return `Too few people are free to run ${on}`;
  }
}

/** "Hemming tools, at Brake 2 until Tue 1 Dec 10:40" */
function heldWords(shop: Shop, group: Why['causes']): string {
  const until = new Map<string, number>();
  for (const { thing, machine, until: end } of group.flatMap((cause) => cause.held)) {
    const name = shop.tool.find(({ id }) => id === thing)?.name ?? thing;
    const home = shop.machine.find(({ id }) => id === machine)?.name ?? machine;
    until.set(`${name}, at ${home}`, end);
  }
  const { timeZone } = shop.settings;
  return [...until].map(([what, end]) => `${what} until ${formatDayAndClock(end, timeZone)}`).join(', and ');
}

/** "1042/1, 1042/2 and 5 more lines" */
function namesOf(operations: readonly string[]): string {
  const lines = [...new Set(operations.map(lineOfOperation))];
  return someOf(lines, lines.length === NAMED ? NAMED : NAMED - 1, 'lines');
}
const NAMED = 3;

/** The same as lines for a terminal, without colours or pictures. */
export function whyText({ question, title, sum, causes, changes, help }: WhyWords): string[] {
  const late = (seconds: number) => (seconds > 0 ? ` (${formatDuration(seconds)} of it late)` : '');
  return [
    `${question} ${title}`,
    sum,
    ...causes.map(
      (cause) => `  ${formatDuration(cause.seconds).padStart(12)}  ${cause.words}${late(cause.lateSeconds)}`,
    ),
    ...(help === '' ? [] : [help]),
    ...changes.flatMap(({ title: change, effect, cost, caution }) => [
      `  - ${change} ${effect}`,
      `    ${cost}`,
      ...(caution ? [`    ${caution}`] : []),
    ]),
  ];
}
