/** Where a piece goes after a cut. */
export type Destination =
  | { readonly kind: 'blank'; readonly girthMm: number; readonly lengthMm: number }
  /** Set aside for a later step. */
  | { readonly kind: 'stack'; readonly stack: string }
  | { readonly kind: 'remnant' | 'scrap' };

/** One line of the shear's list: one setting, made on every piece of one stack. */
export interface CutStep {
  /** From 1. */
  readonly number: number;
  /** Sheet group ("A"). */
  readonly group: string;
  /** The stack the pieces are fed from: the group's sheets ("A"), panels ("A1") or strips ("A1b"). */
  readonly stack: string;
  /** Pieces in that stack; each is fed once. */
  readonly fed: number;
  /** What the setting measures: `length` is a crosscut, `width` a rip. */
  readonly axis: 'length' | 'width';
  /** Taken off by each cut. */
  readonly sizeMm: number;
  /** The back gauge's setting; null: cut to a scribed line `sizeMm` from the edge (trim and slivers). */
  readonly backGaugeMm: number | null;
  /** Cuts on each piece fed. */
  readonly cutsEach: number;
  readonly stroke: 'single' | 'continuous';
  readonly to: Destination;
  /** Where what remains goes after the last cut on it; null: back on its stack for the next setting. */
  readonly rest: Destination | null;
  /** Blanks that this step finishes, and for whom. */
  readonly lines: readonly { readonly line: string; readonly pieces: number }[];
  readonly blanks: number;
  /** The heading that a person put the step under; absent: none. Steps under one that follow one another are a group. */
  readonly heading?: string | undefined;
  /** Blanks finished up to and with this step. */
  readonly blanksSoFar: number;
}

/** Cuts that a step asks of the shear, over all pieces fed. */
export const cutsOf = ({ fed, cutsEach }: Pick<CutStep, 'fed' | 'cutsEach'>): number => fed * cutsEach;

/** What the shear is asked to do, counted from the step list, for the estimate to price. */
export interface ShearCounts {
  /** Sheets lifted onto the bed, and lengths cut off a coil. */
  readonly sheets: number;
  /** Panels, strips and rests fed again for a later setting. */
  readonly feedsAgain: number;
  /** Times the back gauge is set to a new size; the first setting counts. */
  readonly backGaugeMoves: number;
  /** Pieces turned a quarter between crosscut and rip. */
  readonly turns: number;
  readonly singleStrokes: number;
  readonly continuousStrokes: number;
  /** Of all strokes, those to a line. */
  readonly trimCuts: number;
  readonly blanksStacked: number;
  readonly remnantsKept: number;
}
