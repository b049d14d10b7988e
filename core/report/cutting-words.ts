import type { CutPlan, SheetGroup } from '../cutting/plan.ts';
import { replaySteps, type ShearAtWork } from '../cutting/replay.ts';
import type { CutStep, Destination } from '../cutting/step.ts';
import type { Shop } from '../shop/state.ts';
import { metalCents, totalCents } from '../cutting/compare.ts';
import { lineCuts, settingsOf } from '../cutting/work.ts';
import { toCsv } from '../csv.ts';
import { formatMoney, type MoneyStyle } from '../units/money.ts';
import { wallParts } from '../time/wall.ts';
import { formatCutLength, formatCutSize, mmToInches, type Units } from '../units/length.ts';
import type { RunCut } from '../planning/cut-run.ts';
import { cautionsFor, CONTINUOUS_ONLY } from './cautions.ts';
import { metalName } from '../shop/metal-name.ts';
import { lineLotWords } from '../planning/line-lot.ts';
import type { ShearRun } from '../planning/runs.ts';
import type { Purchase } from '../planning/stock-use.ts';
import { counted } from '../units/count.ts';

/** The metal of a run and, where the shop tells lots apart, the lot that its sheets are of. */
export const runMetal = (shop: Shop, run: ShearRun): string =>
  [metalName(shop, run), lineLotWords(run.lot)].filter(Boolean).join(', ');

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
  /** What falls behind the blade, loose: "blank 9 1/2 in × 120 in". */
  readonly drop: string;
  /** What the hold-downs grip in front of it, and where that goes: "28 1/2 in, back on its stack". */
  readonly held: string;
  /** "1042/1: 8, 1043/2: 2" */
  readonly lines: string;
  readonly blanks: number;
  readonly blanksSoFar: number;
  /** The heading that it stands under; null: none. */
  readonly heading: string | null;
}

/** A step list row by row. */
export function stepRows({ steps, groups }: Pick<CutPlan, 'steps' | 'groups'>, at: ShearAtWork): StepRow[] {
  const { units } = at;
  const { heldMm } = replaySteps(steps, groups, at);
  return steps.map((step, n) => {
    const size = formatCutLength(step.sizeMm, units);
    const held = heldMm[n] ?? null;
    const goes = step.rest ? goesTo(step.rest, units) : 'back on its stack';
    return {
      number: step.number,
      feed: `${step.stack}, ${counted(step.fed, 'piece')}`,
      setting: step.cutsEach === 0 ? 'no cut' : step.backGaugeMm === null ? `to a line at ${size}` : size,
      cut: step.axis === 'length' ? 'crosscut' : 'rip',
      cutsEach: step.cutsEach,
      stroke: step.stroke === 'single' ? 'single' : `continuous, ${CONTINUOUS_ONLY}`,
      drop: step.cutsEach === 0 ? '' : goesTo(step.to, units),
      held: held === null ? goes : `${formatCutLength(held, units)}, ${goes}`,
      lines: step.lines.map(({ line, pieces }) => `${line}: ${pieces}`).join(', '),
      blanks: step.blanks,
      blanksSoFar: step.blanksSoFar,
      heading: step.heading ?? null,
    };
  });
}

/** What the shear grips and what it lets fall: two figures of the machine. */
export function shearWords({ shear: { minStripMm, backGaugeMm }, units }: ShearAtWork): string {
  const size = (mm: number): string => formatCutLength(mm, units);
  return `the hold-downs grip ${size(minStripMm)} and more in front of the blade; what falls behind it, ${size(backGaugeMm.min)} to ${size(backGaugeMm.max)} by the gauge, lies loose`;
}

function goesTo(to: Destination, units: Units): string {
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
  /** Scrap, trim, and remnants beyond those worth keeping. */
  readonly scrap: number;
  /** What a changed list leaves on a stack, neither cut up nor kept. */
  readonly left: number;
  /** Remnants kept, pieces. */
  readonly kept: number;
}

export function figuresOfCut({
  groups,
  areas,
  remnants,
}: Pick<CutPlan, 'groups' | 'areas' | 'remnants'>): CutFigures {
  const all = sumOf(groups, ({ widthMm, lengthMm }) => widthMm * lengthMm);
  const share = (mm2: number): number => (all === 0 ? 0 : mm2 / all);
  const left = sumOf(groups, ({ offcuts }) => areaOf(offcuts.filter(({ kind }) => kind === 'left')));
  return {
    sheets: sumOf(groups, () => 1),
    used: share(areas.blanks),
    remnants: share(areas.remnants),
    scrap: share(areas.scrap + areas.trim - left),
    left: share(left),
    kept: remnants.reduce((sum, { kept }) => sum + kept, 0),
  };
}

/** "Keep 10 of 6 in × 120 in; 160 more of that size are scrap." null: no remnant, or all of them are kept. */
export function remnantWords(remnants: CutPlan['remnants'], units: Units): string | null {
  const over = remnants.filter(({ pieces, kept }) => pieces > kept);
  if (over.length === 0) return null;
  const said = over.map(({ widthMm, lengthMm, pieces, kept }) => {
    const size = formatCutSize(widthMm, lengthMm, units);
    return kept === 0 ? `none of the ${pieces} of ${size}` : `${kept} of the ${pieces} of ${size}`;
  });
  return `Of the remnants keep ${said.join(', ')}; the others are scrap, for the shop keeps no more of a size.`;
}

/**
 * What another list would save in metal, and what it asks for that: "Another list saves 1 sheet, 88.00 USD of stock, and
 * costs 9 settings and 89 cuts to a line more: 31.50 USD dearer in all." null: this list takes the least metal found.
 */
