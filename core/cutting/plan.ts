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

export interface CutPlan {
  readonly groups: readonly SheetGroup[];
  readonly steps: readonly CutStep[];
  readonly lines: readonly LineYield[];
  readonly counts: ShearCounts;
  readonly costCents: number;
  /**
   * No plan of this kind costs less: sheets crosscut to panels as long as a blank (or left whole), panels ripped to
   * strips, strips crosscut to blanks.
   */
  readonly lowerBoundCents: number;
  readonly status: 'optimal' | 'feasible';
  /** Areas over all sheets, mm²; the four add up to the sheets used. */
  readonly areas: {
    readonly blanks: number;
    readonly remnants: number;
    readonly scrap: number;
    readonly trim: number;
  };
  /** Sizes within a millimetre of each other, which the plan keeps apart: "1042/1 and 1043/2 differ by 0.4 mm". */
  readonly nearEqual: readonly { readonly lines: readonly [string, string]; readonly differenceMm: number }[];
}
