import { parseArgs } from 'node:util';
import { buildProblem } from '../../core/schedule/build.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { improve } from '../../core/schedule/improve.ts';
import type { Problem, ProblemInput, Schedule } from '../../core/schedule/problem.ts';
import { randomQueues, randomShop } from '../core/schedule/random-shop.ts';

/**
 * Random small shops by the thousand, each decoded from random queues and searched for a moment; every schedule must pass
 * the independent checker. `node tests/bench/fuzz.ts [--count 100000] [--seed 1]`; the first fault ends it with exit 1.
 */

function built(input: ProblemInput): Problem {
  const result = buildProblem(input);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.value;
}

function mustPass(problem: Problem, schedule: Schedule): void {
  const [first] = check(problem, schedule);
  if (first !== undefined) throw new Error(`${first.rule}: ${first.message}`);
}

function tryShop(seed: number): void {
  const input = randomShop(seed);
  const loose = built({ ...input, frozen: {}, pins: [] });
  const decoded = decode(loose, randomQueues(seed, input));
  if (!decoded.ok) throw new Error(decoded.problems[0]!.message);
  mustPass(loose, decoded.value);
  const problem = built(input);
  let objective = Infinity;
  for (const found of improve(problem, { seed })) {
    mustPass(problem, found.schedule);
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
for (let seed = from; seed < from + count; seed++) {
  try {
    tryShop(seed);
  } catch (error) {
    process.stderr.write(`Shop ${seed}: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  }
  if ((seed - from + 1) % 10_000 === 0) process.stderr.write(`${seed - from + 1} shops, no fault\n`);
}
process.stdout.write(`${count} shops from seed ${from}, no fault\n`);
