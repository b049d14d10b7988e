import { parseArgs } from 'node:util';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { improve } from '../../core/schedule/improve.ts';
import type { Problem, ProblemInput, Schedule } from '../../core/schedule/problem.ts';
import { anyShop, FEATURES } from '../core/schedule/any-shop.ts';
import { built } from '../core/schedule/exact.ts';
import { randomQueues } from '../core/schedule/random-shop.ts';

/**
 * Random shops by the thousand, each decoded from random queues and searched for a moment; every schedule must pass the
 * independent checker. `node tests/bench/fuzz.ts [--count 100000] [--seed 1]`; the first fault ends it with exit 1. At the
 * end it prints in how many shops each part of the model stood.
 */

function mustPass(problem: Problem, schedule: Schedule): void {
  const [first] = check(problem, schedule);
  if (first !== undefined) throw new Error(`${first.rule}: ${first.message}`);
  const figures = schedule.operations.flatMap((o) => [
    o.changeoverStart,
    o.changeoverSeconds,
    o.start,
    o.end,
  ]);
  if (!figures.every(Number.isFinite)) throw new Error('a time is no number');
}

function tryQueues(input: ProblemInput, seed: number): void {
  const loose = built({ ...input, frozen: {}, pins: [] });
  const decoded = decode(loose, randomQueues(seed, input));
  if (!decoded.ok) throw new Error(decoded.issues[0]!.message);
  mustPass(loose, decoded.value);
}

function trySearch(problem: Problem, seed: number): void {
  let objective = Infinity;
  let passed: Schedule | null = null;
  for (const found of improve(problem, { seed })) {
    if (found.schedule !== passed) mustPass(problem, found.schedule);
    passed = found.schedule;
    if (!Number.isFinite(found.objective)) throw new Error(`the objective is ${found.objective}`);
    if (found.objective > objective) throw new Error('a later plan of the search is worse');
    if (found.bound !== null && found.objective < found.bound - 1e-6)
      throw new Error('a plan beats the bound');
    objective = found.objective;
    if (found.step >= 1) break;
  }
  if (objective === Infinity) throw new Error('the search found no plan');
}

const { values } = parseArgs({
  options: { count: { type: 'string', default: '100000' }, seed: { type: 'string', default: '1' } },
});
const count = Number(values.count);
const from = Number(values.seed);
const shops = new Map(Object.keys(FEATURES).map((name) => [name, 0]));
for (let seed = from; seed < from + count; seed++) {
  const input = anyShop(seed);
  for (const [name, has] of Object.entries(FEATURES)) if (has(input)) shops.set(name, shops.get(name)! + 1);
  try {
    if (!input.sameOrder) tryQueues(input, seed);
    trySearch(built(input), seed);
  } catch (error) {
    process.stderr.write(
      `Shop ${seed}, ${input.name}: ${error instanceof Error ? error.stack : String(error)}\n`,
    );
    process.exit(1);
  }
  if ((seed - from + 1) % 10_000 === 0) process.stderr.write(`${seed - from + 1} shops, no fault\n`);
}
process.stdout.write(
  `${count} shops from seed ${from}, no fault\n${JSON.stringify(Object.fromEntries(shops))}\n`,
);
