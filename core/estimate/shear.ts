import type { Blank } from '../part/blank.ts';
import type { Machine } from '../shop/machine.ts';
import { asStocked, usableSize, type SheetEdges } from '../material/usable-sheet.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { formatLength, type Units } from '../units/length.ts';
import { estimateOf, peopleFor, reason, type Estimate, type Lift } from './estimate.ts';
import { standard, type Timed } from './standards.ts';

interface ShearWork {
  /** One blank; girths lie across the sheet's width, lengths along its length. */
  readonly blank: Blank;
  readonly quantity: number;
  readonly sheet: SheetEdges;
  readonly machine: Timed & Pick<Machine, 'crew'>;
  /** What sentences about it are written in. */
  readonly units: Units;
}

interface ShearCount {
  readonly perSheet: number;
  readonly sheets: number;
  /** All strokes, trim cuts included. */
  readonly cuts: number;
  readonly backGaugeMoves: number;
}

/** A drop narrower than this is none: the last piece is what remains of the sheet. */
const NO_DROP_MM = 1;

/** A micron of grace: lengths turned from inches must not lose a piece to rounding. */
const GRACE_MM = 0.001;

const piecesIn = (stretch: number, each: number): number => Math.floor((stretch + GRACE_MM) / each);

/** Cuts that part `pieces` from a stretch: one each, one less when nothing remains behind the last. */
const cutsFor = (pieces: number, each: number, stretch: number): number =>
  stretch - pieces * each > NO_DROP_MM ? pieces : pieces - 1;

/** A cut of the trim off one side, another off one end. */
const TRIM_CUTS = 2;

/** The blank as it is cut from this sheet: one that is the sheet's usable size within a back gauge's tolerance is that size. */
const cutSize = ({ girthMm, lengthMm }: Blank, usable: ReturnType<typeof usableSize>) => ({
  girthMm: asStocked(girthMm, [usable.widthMm]),
  lengthMm: asStocked(lengthMm, [usable.lengthMm]),
});

function misfits({ blank, sheet, units }: Omit<ShearWork, 'machine'>): Issue[] {
  const usable = usableSize(sheet);
  const { girthMm, lengthMm } = cutSize(blank, usable);
  const length = (mm: number): string => formatLength(mm, units);
  const size = `girth ${length(blank.girthMm)}, length ${length(blank.lengthMm)}`;
  const lessTrim = (mm: number): string => (sheet.trimMm > 0 ? `, ${length(mm)} less trim` : '');
  const issues: Issue[] = [];
  if (piecesIn(usable.widthMm, girthMm) < 1) {
    const limit = `a sheet ${length(usable.widthMm)} wide${lessTrim(sheet.widthMm)}`;
    const message = `A blank of ${size}, does not fit across ${limit}.`;
    issues.push(issue('blank', 'girth', message, 'Choose a wider sheet, or make the part in two pieces.'));
  }
  if (piecesIn(usable.lengthMm, lengthMm) < 1) {
    const limit = `a sheet ${length(usable.lengthMm)} long${lessTrim(sheet.lengthMm)}`;
    const message = `A blank of ${size}, does not fit along ${limit}.`;
    issues.push(issue('blank', 'length', message, 'Choose a longer sheet, or shorter pieces.'));
  }
  return issues;
}

/**
 * How many sheets and cuts a line takes when it is cut alone: trim first, then crosscuts to panels of the blank's
 * length, then strips of its girth. The cut plan of a whole run does better; this is the estimate before there is one.
 * The back gauge moves once for each kind of cut (common practice, no source).
 * @returns counts; or a problem when the blank does not fit the sheet
 */
export function countCuts(work: Omit<ShearWork, 'machine'>): Result<ShearCount> {
  const { blank, quantity, sheet } = work;
  const usable = usableSize(sheet);
  const issues = misfits(work);
  if (issues.length > 0) return err(...issues);

  const { girthMm, lengthMm } = cutSize(blank, usable);
  const strips = piecesIn(usable.widthMm, girthMm);
  const panels = piecesIn(usable.lengthMm, lengthMm);
  const crosscuts = cutsFor(panels, lengthMm, usable.lengthMm);

  const fullPanels = Math.floor(quantity / strips);
  const tail = quantity - fullPanels * strips;
  const panelsUsed = fullPanels + (tail > 0 ? 1 : 0);
  const sheets = Math.ceil(panelsUsed / panels);
  const panelsOnLast = panelsUsed - (sheets - 1) * panels;
  const stripCuts = fullPanels * cutsFor(strips, girthMm, usable.widthMm) + tail;
  const trims = sheet.trimMm > 0 ? TRIM_CUTS : 0;
  return ok({
    perSheet: strips * panels,
    sheets,
    cuts: sheets * trims + (sheets - 1) * crosscuts + Math.min(crosscuts, panelsOnLast) + stripCuts,
    backGaugeMoves: 1 + (trims > 0 ? 1 : 0) + (crosscuts > 0 ? 1 : 0),
  });
}

/** A sheet as it is lifted, of the metal of a blank that is cut from it. */
export function sheetLift(
  { widthMm, lengthMm }: Pick<SheetEdges, 'widthMm' | 'lengthMm'>,
  { weightKg, areaM2: ofBlank, thicknessMm }: Pick<Blank, 'weightKg' | 'areaM2' | 'thicknessMm'>,
): Lift {
  const areaM2 = (widthMm * lengthMm) / 1e6;
  return { lengthMm, areaM2, weightKg: (weightKg / ofBlank) * areaM2, thicknessMm };
}

/**
 * Machine time to cut a line's blanks, changeover left out.
 * @returns whole seconds with their reasons; or the problem of `countCuts`
 */
export function estimateShear(work: ShearWork): Result<Estimate> {
  const counted = countCuts(work);
  if (!counted.ok) return counted;
  const { sheets, cuts, backGaugeMoves } = counted.value;
  const { blank, machine, quantity, sheet } = work;
  const each = (key: string): number => standard(machine, key);
  return ok(
    estimateOf(machine, peopleFor(machine, [sheetLift(sheet, blank)]), [
      reason('load and square a sheet', sheets, each('sheetLoad')),
      reason('move the back gauge', backGaugeMoves, each('backGaugeMove')),
      reason('feed and cut', cuts, each('cut')),
      reason('stack a blank', quantity, each('stack')),
      reason('bundle and label', each('bundleOnClock'), each('bundle')),
    ]),
  );
}
