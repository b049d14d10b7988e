import { parseArgs } from 'node:util';
import { buildProblem } from '../../core/schedule/build.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { improve } from '../../core/schedule/improve.ts';
import { inventedWeek } from './week.ts';

/**
 * The search on invented weeks with calendars and crews: how good after 0.2, 1, 5 and 20 seconds, how fast once the
 * dispatch rules are through, how large, and the longest time between two yields. Seconds of processor time, so that other work on the machine does not count.
 * `node tests/bench/weeks.ts [--lines 60,200,600,2000] [--seconds 20] [--seed 1]`; a JSON line each.
 */
const MARKS = [0.2, 1, 5, 20, 60];

function benchWeek(lines: number, crew: boolean, seconds: number, seed: number) {
  const built = buildProblem(inventedWeek(lines, seed, crew));
  if (!built.ok) throw new Error(built.issues[0]!.message);
  const problem = built.value;
  const startedAt = process.cpuUsage();
  const elapsed = () => {
    const { user, system } = process.cpuUsage(startedAt);
    return (user + system) / 1e6;
  };
  const at: Record<string, number> = {};
  let first: number | null = null;
  let improved: number | null = null;
  let searching = 0;
  let last;
  let yieldedAt = 0;
  let longestBetween = 0;
  for (const found of improve(problem, { seed })) {
    first ??= elapsed();
    if (last !== undefined && found.objective < last.objective) improved ??= elapsed();
    for (const mark of MARKS)
      if (mark <= seconds && (elapsed() < mark || !(mark in at))) at[mark] = Math.round(found.objective);
    last = found;
    const now = elapsed();
    if (found.step === 0) searching = now;
    if (yieldedAt > 0) longestBetween = Math.max(longestBetween, now - yieldedAt);
    yieldedAt = now;
    if (now >= seconds) break;
  }
  const decodedAt = elapsed();
  decode(problem, last!.queues);
  return {
    name: problem.input.name,
    objectiveAt: at,
    bound: Math.round(last!.bound ?? 0),
    firstPlanSeconds: round(first!),
    firstImprovedSeconds: improved === null ? null : round(improved),
    evaluationsPerSecond: Math.round(last!.evaluations / (yieldedAt - searching)),
    decodeMilliseconds: round(1000 * (elapsed() - decodedAt)),
    longestBetweenYieldsMilliseconds: Math.round(1000 * longestBetween),
    megabytes: Math.round(process.memoryUsage().rss / 1e6),
    valid: check(problem, last!.schedule).length === 0,
  };
}

const round = (value: number) => Math.round(value * 100) / 100;

const { values } = parseArgs({
  options: {
    lines: { type: 'string', default: '60,200,600,2000' },
    seconds: { type: 'string', default: '20' },
    seed: { type: 'string', default: '1' },
  },
});
for (const lines of values.lines.split(',').map(Number))
  for (const crew of [false, true])
    process.stdout.write(
      `${JSON.stringify(benchWeek(lines, crew, Number(values.seconds), Number(values.seed)))}\n`,
    );
