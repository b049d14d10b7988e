import { metalCents } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { improveRun } from '../../core/cutting/plan-run.ts';
import type { RunInput, SheetStock } from '../../core/cutting/run.ts';
import { lineCuts, settingsOf } from '../../core/cutting/work.ts';
import { Rng } from '../../core/rng.ts';
import { loadHighs, mipWith } from '../../electron/solver/highs.ts';
import { inches } from '../support/writing.ts';

/**
 * Invented runs of 200 blanks in 40 girths and 8 lengths, from one sheet size and from four: when the first answer is
 * there, how near the least metal is to its bound, and how much work the list asks, with what it was before, in seconds of this process's own time, so that a busy machine counts less.
 * `node tests/bench/cut-run.ts [SECONDS [RUNS]]`
 */
const LENGTHS = [610, 914, 1219, 1524, 1829, 2134, 2438, 3048];
const SIZES: readonly (readonly [width: number, length: number])[] = [[1219.2, 3048], [914.4, 2438.4], [1219.2, 2438.4], [1524, 3048]]; // prettier-ignore

/** The usual times at the usual weights, in cents: 3.19 for a second of work with its allowance. */
const WORK = {
  sheet: 144,
  feedAgain: 32,
  setting: 211,
  turn: 38,
  singleStroke: 29,
  continuousStroke: 13,
  line: 96,
};

/** What these runs had in 5 s before answers were filled again in part (`core/cutting/refill.ts`), printed beside. */
const BEFORE: Readonly<Record<string, object>> = {
  '1/1': { gapPercent: 3.45, settings: 61, lineCuts: 15, steps: 219, metalAboveLeastPercent: 3.33 },
  '1/2': { gapPercent: 0, settings: 61, lineCuts: 16, steps: 214, metalAboveLeastPercent: 5.88 },
  '1/3': { gapPercent: 0, settings: 60, lineCuts: 16, steps: 209, metalAboveLeastPercent: 3.33 },
  '4/1': { gapPercent: 2.15, settings: 62, lineCuts: 17, steps: 202, metalAboveLeastPercent: 3.09 },
  '4/2': { gapPercent: 3.44, settings: 61, lineCuts: 17, steps: 213, metalAboveLeastPercent: 2.62 },
  '4/3': { gapPercent: 2.9, settings: 59, lineCuts: 12, steps: 210, metalAboveLeastPercent: 2.68 },
};

function inventedRun(seed: number, sizes: number): RunInput {
  const rng = new Rng(seed);
  const draw = (low: number, high: number): number => low + Math.floor(rng.next() * (high - low + 1));
  const girths = Array.from({ length: 40 }, () => draw(600, 6100) / 10);
  const lines = Array.from({ length: 200 }, (_, k) => ({
    id: `${1000 + k}/1`,
    girthMm: girths[k % 40] as number,
    lengthMm: LENGTHS[draw(0, 7)] as number,
    ...{ quantity: 1, overrun: 0, due: null },
  }));
  const stock = SIZES.slice(0, sizes).map(([widthMm, lengthMm], at): SheetStock => ({
    ...{ kind: 'sheet', id: `S${at}`, widthMm, lengthMm, available: null, remnant: false },
    ...{ costCents: Math.round((widthMm * lengthMm) / 1000), endTrimMm: 0, sideTrimMm: 0 },
  }));
  const shear = { lengthMm: 3100, backGaugeMm: { min: 5, max: 1000 }, minStripMm: 40, scribe: true, continuousFrom: null }; // prettier-ignore
  const keep = { widthMm: 152.4, lengthMm: 609.6, most: 10, worth: 0.25 };
  return { lines, stock, shear, keep, work: WORK, units: inches };
}

/** What the list of least metal and the one chosen ask of the shear: the first for comparison with the second. */
const workOf = ({ steps, least, costCents }: CutPlan) => ({
  settings: settingsOf(steps),
  lineCuts: lineCuts(steps).pieces,
  steps: steps.length,
  metalAboveLeastPercent: Number((100 * (least ? costCents / metalCents(least) - 1 : 0)).toFixed(2)),
  leastMetal: least && { settings: least.settings, lineCuts: least.lineCuts },
});

const seconds = Number(process.argv[2] ?? 5);
const runs = Number(process.argv[3] ?? 3);
const cpu = (): number => process.cpuUsage().user / 1e6 + process.cpuUsage().system / 1e6;
const highs = await loadHighs();

for (const sizes of [1, 4])
  for (let seed = 1; seed <= runs; seed++) {
    const from = cpu();
    const left = (): number => seconds - (cpu() - from);
    const improving = improveRun(inventedRun(seed, sizes), { solveMip: mipWith(highs, left) });
    if (!improving.ok) throw new Error(improving.issues[0]?.message);
    let first = NaN;
    let gap = Infinity;
    let last: CutPlan | null = null;
    for (const { plan, done } of improving.value) {
      if (plan) {
        if (Number.isNaN(first)) first = cpu() - from;
        last = plan;
        const least = plan.least ? metalCents(plan.least) : plan.costCents;
        gap = plan.lowerBoundCents > 0 ? least / plan.lowerBoundCents - 1 : Infinity;
      }
      if (done || left() <= 0) break;
    }
    console.log(
      JSON.stringify({
        ...{ name: `200 blanks, ${sizes} sheet size${sizes > 1 ? 's' : ''}, seed ${seed}` },
        firstAnswerMs: Math.round(1000 * first),
        gapPercent: Number((100 * gap).toFixed(2)),
        ...(last && workOf(last)),
        seconds: Number((cpu() - from).toFixed(2)),
        ...(seconds === 5 && { before: BEFORE[`${sizes}/${seed}`] }),
      }),
    );
  }
