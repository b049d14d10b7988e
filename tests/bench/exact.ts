import { parseArgs } from 'node:util';
import { annealed, built, same, searched } from '../core/schedule/exact.ts';
import { ShopBySecond } from '../core/schedule/by-the-second.ts';
import { leastOf } from '../core/schedule/every-plan.ts';
import { SMALL_SHOPS, smallShop } from '../core/schedule/small-shops.ts';

/**
 * The search against every possible plan, timed by an evaluator of its own: `node tests/bench/exact.ts [--count 500]`.
 * A JSON line for each shape; any miss is named and ends it with exit 1.
 */
const REPORTS = 120;

function tryShape(shape: string, count: number) {
  const line = { shape, shops: count, plans: 0, searchEqual: 0, annealingEqual: 0, cpuSeconds: 0 };
  const missed: string[] = [];
  const cpu = process.cpuUsage();
  for (let seed = 1; seed <= count; seed++) {
    const input = smallShop(shape, seed);
    const { objective, plans } = leastOf(new ShopBySecond(input));
    const problem = built(input);
    const found = searched(problem, objective, REPORTS);
    line.plans += plans;
    if (same(found, objective)) line.searchEqual += 1;
    else missed.push(`${input.name}: the search found ${found}, the best of ${plans} plans is ${objective}`);
    if (!input.sameOrder && same(annealed(problem, objective, REPORTS), objective)) line.annealingEqual += 1;
  }
  const { user, system } = process.cpuUsage(cpu);
  line.cpuSeconds = Math.round((user + system) / 1e5) / 10;
  process.stdout.write(`${JSON.stringify(line)}\n`);
  return missed;
}

const { values } = parseArgs({ options: { count: { type: 'string', default: '500' } } });
const shapes = Object.keys(SMALL_SHOPS);
const missed = shapes.flatMap((shape, k) =>
  tryShape(shape, Math.floor((Number(values.count) + k) / shapes.length)),
);
for (const miss of missed) process.stderr.write(`${miss}\n`);
process.exitCode = missed.length > 0 ? 1 : 0;
