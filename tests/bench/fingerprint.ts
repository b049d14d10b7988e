import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { readCutProblem } from '../../core/cutting/cut-problem.ts';
import { solveOneDimension } from '../../core/cutting/one-dimension.ts';
import { shearRuns } from '../../core/planning/runs.ts';
import { planQuickly, runInput } from '../../core/planning/cut-run.ts';
import { freeStock } from '../../core/planning/run-stock.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import { sentence, type Result } from '../../core/result.ts';
import { buildProblem } from '../../core/schedule/build.ts';
import { improve } from '../../core/schedule/improve.ts';
import type { Problem, Queues } from '../../core/schedule/problem.ts';
import { readShopProblem } from '../../core/schedule/shop-problem.ts';
import { instant } from '../../core/units/brand.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { anyShop } from '../core/schedule/any-shop.ts';

/**
 * Does a change of the code change a plan? Prints a line for each problem and seed: name, seed, objective, evaluations,
 * and a SHA-256 of the plan. Run it before and after; `diff` must show nothing. Work is counted, never timed, so a line
 * is the same on every machine. Names of fields do not count, so that a renamed one is no difference.
 * `node tests/bench/fingerprint.ts [FILE…] [--seeds 1,2] [--steps 120] [--each 4]`: shop-problem/1 or cut-problem/1,
 * of each file as many problems as `--each` says, evenly spread; without files the demo shop, its week and its runs, and random shops
 * with everything in them (pins, people, transfer lots, crossing routings).
 */
const MONDAY = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);

const RANDOM_SHOPS = 320;
/** Random shops are small: so few steps try each of their moves often. */
const RANDOM_STEPS = 8;

interface Options {
  readonly seeds: readonly number[];
  readonly steps: number;
  readonly each: number;
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
}

/** The values in it, in the order they are kept; fields lose their names. */
function withoutNames(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutNames);
  return typeof value === 'object' && value !== null ? Object.values(value).map(withoutNames) : value;
}

function print(name: string, seed: number | '-', objective: unknown, work: number, plan: unknown): void {
  const hash = createHash('sha256')
    .update(JSON.stringify(withoutNames(plan)))
    .digest('hex');
  console.log([name, seed, objective, work, hash].join('\t'));
}

function printSearch(
  name: string,
  problem: Problem,
  { seeds, steps }: Pick<Options, 'seeds' | 'steps'>,
  start?: Queues,
): void {
  for (const seed of seeds) {
    let last;
    for (const found of improve(problem, start ? { seed, start } : { seed })) {
      last = found;
      if (found.step >= steps) break;
    }
    if (last === undefined) throw new Error(`No plan for ${name} was found.`);
    print(name, seed, last.objective, last.evaluations, [last.queues, last.schedule]);
  }
}

/** Draws no random numbers, so the seed does not count. */
function printCut(raw: unknown, { steps }: Options): void {
  const given = must(readCutProblem(raw));
  const solving = solveOneDimension(given, {});
  let step = solving.next();
  while (!step.done && step.value.steps < steps) step = solving.next();
  const { result, lowerBound } = step.value;
  print(given.name, '-', result?.objective ?? null, step.value.steps, [result, lowerBound]);
}

function printDemo(options: Options): void {
  const shop = loadDemo(join(import.meta.dirname, '../../demo-data/shop'), MONDAY);
  const { problem, queues } = must(toSearchProblem(shop, MONDAY));
  printSearch('demo shop', problem, options, queues);
  for (const run of shearRuns(shop, must(viewPlan(shop, MONDAY)))) {
    const cut = planQuickly(runInput(shop, run, freeStock(shop), true));
    if (!cut.ok) throw new Error(sentence(cut.issues));
    print(`demo shop, run ${run.id}`, '-', cut.value.costCents, cut.value.steps.length, cut.value);
  }
}

/** Those that can be planned at all. */
function printRandom({ seeds }: Options): void {
  for (let k = 1; k <= RANDOM_SHOPS; k++) {
    const built = buildProblem(anyShop(k));
    if (built.ok && !improve(built.value, { seed: 1 }).next().done)
      printSearch(`random shop ${k}`, built.value, { seeds: seeds.slice(0, 1), steps: RANDOM_STEPS });
  }
}

/** At most so many, evenly spread. */
const spread = <T>(items: readonly T[], most: number): T[] =>
  items.filter(
    (_, k) => Math.floor((k * most) / items.length) !== Math.floor(((k - 1) * most) / items.length),
  );

function printFile(file: string, options: Options): void {
  const parsed: unknown = JSON.parse(readFileSync(file, 'utf8'));
  for (const raw of spread<unknown>(Array.isArray(parsed) ? parsed : [parsed], options.each)) {
    if ((raw as { format?: unknown }).format === 'cut-problem/1') printCut(raw, options);
    else {
      const { input } = must(readShopProblem(raw));
      printSearch(input.name, must(buildProblem(input)), options);
    }
  }
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seeds: { type: 'string', default: '1,2' },
    steps: { type: 'string', default: '120' },
    each: { type: 'string', default: '4' },
  },
});
const options = {
  seeds: values.seeds.split(',').map(Number),
  steps: Number(values.steps),
  each: Number(values.each),
};
if (positionals.length === 0) {
  printDemo(options);
  printRandom(options);
}
for (const file of positionals) printFile(file, options);
