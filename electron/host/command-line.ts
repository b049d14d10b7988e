import { existsSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { understoodRows } from '../../core/import/understood.ts';
import { viewDueDateOrder, viewQueues } from '../../core/planning/plan-view.ts';
import { whyOf } from '../../core/report/why.ts';
import { check } from '../../core/schedule/check.ts';
import type { Queues } from '../../core/schedule/problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem, type ShopProblem } from '../../core/planning/to-problem.ts';
import type { Instant } from '../../core/units/brand.ts';
import { counted } from '../../core/units/count.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { openStore } from '../db/open.ts';
import { terminalLog } from '../log.ts';
import { Refused, valueOf } from '../refused.ts';
import { fileStamp, makeClock } from '../service/clock.ts';
import { searchJob } from '../service/search-job.ts';
import { readShop } from '../service/shop.ts';
import { nodeSolver } from '../solver/launch.ts';
import { addOrdersOf, readOrders } from './order-file.ts';
import { readAsked, USAGE, type Asked } from './plan-options.ts';
import { rushJson, rushText, weighRush } from './plan-rush.ts';
import { planJson, planText, type PlanReport } from './plan-text.ts';
import { rowsText, wrongText } from './reading-text.ts';

/** `npm run plan`: plan the demo shop, a data file's shop, or a file of orders, and print it. Nothing is stored. */

const appFolder = resolve(import.meta.dirname, '..', '..');

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

/** A shop's orders, plan and records left out. */
const withoutOrders = (shop: Shop): Shop => ({
  ...shop,
  order: [],
  line: [],
  queue: [],
  pin: [],
  record: [],
});

interface AskedShop {
  readonly shop: Shop;
  /** How its file of orders was read. */
  readonly words: readonly string[];
}

/** The shop that is asked about, with its plan as it is, or with the orders of a file and no others. */
async function askedShop(asked: Asked, now: Instant): Promise<AskedShop> {
  const base = shopOf(asked.data, now);
  if (asked.orders === undefined) return { shop: base, words: [] };
  return addOrdersOf({ ...asked, file: asked.orders }, withoutOrders(base), now);
}

/** What was read stands above what is planned by it; where programs read the answer, beside it. */
function tell(words: readonly string[], { json }: Asked): void {
  if (words.length === 0) return;
  const text = `${words.join('\n')}\n`;
  if (json) console.error(text);
  else console.log(text);
}

/** How the rows of a file are understood. A due date that is past is understood all the same, and said. */
async function readOnly(asked: Asked, file: string): Promise<void> {
  const now = makeClock(process.env.FOLDWEEK_NOW).now();
  const shop = withoutOrders(shopOf(asked.data, now));
  const read = await readOrders({ ...asked, file, acceptPast: true }, shop, now);
  tell(read.words, asked);
  console.log(asked.json ? JSON.stringify(understoodRows(shop, read)) : rowsText(read.reading).join('\n'));
  const { wrong } = read.reading.counts;
  if (wrong === 0) return;
  console.error([`${counted(wrong, 'wrong row')}, left out:`, ...wrongText(read.reading)].join('\n'));
  process.exitCode = 1;
}

const launch = nodeSolver(join(appFolder, 'electron', 'solver', 'solver.ts'));

async function rush(asked: Asked, file: string): Promise<string> {
  const now = makeClock(process.env.FOLDWEEK_NOW).now();
  const { seconds, seed } = asked;
  const base = await askedShop(asked, now);
  const added = await addOrdersOf({ ...asked, file }, base.shop, now);
  tell([...base.words, ...added.words], asked);
  const report = await weighRush(added, { now, seconds, seed, launch });
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
  const { shop, words } = await askedShop(asked, now);
  tell(words, asked);
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

async function answer(asked: Asked): Promise<void> {
  if (asked.readOnly && asked.orders !== undefined) return readOnly(asked, asked.orders);
  if (asked.rush !== undefined) return console.log(await rush(asked, asked.rush));
  const report = await plan(asked);
  console.log(asked.json ? planJson(report) : planText(report));
}

try {
  const asked = readAsked(process.argv.slice(2));
  if (asked) await answer(asked);
  else console.log(USAGE);
} catch (error) {
  console.error(error instanceof Refused ? error.message : error);
  process.exitCode = 1;
}
