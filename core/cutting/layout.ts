/**
 * How one sheet is cut, guillotine cuts only: crosscut to panels, each panel ripped to strips by girth, each strip
 * crosscut to lengths. A panel as long as the sheet is the way round where the strips come first.
 */
export interface SheetLayout {
  readonly panels: readonly Panel[];
}

export interface Panel {
  readonly lengthMm: number;
  readonly strips: readonly Strip[];
}

export interface Strip {
  readonly girthMm: number;
  /** Indices of blank sizes, along the strip. */
  readonly blanks: readonly number[];
}

/** Pieces of a layout as [item, count], items ascending. */
export function piecesOf(layout: SheetLayout): [number, number][] {
  const counts = new Map<number, number>();
  for (const panel of layout.panels) {
    for (const strip of panel.strips)
      for (const item of strip.blanks) counts.set(item, (counts.get(item) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => a[0] - b[0]);
}