export function leastMetalWords(plan: CutPlan, style: MoneyStyle): string | null {
  const { least } = plan;
  if (!least) return null;
  const sheets = figuresOfCut(plan).sheets - least.sheets.reduce((sum, { count }) => sum + count, 0);
  const costCents = metalCents(least);
  const money = (cents: number): string => formatMoney(Math.round(cents), style);
  const settings = least.settings - settingsOf(plan.steps);
  const lines = least.lineCuts - lineCuts(plan.steps).pieces;
  const more = [
    ...(settings > 0 ? [counted(settings, 'setting')] : []),
    ...(lines > 0 ? [counted(lines, 'cut to a line', 'cuts to a line')] : []),
  ];
  const saved = `${sheets > 0 ? `${counted(sheets, 'sheet')}, ` : ''}${money(plan.costCents - costCents)} of stock`;
  const asks = more.length > 0 ? `costs ${more.join(' and ')} more` : 'costs more handling or keeps less';
  const dearer = money(totalCents({ ...least, costCents }) - totalCents(plan));
  return `Another list saves ${saved}, and ${asks}: ${dearer} dearer in all by this shop’s times and weights.`;
}

/** Over all sheets of all groups. */
const sumOf = (groups: readonly SheetGroup[], each: (group: SheetGroup) => number): number =>
  groups.reduce((sum, group) => sum + group.count * each(group), 0);
const areaOf = (rects: readonly { w: number; h: number }[]): number =>
  rects.reduce((sum, { w, h }) => sum + w * h, 0);

/** What a search has found since it was asked for: "Found: 1 sheet fewer, 2 settings fewer, 71.20 USD cheaper in all." */
export function foundWords(before: CutPlan, now: CutPlan, style: MoneyStyle, running: boolean): string {
  const cheaper = totalCents(before) - totalCents(now);
  if (cheaper < 0.5 && before.lowerBoundCents === now.lowerBoundCents)
    return running ? 'Nothing better yet.' : 'Nothing better was found.';
  const sheets = figuresOfCut(before).sheets - figuresOfCut(now).sheets;
  const settings = settingsOf(before.steps) - settingsOf(now.steps);
  const fewer = (count: number, one: string): string[] =>
    count === 0 ? [] : [`${counted(Math.abs(count), one)} ${count > 0 ? 'fewer' : 'more'}`];
  const found = [
    ...fewer(sheets, 'sheet'),
    ...fewer(settings, 'setting'),
    cheaper < 0.5
      ? 'a better proof of how near it is to the least'
      : `${formatMoney(Math.round(cheaper), style)} cheaper in all`,
  ];
  return `Found: ${found.join(', ')}.`;
}

/** Files write points in every shop: what reads them is told nothing of its mark. */
const ofFiles = ({ settings }: Shop): Units => ({ units: settings.units, decimals: 'point' });

/** The file's columns; lengths are decimals, their unit is said in the heading. */
const stepHeads = ({ units }: Units): string[] => [
  ...[
    'run',
    'metal',
    'sheet',
    'step',
    'stack',
    'pieces fed',
    `cut off ${units}`,
    'set by',
    'cut',
    'cuts each',
  ],
  ...['stroke', 'drop', 'held', 'lines', 'blanks', 'blanks so far', 'heading'],
];

/** A length as a decimal of the shop's unit: of an inch to the thousandth, of a millimetre to the tenth. */
const decimal = (mm: number, { units }: Units): number =>
  units === 'in' ? Math.round(mmToInches(mm) * 1000) / 1000 : Math.round(mm * 10) / 10;

const setBy = ({ cutsEach, backGaugeMm }: CutStep): string =>
  cutsEach === 0 ? 'no cut' : backGaugeMm === null ? 'scribed line' : 'back gauge';

/**
 * A run's step list as CSV, with the shear's cautions and, where the list does not give what the run asks, what is wrong.
 * These stand above the steps, as on paper, in the column of the cut; a reader knows them by their first cell.
 */
export function stepsCsv(cut: RunCut, shop: Shop): string {
  const units = ofFiles(shop);
  const steps = cut.plan.ok ? cut.plan.value.steps : [];
  const rows = cut.plan.ok ? stepRows(cut.plan.value, { ...cut.input, units }) : [];
  const head = stepHeads(units);
  const { governs, points } = cautionsFor('shear');
  const over = cut.plan.ok ? remnantWords(cut.plan.value.remnants, units) : null;
  const said: [string, string][] = [
    ...cut.faults.map(({ message }): [string, string] => ['warning', message]),
    ...(cut.faults.length > 0 ? [['warning', NOT_AS_ASKED] satisfies [string, string]] : []),
    ...[governs, ...points].map((text): [string, string] => ['caution', text]),
    ['note', `${cut.run.machine.name}: ${shearWords(cut.input)}.`],
    ...(over === null ? [] : [['note', over] satisfies [string, string]]),
  ];
  return toCsv([
    head,
    ...said.map(([kind, text]) => [kind, text, ...head.slice(2).map(() => '')]),
    ...rows.map((row, at) => {
      const step = steps[at] as CutStep;
      return [
        ...[cut.run.id, runMetal(shop, cut.run), step.group, row.number, step.stack, step.fed],
        ...[decimal(step.sizeMm, units), setBy(step), row.cut, row.cutsEach, row.stroke],
        ...[row.drop, row.held, row.lines, row.blanks, row.blanksSoFar, row.heading ?? ''],
      ];
    }),
  ]);
}

/** Above a list that does not fit its run, in every place. */
export const NOT_AS_ASKED = 'Cut as it is, this list does not give what the run asks.';

/** What to buy as CSV. */
export function purchasesCsv(shop: Shop, purchases: readonly Purchase[]): string {
  const units = ofFiles(shop);
  const { timeZone, currency } = shop.settings;
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
