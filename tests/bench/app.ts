import { performance } from 'node:perf_hooks';
import { join } from 'node:path';
import { viewDueDateOrder, viewPlan } from '../../core/planning/plan-view.ts';
import { decode } from '../../core/schedule/decode.ts';
import { improve } from '../../core/schedule/improve.ts';
import type { Queues } from '../../core/schedule/problem.ts';
import { sentence, type Result } from '../../core/result.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import { instant } from '../../core/units/brand.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { benchAsk } from './ask.ts';
import { benchChance } from './chance.ts';
import { benchWindow } from './window.ts';

const MONDAY = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);
const hours = (seconds: number): string => `${(seconds / 3600).toFixed(1)} h`;
const ms = (from: number): string => `${(performance.now() - from).toFixed(1)} ms`;
const print = (what: string, figure: string): void => console.log(`${what.padEnd(58)} ${figure}`);

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
}

/** This machine's figures on the demo shop: what `npm run bench` prints without files. */
export async function benchApp(seconds: number, seed: number): Promise<void> {
  const shop = loadDemo(join(import.meta.dirname, '../../demo-data/shop'), MONDAY);
  const view = must(viewPlan(shop, MONDAY));
  print('demo shop', `${view.operations.size} operations, ${view.figures.lines} lines`);

  const started = performance.now();
  const { problem, queues } = must(toSearchProblem(shop, MONDAY));
  const search = improve(problem, { seed, start: queues });
  const first = search.next().value;
  if (!first) throw new Error('the demo shop gave no plan');
  print('from the shop to a first plan', ms(started));

  const times = Array.from({ length: 50 }, () => {
    const from = performance.now();
    must(decode(problem, first.queues));
    return performance.now() - from;
  }).sort((a, b) => a - b);
  print('decode, median of 50', `${(times[25] ?? 0).toFixed(2)} ms`);

  const until = performance.now() + seconds * 1000;
  let found = first;
  for (const next of search) {
    found = next;
    if (performance.now() > until) break;
  }
  print(`plans priced in ${seconds} s`, found.evaluations.toLocaleString('en'));
  const planned = must(viewPlan({ ...shop, queue: stored(found.queues) }, MONDAY)).figures;
  const yardstick = must(viewDueDateOrder(shop, view)).figures;
  const both = (what: string, a: string, b: string): void => print(what, `${a}   (by due date: ${b})`);
  both('weighted tardiness', hours(planned.weightedTardiness), hours(yardstick.weightedTardiness));
  both('changeover', hours(planned.changeoverSeconds), hours(yardstick.changeoverSeconds));
  both('late lines', String(planned.lateLines), String(yardstick.lateLines));
  benchAsk(print);
  benchChance(shop, MONDAY, print);
  await benchWindow(shop);
}

const stored = (queues: Queues) =>
  Object.entries(queues).map(([id, operations]) => ({ id, operations: [...operations], revision: 0 }));
