import type { CutStep, ShearCounts } from './step.ts';

/**
 * Counts what a step list asks of the shear: the estimate prices these.
 * A stack fed twice in a row at the same setting is fed once: the piece is still in hand.
 */
export function countSteps(steps: readonly CutStep[]): ShearCounts {
  const sum = (pick: (step: CutStep, at: number) => number): number =>
    steps.reduce((total, step, at) => total + pick(step, at), 0);
  const firstOf = (step: CutStep, at: number, key: 'stack' | 'group'): boolean =>
    steps.findIndex((one) => one[key] === step[key]) === at;
  const inHand = (step: CutStep, at: number): boolean =>
    steps[at - 1]?.stack === step.stack &&
    steps[at - 1]?.sizeMm === step.sizeMm &&
    steps[at - 1]?.axis === step.axis;
  const strokes = (mode: CutStep['stroke']): number =>
    sum((step) => (step.stroke === mode ? step.fed * step.cutsEach : 0));
  const ends = (kind: string): number =>
    sum(
      (step) =>
        (step.to.kind === kind ? step.fed * step.cutsEach : 0) + (step.rest?.kind === kind ? step.fed : 0),
    );
  return {
    sheets: sum((step, at) => (firstOf(step, at, 'group') ? step.fed : 0)),
    feedsAgain: sum((step, at) => (firstOf(step, at, 'group') || inHand(step, at) ? 0 : step.fed)),
    backGaugeMoves: gaugeMoves(steps),
    turns: sum((step, at) => (isTurned(steps, at) ? step.fed : 0)),
    singleStrokes: strokes('single'),
    continuousStrokes: strokes('continuous'),
    trimCuts: sum((step) => (step.backGaugeMm === null ? step.fed * step.cutsEach : 0)),
    blanksStacked: ends('blank'),
    remnantsKept: ends('remnant'),
  };
}

/** Whether a step lies the other way than its pieces lay before: panels and strips do, and a sheet that was ripped first. */
function isTurned(steps: readonly CutStep[], at: number): boolean {
  const { stack, group, axis } = steps[at] as CutStep;
  const before = steps.findLast((one, n) => n < at && one.stack === stack);
  return before ? before.axis !== axis : stack !== group;
}

function gaugeMoves(steps: readonly CutStep[]): number {
  const settings = steps.flatMap((step) => (step.backGaugeMm === null ? [] : [step.backGaugeMm]));
  return settings.filter((setting, at) => setting !== settings[at - 1]).length;
}
