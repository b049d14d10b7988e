import type { CutPlan, SheetGroup } from '../cutting/plan.ts';
import type { CutStep, Destination } from '../cutting/step.ts';
import type { Shop } from '../shop/state.ts';
import { toCsv } from '../csv.ts';
import { wallParts } from '../time/wall.ts';
import { formatCutLength, formatCutSize, type LengthUnits } from '../units/length.ts';
import type { RunCut } from '../planning/cut-run.ts';
import { cautionsFor, CONTINUOUS_ONLY } from './cautions.ts';
import { metalName } from '../shop/metal-name.ts';
import type { Purchase } from '../planning/stock-use.ts';
import { counted } from '../units/count.ts';

/** One setting of the shear in words and figures: the same on screen, on paper and in the CSV file. */
export interface StepRow {
  readonly number: number;
  /** "A1, 4 pieces" */
  readonly feed: string;
  /** "9 1/2 in", or "to a line at 9 1/2 in". */
  readonly setting: string;
  readonly cut: 'crosscut' | 'rip';
  readonly cutsEach: number;
  readonly stroke: string;
  readonly gives: string;
  readonly rest: string;
  /** "1042/1: 8, 1043/2: 2" */
  readonly lines: string;
  readonly blanks: number;
  readonly blanksSoFar: number;
}

/** A step list row by row. */
export const stepRows = (steps: readonly CutStep[], units: LengthUnits): StepRow[] =>
  steps.map((step) => {
    const size = formatCutLength(step.sizeMm, units);
    return {
      number: step.number,
      feed: `${step.stack}, ${counted(step.fed, 'piece')}`,
      setting: step.cutsEach === 0 ? 'no cut' : step.backGaugeMm === null ? `to a line at ${size}` : size,
      cut: step.axis === 'length' ? 'crosscut' : 'rip',
      cutsEach: step.cutsEach,
      stroke: step.stroke === 'single' ? 'single' : `continuous, ${CONTINUOUS_ONLY}`,
      gives: goesTo(step.to, units),
      rest: step.rest ? goesTo(step.rest, units) : 'back on its stack',
      lines: step.lines.map(({ line, pieces }) => `${line}: ${pieces}`).join(', '),
      blanks: step.blanks,
      blanksSoFar: step.blanksSoFar,
    };
  });

function goesTo(to: Destination, units: LengthUnits): string {
  if (to.kind === 'stack') return `stack ${to.stack}`;
  if (to.kind !== 'blank') return to.kind;
  return `blank ${formatCutSize(to.girthMm, to.lengthMm, units)}`;
}

/** A plan's figures; areas in mm². */
interface CutFigures {
  readonly sheets: number;
  /** Share of the sheets' area, 0 to 1. */
  readonly used: number;
  readonly remnants: number;
  /** Scrap and trim. */
  readonly scrap: number;
  /** What a changed list leaves on a stack, neither cut up nor kept. */
  readonly left: number;
  /** Remnants kept, pieces. */
  readonly kept: number;
}

export function figuresOfCut({ groups }: Pick<CutPlan, 'groups'>): CutFigures {
  const all = sumOf(groups, ({ widthMm, lengthMm }) => widthMm * lengthMm);
  const share = (area: (group: SheetGroup) => number): number => (all === 0 ? 0 : sumOf(groups, area) / all);
  const offcuts = (...kinds: string[]) =>
    share((group) => areaOf(group.offcuts.filter(({ kind }) => kinds.includes(kind))));
  return {
    sheets: sumOf(groups, () => 1),
    used: share((group) => areaOf(group.blanks)),
    remnants: offcuts('remnant'),
    scrap: offcuts('scrap', 'trim'),
    left: offcuts('left'),
    kept: sumOf(groups, (group) => group.offcuts.filter(({ kind }) => kind === 'remnant').length),
  };
}

/** Over all sheets of all groups. */
const sumOf = (groups: readonly SheetGroup[], each: (group: SheetGroup) => number): number =>
  groups.reduce((sum, group) => sum + group.count * each(group), 0);
const areaOf = (rects: readonly { w: number; h: number }[]): number =>
  rects.reduce((sum, { w, h }) => sum + w * h, 0);

/** A run's step list as CSV, with the shear's cautions; lengths in the shop's units. */
export function stepsCsv(cut: RunCut, units: LengthUnits): string {
  const head = [
    'step',
    'feed',
    'back gauge',
    'cut',
    'cuts each',
    'stroke',
    'gives',
    'rest',
    'lines',
    'blanks',
    'blanks so far',
  ];
  const rows = stepRows(cut.plan.ok ? cut.plan.value.steps : [], units);
  const { governs, points } = cautionsFor('shear');
  return toCsv([
    head,
    // Above the steps, as on paper; a reader of the rows knows them by their first cell, which is no number.
    ...[governs, ...points].map((text) => ['caution', text, ...head.slice(2).map(() => '')]),
    ...rows.map((r) => [
      r.number,
      r.feed,
      r.setting,
      r.cut,
      r.cutsEach,
      r.stroke,
      r.gives,
      r.rest,
      r.lines,
      r.blanks,
      r.blanksSoFar,
    ]),
  ]);
}

/** What to buy as CSV. */
export function purchasesCsv(shop: Shop, purchases: readonly Purchase[]): string {
  const { units, timeZone, currency } = shop.settings;
  return toCsv([
    [
      'needed by',
      'stock',
      'metal',
      'width',
      'length',
      'pieces',
      currency === null ? 'cost' : `cost ${currency}`,
    ],
    ...purchases.map(({ sheet, pieces, costCents, neededBy }) => [
      wallParts(neededBy, timeZone).date,
      sheet.id,
      metalName(shop, sheet),
      formatCutLength(sheet.widthMm, units),
      formatCutLength(sheet.lengthMm, units),
      pieces,
      costCents / 100,
    ]),
  ]);
}
