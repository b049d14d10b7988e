import type { RemnantSize } from './remnant.ts';
import type { CutStep, ShearCounts } from './step.ts';

/** A rectangle on a sheet: x along its length, y across it, from the squared corner. Millimetres. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface PlacedBlank extends Rect {
  /** The lines that take blanks of this size, most urgent first. */
  readonly lines: readonly string[];
}

export interface Offcut extends Rect {
  /** `left`: still on a stack when a changed list ends. */
  readonly kind: 'remnant' | 'scrap' | 'trim' | 'left';
}

/** Sheets of one stock that are cut alike: a coil's entry is the length cut off it. */
export interface SheetGroup {
  /** "A", "B" … in the order they are cut. */
  readonly id: string;
  readonly stockId: string;
  readonly remnantStock: boolean;
  readonly count: number;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly costCents: number;
  /** On each sheet of the group. */
  readonly blanks: readonly PlacedBlank[];
  readonly offcuts: readonly Offcut[];
}

export interface LineYield {
  readonly line: string;
  readonly asked: number;
  /** Asked plus at most the allowed overrun. */
  readonly cut: number;
  /** Running number of the step after which all that were asked are cut. */
  readonly readyAfterStep: number;
}

/** The list that takes the least metal, where more work makes it the dearer one. */
export interface LeastMetal {
  readonly sheets: readonly Pick<SheetGroup, 'stockId' | 'count' | 'lengthMm' | 'costCents'>[];
  readonly workCents: number;
  readonly remnantCents: number;
  readonly settings: number;
  readonly lineCuts: number;
}

export interface CutPlan {
  readonly groups: readonly SheetGroup[];
  readonly steps: readonly CutStep[];
  readonly lines: readonly LineYield[];
  readonly counts: ShearCounts;
  readonly costCents: number;
  /** What its settings, feeds and strokes cost at the shop's times. */
  readonly workCents: number;
  /** What the remnants worth keeping are worth. */
  readonly remnantCents: number;
  /** Of stock, work and remnants together this list is the cheapest found; another takes less metal. null: none does. */
  readonly least: LeastMetal | null;
  /**
   * No plan of this kind costs less: sheets crosscut to panels as long as a blank (or left whole), panels ripped to
   * strips, strips crosscut to blanks.
   */
  readonly lowerBoundCents: number;
  /** `optimal`: no list takes less metal than this one, or than `least`. */
  readonly status: 'optimal' | 'feasible';
  /** What it leaves that is large enough to keep, by size. */
  readonly remnants: readonly RemnantSize[];
  /** Areas over all sheets, mm²; the four add up to the sheets used. */
  readonly areas: {
    readonly blanks: number;
    /** Worth keeping. */
    readonly remnants: number;
    readonly scrap: number;
    readonly trim: number;
  };
  /** Sizes within a millimetre of each other, which the plan keeps apart: "1042/1 and 1043/2 differ by 0.4 mm". */
  readonly nearEqual: readonly { readonly lines: readonly [string, string]; readonly differenceMm: number }[];
}
