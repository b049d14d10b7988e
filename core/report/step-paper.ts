import type { CutPlan } from '../cutting/plan.ts';
import { replaySteps, type ShearAtWork } from '../cutting/replay.ts';
import type { CutStep, Destination } from '../cutting/step.ts';
import { formatCutLength, mmToInches, type Units } from '../units/length.ts';
import { writeNumber } from '../units/number.ts';

/** A step as it stands on paper, as short as can be said: lengths without their unit, which the column's heading has. */
export interface PaperStep {
  readonly number: number;
  /** The stack, and how many pieces of it where it is not one: "A1b × 4". */
  readonly feed: string;
  /** "9 1/2", or "line 9 1/2" where it is cut to a scribed line. */
  readonly setting: string;
  /** Cuts on each piece, and that strokes run on. */
  readonly cuts: string;
  /** What falls behind the blade: a blank so long or so wide ("blank × 120"), a stack, a remnant to keep, scrap. */
  readonly drop: string;
  /** "1042/1: 8, 1043/2": a line without a number gets one blank. */
  readonly lines: string;
  /** What the hold-downs grip in front of it at the last cut, rounded down, and what becomes of it unless it goes back. */
  readonly held: string;
  readonly blanksSoFar: number;
}

/** Steps of one kind and under one heading that follow one another. */
export interface PaperStretch {
  readonly axis: CutStep['axis'];
  /** null: none. */
  readonly heading: string | null;
  readonly steps: readonly PaperStep[];
}

/** A step list for paper: crosscuts and rips as they follow one another, row by row. */
export function paperSteps(
  { steps, groups }: Pick<CutPlan, 'steps' | 'groups'>,
  at: ShearAtWork,
): PaperStretch[] {
  const { heldMm } = replaySteps(steps, groups, at);
  const stretches: { axis: CutStep['axis']; heading: string | null; steps: PaperStep[] }[] = [];
  steps.forEach((step, n) => {
    const row = rowOf(step, heldMm[n] ?? null, at.units);
    const last = stretches.at(-1);
    const heading = step.heading ?? null;
    if (last?.axis === step.axis && last.heading === heading) last.steps.push(row);
    else stretches.push({ axis: step.axis, heading, steps: [row] });
  });
  return stretches;
}

const size = (mm: number, units: Units): string => formatCutLength(mm, units).replace(` ${units.units}`, '');

function rowOf(step: CutStep, heldMm: number | null, units: Units): PaperStep {
  const { number, stack, fed, cutsEach, backGaugeMm, sizeMm, stroke, to, lines, blanksSoFar } = step;
  const setting = backGaugeMm === null ? `line ${size(sizeMm, units)}` : size(sizeMm, units);
  return {
    number,
    feed: fed === 1 ? stack : `${stack} × ${fed}`,
    setting: cutsEach === 0 ? 'no cut' : setting,
    cuts: cutsEach === 0 ? '' : `${cutsEach}${stroke === 'continuous' ? ' continuous' : ''}`,
    drop: cutsEach === 0 ? '' : dropOf(to, step.axis, units),
    lines: lines.map(({ line, pieces }) => (pieces === 1 ? line : `${line}: ${pieces}`)).join(', '),
    held: heldOf(step, heldMm, units),
    blanksSoFar,
  };
}

/** Of a blank the side that the setting does not say. */
function dropOf(to: Destination, axis: CutStep['axis'], units: Units): string {
  if (to.kind === 'blank') return `× ${size(axis === 'width' ? to.lengthMm : to.girthMm, units)}`;
  return placeOf(to);
}

const placeOf = (to: Exclude<Destination, { kind: 'blank' }>): string =>
  to.kind === 'stack' ? to.stack : to.kind === 'remnant' ? 'keep' : 'scrap';

/** A blank that remains is measured, so it is told to the full; its other side too, where the drop is no blank to say it. */
function heldOf({ to, rest, axis, cutsEach }: CutStep, heldMm: number | null, units: Units): string {
  if (rest?.kind === 'blank') {
    const { girthMm, lengthMm } = rest;
    const [along, other] = axis === 'width' ? [girthMm, lengthMm] : [lengthMm, girthMm];
    const said = to.kind === 'blank' && cutsEach > 0 ? '' : ` ${size(other, units)}`;
    return `${size(along, units)} ×${said}`;
  }
  const floored = (value: number, parts: number): string =>
    writeNumber(Math.floor(value * parts + 1e-6) / parts, units.decimals, 1);
  const inUnits = (mm: number): string =>
    units.units === 'in' ? floored(mmToInches(mm), 10) : floored(mm, 1);
  const held = heldMm === null ? '' : inUnits(heldMm);
  return [held, rest ? placeOf(rest) : ''].filter((said) => said !== '').join(' ');
}
