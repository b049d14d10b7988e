import { formatDayAndClock } from '../../core/time/wall.ts';
import type { FrozenInTheWay, RushWay } from '../../core/planning/answers.ts';
import { cautionsFor } from '../../core/report/cautions.ts';
import { adviceSentence, frozenSentence, rushName, wayWords } from '../../core/report/rush-words.ts';
import { advisedWay, cheapestWay } from '../../core/schedule/rush/advise.ts';
import { withoutTimes } from '../../core/schedule/what-if/without-times.ts';
import { sentence, type Issue } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import { weighRush as weighQuickly } from '../../core/planning/weigh-rush.ts';
import type { Instant } from '../../core/units/brand.ts';
import { terminalLog } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import { SolverJob } from '../service/solver-job.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { WithOrders } from './order-file.ts';

/** What the command line says about a rush: the ways to fit it into the plan as it is. */
interface RushReport {
  readonly shop: Shop;
  readonly now: Instant;
  readonly seconds: number;
  readonly seed: number;
  readonly lineIds: readonly string[];
  readonly ways: readonly RushWay[];
  /** What the frozen window holds in front of the rush; null: nothing that matters. */
  readonly frozen: FrozenInTheWay | null;
  /** Lines of the rush that cannot be planned, each with its reason. */
  readonly notPlanned: readonly Issue[];
}

interface Search {
  readonly now: Instant;
  readonly seconds: number;
  readonly seed: number;
  readonly launch: LaunchSolver;
}

/** @throws Refused when no line of the rush can be planned, or the search dies */
export async function weighRush({ shop, lineIds }: WithOrders, search: Search): Promise<RushReport> {
  const { now, seconds, seed, launch } = search;
  const { problem, unplannable } = valueOf(toSearchProblem(shop, now));
  const planned = lineIds.filter((id) => problem.jobAt.has(id));
  const notPlanned = unplannable.filter(({ subject }) => lineIds.some((id) => subject === `line ${id}`));
  if (planned.length === 0) throw new Refused('bad-input', sentence(notPlanned));
  const weighed = valueOf(weighQuickly(shop, now, planned));
  const { ways: quick, start, frozen } = weighed;
  const from = { problem: weighed.problem.input, asPlanned: weighed.asPlanned.input, queues: start, seed };
  const task = { kind: 'rush', ...from, jobs: planned } as const;
  const { best, failure } = await new SolverJob<'rush'>({
    name: 'the search',
    sorry: 'The search stopped working.',
    tasks: [task],
    budgetMs: seconds * 1000,
    launch,
    log: terminalLog,
  }).end;
  if (failure !== null || best === null)
    throw new Refused('internal', `The search stopped working (${failure ?? 'no plan came'}). Try again.`);
  return {
    shop,
    now,
    seconds,
    seed,
    lineIds: planned,
    ways: [...quick.map(withoutTimes), best],
    frozen,
    notPlanned,
  };
}

/** The ways one under the other, in the words of the app's dialog. */
export function rushText({
  shop,
  now,
  seconds,
  seed,
  lineIds,
  ways,
  frozen,
  notPlanned,
}: RushReport): string {
  const { name, timeZone } = shop.settings;
  const [advised, cheapest] = [advisedWay(ways), cheapestWay(ways)];
  const marks = (way: RushWay) =>
    [way === advised ? '  (advised)' : '', way === cheapest ? '  (costs least)' : ''].join('');
  return [
    `${name}: ${rushName(lineIds).toLowerCase()}, fitted in at ${formatDayAndClock(now, timeZone)} (${timeZone}), searched ${seconds} s, seed ${seed}`,
    ...(frozen ? ['', frozenSentence(frozen, shop.settings)] : []),
    ...ways.flatMap((way, i) => ['', ...wayText(way, i, marks(way), shop)]),
    ...[adviceSentence(advised, cheapest)].filter(Boolean).flatMap((line) => ['', line]),
    ...(notPlanned.length === 0
      ? []
      : ['', 'Cannot be planned:', ...notPlanned.map((p) => `  ${p.subject}: ${p.message} ${p.advice}`)]),
    '',
    cautionsFor('shear').governs,
  ].join('\n');
}

function wayText(way: RushWay, i: number, marks: string, shop: Shop): string[] {
  const words = wayWords(way, shop);
  const { title, how, ready, timely, rushOthers, others, delayed, changeovers, cost } = words;
  return [
    `${i + 1}  ${title}${marks}`,
    ...[how, `${ready}, ${timely}.`, rushOthers, others, delayed, changeovers, cost]
      .filter(Boolean)
      .map((line) => `   ${line}`),
  ];
}

/** The same for programs: instants in epoch seconds, durations in seconds. */
export const rushJson = ({ shop, ...report }: RushReport): string =>
  JSON.stringify({ shop: shop.settings.name, timeZone: shop.settings.timeZone, ...report });
