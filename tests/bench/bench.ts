import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import type { LaunchSolver } from '../../electron/solver/launch.ts';
import type { Benched, BenchLine, BenchOptions } from './line.ts';
import { benchShop } from './shop.ts';
import { warmSolvers } from './warm-solvers.ts';

const USAGE = `npm run --silent bench -- FILE… [--seconds N] [--seed S] [--out DIR]
Searches each problem of the files (shop-problem/1 or cut-problem/1, one or an array of them) for N seconds
(default 5) and prints a JSON line each; with --out, full results go to DIR/NAME.json. Without files: this machine's
figures on the demo shop.
npm run --silent bench -- kill [--times N]
Kills the app N times (default 300) in the middle of its work and prints what was lost, as one JSON line.
npm run --silent bench -- history [--lines N]
Builds N finished lines (default 10000) behind the demo's open work and prints what they cost, as one JSON line.
npm run --silent bench -- board
Drags a run of 30 on a board of 2,000 bars in a browser and prints what a frame and a drop take, as one JSON line.
npm run --silent bench -- doors [--files N] [--requests N] [--seed S]
Tries broken files (default 10000) and malformed requests (default 20000) and prints what they broke, as one JSON line.
npm run --silent bench -- misreads [--files N] [--seed S]
Reads N order files (default 10000) in the ways of many countries and prints what was taken, asked, refused and misread,
as one JSON line.`;

/** One problem of either format. @throws Error with a sentence */
async function bench(problem: unknown, options: BenchOptions, launch: LaunchSolver): Promise<Benched> {
  const format =
    typeof problem === 'object' && problem !== null && 'format' in problem ? problem.format : undefined;
  if (format === 'shop-problem/1') return benchShop(problem, options, launch);
  if (format === 'cut-problem/1') return (await import('./cut.ts')).benchCut(problem, options);
  throw new Error(
    `Its format is ${JSON.stringify(format) ?? 'not given'}; shop-problem/1 and cut-problem/1 are known.`,
  );
}

function readProblems(file: string): unknown[] {
  const parsed: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return Array.isArray(parsed) ? parsed : [parsed];
}

function readOptions() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      seconds: { type: 'string', default: '5' },
      seed: { type: 'string', default: '1' },
      out: { type: 'string' },
      lines: { type: 'string', default: '10000' },
      times: { type: 'string', default: '300' },
      files: { type: 'string', default: '10000' },
      requests: { type: 'string', default: '20000' },
    },
  });
  const options = { seconds: Number(values.seconds), seed: Number(values.seed) };
  if (!(options.seconds > 0) || !Number.isInteger(options.seed))
    throw new Error(`--seconds takes a number above 0, --seed a whole number.\n${USAGE}`);
  const counts = {
    times: Number(values.times),
    lines: Number(values.lines),
    fileCount: Number(values.files),
    requestCount: Number(values.requests),
  };
  return { files: positionals, options, out: values.out, ...counts };
}

/** Mean and largest gap a file, for people; the lines on stdout are for programs. */
function summary(file: string, lines: readonly BenchLine[]): string {
  const gaps = lines.flatMap((line) => line.gap ?? []);
  const percent = (share: number) => `${(100 * share).toFixed(2)} %`;
  const mean = gaps.reduce((a, b) => a + b, 0) / Math.max(1, gaps.length);
  const missed = lines.filter((line) => line.bestKnown === 0 && line.objective !== 0).length;
  const invalid = lines.filter((line) => !line.valid).length;
  return `${basename(file).padEnd(32)} ${lines.length} instances  mean gap ${percent(mean)}  worst ${percent(Math.max(0, ...gaps))}  at or below best ${gaps.filter((gap) => gap <= 0).length}  zero missed ${missed}  invalid ${invalid}`;
}

async function main(): Promise<void> {
  const { files, options, out, times, lines, fileCount, requestCount } = readOptions();
  if (files[0] === 'kill') return (await import('./kill.ts')).benchKill(times);
  if (files[0] === 'history') return (await import('./history.ts')).benchHistory(lines);
  if (files[0] === 'board') return (await import('./board.ts')).benchBoard();
  if (files[0] === 'misreads') return (await import('./misreads.ts')).benchMisreads(fileCount, options.seed);
  if (files[0] === 'doors')
    return (await import('./doors.ts')).benchDoors(fileCount, requestCount, options.seed);
  if (files.length === 0) return (await import('./app.ts')).benchApp(options.seconds, options.seed);
  if (out !== undefined) mkdirSync(out, { recursive: true });
  const solvers = await warmSolvers();
  try {
    for (const file of files) await benchFile(file, options, out, solvers.launch);
  } finally {
    solvers.close();
  }
}

async function benchFile(
  file: string,
  options: BenchOptions,
  out: string | undefined,
  launch: LaunchSolver,
): Promise<void> {
  const lines: BenchLine[] = [];
  try {
    for (const problem of readProblems(file)) {
      const { line, result } = await bench(problem, options, launch);
      process.stdout.write(`${JSON.stringify(line)}\n`);
      if (out !== undefined)
        writeFileSync(join(out, `${line.name.replaceAll(/[^\w.-]/g, '_')}.json`), JSON.stringify(result));
      lines.push(line);
    }
  } catch (error) {
    throw new Error(`${file} could not be used: ${error instanceof Error ? error.message : String(error)}`);
  }
  process.stderr.write(`${summary(file, lines)}\n`);
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
