import { countSteps } from './counts.ts';
import type { CutStep } from './step.ts';

/** What the shear's work costs beside the metal, in cents each, by the shop's times and its price of an hour. */
export interface WorkPrices {
  /** A sheet loaded and squared. */
  readonly sheet: number;
  /** A panel or strip fed again. */
  readonly feedAgain: number;
  /** A setting of the list: the gauge moved or a line measured, the first piece measured. */
  readonly setting: number;
  /** A piece turned a quarter. */
  readonly turn: number;
  readonly singleStroke: number;
  readonly continuousStroke: number;
  /** A piece marked and laid to its line, beside the stroke. */
  readonly line: number;
}

/** Where only the metal counts. */
export const NO_WORK: WorkPrices = {
  sheet: 0,
  feedAgain: 0,
  setting: 0,
  turn: 0,
  singleStroke: 0,
  continuousStroke: 0,
  line: 0,
};

/** Cuts to a scribed line: on so many pieces, at so many settings. */
export const lineCuts = (steps: readonly CutStep[]): { pieces: number; settings: number } => {
  const toLine = steps.filter(({ backGaugeMm, cutsEach }) => backGaugeMm === null && cutsEach > 0);
  return {
    pieces: toLine.reduce((sum, { fed, cutsEach }) => sum + fed * cutsEach, 0),
    settings: new Set(toLine.map(({ group, axis, sizeMm }) => `${group} ${axis} ${sizeMm}`)).size,
  };
};

/** Settings of a list: moves of the back gauge and, on each kind of sheet, each width that is cut to a line. */
export const settingsOf = (steps: readonly CutStep[]): number =>
  countSteps(steps).backGaugeMoves + lineCuts(steps).settings;

/** What a list's work costs; stacking blanks is left out, for every list stacks as many. */
export function workCents(steps: readonly CutStep[], prices: WorkPrices): number {
  const counts = countSteps(steps);
  return (
    counts.sheets * prices.sheet +
    counts.feedsAgain * prices.feedAgain +
    settingsOf(steps) * prices.setting +
    counts.turns * prices.turn +
    counts.singleStrokes * prices.singleStroke +
    counts.continuousStrokes * prices.continuousStroke +
    counts.trimCuts * prices.line
  );
}
