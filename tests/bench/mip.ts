import highsLoader from 'highs';
import { parseArgs } from 'node:util';
import { built, same, searched } from '../core/schedule/exact.ts';
import { solveShop } from '../core/schedule/mip.ts';
import { TEN_JOBS, tenJobs } from '../core/schedule/ten-jobs.ts';

/**
 * The search against a MIP solver on shops of ten lines: `node tests/bench/mip.ts [--count 100] [--seconds 40]`. A JSON
 * line each and a summary; a plan dearer than the solver's ends it with exit 1.
 */
const REPORTS = 240;

const { values } = parseArgs({
  options: { count: { type: 'string', default: '100' }, seconds: { type: 'string', default: '40' } },
});
const kinds = Object.keys(TEN_JOBS);
const highs = await highsLoader();
const summary = { shops: 0, provenEqual: 0, solverOutOfTime: 0, missed: 0 };

function tryShop(kind: string, seed: number): void {
  const input = tenJobs(kind, seed);
  const startedAt = performance.now();
  const found = searched(built(input), 0, REPORTS);
  const searchSeconds = (performance.now() - startedAt) / 1000;
  const mip = solveShop(highs, input, found, Number(values.seconds));
  // With dearer plans cut off the solver's plan is at most as dear; none at all would mean that ours is none either.
  const missed = mip.status === 'none' || (mip.objective < found && !same(mip.objective, found));
  summary.shops += 1;
  if (missed) summary.missed += 1;
  else if (mip.status === 'optimal') summary.provenEqual += 1;
  else summary.solverOutOfTime += 1;
  const mipSeconds = (performance.now() - startedAt) / 1000 - searchSeconds;
  const line = {
    name: input.name,
    search: found,
    solver: Number.isFinite(mip.objective) ? Math.round(mip.objective) : null,
    status: mip.status,
    searchSeconds: Math.round(searchSeconds * 10) / 10,
    solverSeconds: Math.round(mipSeconds * 10) / 10,
  };
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

for (let k = 0; k < Number(values.count); k++)
  tryShop(kinds[k % kinds.length]!, 1 + Math.floor(k / kinds.length));
process.stdout.write(`${JSON.stringify(summary)}\n`);
process.exitCode = summary.missed > 0 ? 1 : 0;
