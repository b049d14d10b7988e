import { existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { viewDueDateOrder, viewQueues } from '../../core/planning/plan-view.ts';
import { whyOf } from '../../core/report/why.ts';
import { check } from '../../core/schedule/check.ts';
import type { Queues } from '../../core/schedule/problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem, type ShopProblem } from '../../core/planning/to-problem.ts';
import type { Instant } from '../../core/units/brand.ts';
import { readNumber } from '../../core/units/number.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { openStore } from '../db/open.ts';
import { terminalLog } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import { fileStamp, makeClock } from '../service/clock.ts';
import { searchJob } from '../service/search-job.ts';
import { readShop } from '../service/shop.ts';
import { nodeSolver } from '../solver/launch.ts';
import { addOrdersOf } from './order-file.ts';
import { rushJson, rushText, weighRush } from './plan-rush.ts';
import { planJson, planText, type PlanReport } from './plan-text.ts';

/** `npm run plan`: plan the demo shop, a data file's shop, or a file of orders, and print it. Nothing is stored. */

const appFolder = resolve(import.meta.dirname, '..', '..');

const USAGE = `Usage: npm run plan -- --demo | --data FILE | --orders FILE.csv [--data FILE]
  --demo          the demo shop with its three weeks of orders
  --data FILE     the shop of a data file
  --orders FILE   only the orders of a CSV file, made in the demo shop or in --data's
  --seconds N     how long to search (default 5)
  --seed N        where the search begins (default 1)
  --explain LINE  also why a line (1042/2) ends when it does in that plan, and what would help
  --rush FILE     instead of planning: three ways to fit a CSV file's lines into the plan as it is
  --json          for programs, instead of text
  --help          this list`;

interface Asked {
  readonly data?: string;
  readonly orders?: string;
  readonly seconds: number;
  readonly seed: number;
  readonly json: boolean;
  readonly explain?: string;
  readonly rush?: string;
}

/** @throws Refused with the usage */
function readAsked(values: ReturnType<typeof parsed>['values']): Asked {
  const { data, orders, explain, rush, demo = false, json = false } = values;
  if (!demo && data === undefined && orders === undefined)
    throw new Refused('bad-input', `Say what to plan.\n${USAGE}`);
  if (demo && data !== undefined)
    throw new Refused('bad-input', `Choose one of --demo and --data.\n${USAGE}`);
  if (rush !== undefined && explain !== undefined)
    throw new Refused('bad-input', `Choose one of --explain and --rush.\n${USAGE}`);
  const seconds = figure(values.seconds);
  if (!(seconds >= 0.1 && seconds <= 3600))
    throw new Refused('bad-input', `--seconds is “${values.seconds}”; write a number from 0.1 to 3600.`);
  const seed = figure(values.seed);
  if (!Number.isInteger(seed) || seed < 0 || seed > 2_147_483_647)
    throw new Refused('bad-input', `--seed is “${values.seed}”; write a whole number from 0.`);
  return { data, orders, seconds, seed, json, explain, rush };
}

/** NaN: no number, or one that can be two. */
function figure(text: string): number {
  const read = readNumber(text, { decimals: 'point' });
  return read.ok ? read.value : NaN;
}

function parsed(args: readonly string[]) {
  const text = { type: 'string' } as const;
  const flag = { type: 'boolean' } as const;
  try {
    return parseArgs({
      args: [...args],
      options: {
        demo: flag,
        data: text,
        orders: text,
        seconds: { ...text, default: '5' },
        seed: { ...text, default: '1' },
        json: flag,
        explain: text,
        rush: text,
        help: flag,
      },
    });
  } catch (error) {
    throw new Refused('bad-input', `${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
  }
}

function shopOf(data: string | undefined, now: Instant): Shop {
  if (data === undefined) return loadDemo(join(appFolder, 'demo-data', 'shop'), now);
  if (!existsSync(data)) throw new Refused('bad-input', `There is no data file ${data}.`);
  if (statSync(data).size === 0)
    throw new Refused(
      'bad-input',
      `The data file ${data} is empty. Start a shop in it with npm start first.`,
    );
  const migrations = join(appFolder, 'migrations');
  const store = openStore(data, { migrations, stamp: fileStamp(now), log: terminalLog });
  try {
    return store.run('read the shop', (work) => readShop(work, now));
  } finally {
    store.close();
  }
}

/** The shop with the orders of a file and no others. @throws Refused naming every wrong cell */
const withOrdersOf = async (file: string, shop: Shop, now: Instant): Promise<Shop> =>
  (await addOrdersOf(file, { ...shop, order: [], line: [], queue: [], pin: [], record: [] }, now)).shop;

/** The shop that is asked about, with its plan as it is. */
async function askedShop({ data, orders }: Asked, now: Instant): Promise<Shop> {
  const base = shopOf(data, now);
  return orders === undefined ? base : withOrdersOf(orders, base, now);
}

const launch = nodeSolver(join(appFolder, 'electron', 'solver', 'solver.ts'));

async function rush(asked: Asked, file: string): Promise<string> {
  const now = makeClock(process.env.FOLDWEEK_NOW).now();
  const { seconds, seed } = asked;
  const report = await weighRush(await addOrdersOf(file, await askedShop(asked, now), now), {
    now,
    seconds,
    seed,
    launch,
  });
  return asked.json ? rushJson(report) : rushText(report);
}

/** The planned line that people mean by "1042/2", or by "1042" when that has only one. @throws Refused saying which there are */
function lineNamed({ problem, unplannable }: ShopProblem, asked: string): string {
  const named = asked.trim();
  if (problem.jobAt.has(named)) return named;
  const own = unplannable.find(({ subject }) => subject === `line ${named}`);
  if (own) throw new Refused('bad-input', `--explain: ${own.message} ${own.advice}`);
  const lines = problem.input.jobs.map(({ id }) => id).filter((id) => id.startsWith(`${named}/`));
  if (lines.length === 1) return lines[0]!;
  if (lines.length > 1)
    throw new Refused(
      'bad-input',
      `--explain: ${named} has the lines ${lines.join(', ')}; name one of them.`,
    );
  throw new Refused(
    'bad-input',
    `--explain: there is no line ${named} among the lines to be planned. Name an open one, like 1042/2; a held, finished or cancelled one has no place in a plan.`,
  );
}

async function plan(asked: Asked): Promise<PlanReport> {
  const now = makeClock(process.env.FOLDWEEK_NOW).now();
  const shop = await askedShop(asked, now);
  const shopProblem = valueOf(toSearchProblem(shop, now));
  const { problem, queues } = shopProblem;
  const lineId = asked.explain === undefined ? null : lineNamed(shopProblem, asked.explain);
  const { seconds, seed } = asked;
  const search = { problem: problem.input, queues, seconds, seed, launch, log: terminalLog };
  const { best, failure } = await searchJob(search).end;
  if (!best) throw new Refused('internal', `The search stopped working (${failure}). Try again.`);
  const found = valueOf(viewQueues(shop, shopProblem, best.queues));
  const [violation] = check(problem, found.schedule);
  if (violation) throw new Error(`the search broke a rule: ${violation.message}`);
  const why = lineId === null ? null : valueOf(whyOf(withQueues(shop, best.queues), lineId, now));
  return { ...asked, shop, now, found, dueDateOrder: valueOf(viewDueDateOrder(shop, shopProblem)), why };
}

/** The shop as if this plan had been stored. */
const withQueues = (shop: Shop, queues: Queues): Shop => ({
  ...shop,
  queue: Object.entries(queues).map(([id, operations]) => ({ id, operations, revision: 0 })),
});

try {
  const { values } = parsed(process.argv.slice(2));
  if (values.help) console.log(USAGE);
  else {
    const asked = readAsked(values);
    if (asked.rush !== undefined) console.log(await rush(asked, asked.rush));
    else {
      const report = await plan(asked);
      console.log(asked.json ? planJson(report) : planText(report));
    }
  }
} catch (error) {
  console.error(error instanceof Refused ? error.message : error);
  process.exitCode = 1;
}
