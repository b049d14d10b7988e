import { formatDayAndClock } from '../../core/time/wall.ts';
import type { RushWay } from '../../core/planning/answers.ts';
import { cautionsFor } from '../../core/report/cautions.ts';
import { rushName, wayWords } from '../../core/report/rush-words.ts';
import { insertRush } from '../../core/schedule/rush.ts';
import { withoutTimes } from '../../core/schedule/what-if/without-times.ts';
import { sentence, type Issue } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
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
  const { problem, queues, unplannable } = valueOf(toSearchProblem(shop, now));
  const planned = lineIds.filter((id) => problem.jobAt.has(id));
  const notPlanned = unplannable.filter(({ subject }) => lineIds.some((id) => subject === `line ${id}`));
  if (planned.length === 0) throw new Refused('bad-input', sentence(notPlanned));
  const quick = valueOf(insertRush(problem, queues, planned));
  const start = quick.reduce((a, b) => (b.objectiveAdded < a.objectiveAdded ? b : a)).queues;
  const task = { kind: 'rush', problem: problem.input, queues: start, seed, jobs: planned } as const;
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
    notPlanned,
  };
}

/** The ways one under the other, in the words of the app's dialog. */
export function rushText({ shop, now, seconds, seed, lineIds, ways, notPlanned }: RushReport): string {
  const { name, timeZone } = shop.settings;
  const least = Math.min(...ways.map((way) => way.objectiveAdded));
  return [
    `${name}: ${rushName(lineIds).toLowerCase()}, fitted in at ${formatDayAndClock(now, timeZone)} (${timeZone}), searched ${seconds} s, seed ${seed}`,
    ...ways.flatMap((way, i) => {
      const words = wayWords(way, shop.settings);
      return [
        '',
        `${i + 1}  ${words.title}${way.objectiveAdded === least ? '  (costs least)' : ''}`,
        ...[
          words.how,
          `${words.ready}, ${words.timely}.`,
          words.others,
          words.delayed,
          words.changeovers,
          words.cost,
        ]
          .filter(Boolean)
          .map((line) => `   ${line}`),
      ];
    }),
    ...(notPlanned.length === 0
      ? []
      : ['', 'Cannot be planned:', ...notPlanned.map((p) => `  ${p.subject}: ${p.message} ${p.advice}`)]),
    '',
    cautionsFor('shear').governs,
  ].join('\n');
}

/** The same for programs: instants in epoch seconds, durations in seconds. */
export const rushJson = ({ shop, ...report }: RushReport): string =>
  JSON.stringify({ shop: shop.settings.name, timeZone: shop.settings.timeZone, ...report });
