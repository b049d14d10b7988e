/** A cell of the grid. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/**
 * Where a key moves to in a grid, as the ARIA authoring practices describe for grids; null for a key that does not move.
 * @param page rows in sight
 */
export function moveCell(
  { row, column }: Cell,
  key: string,
  ctrl: boolean,
  size: { readonly rows: number; readonly columns: number; readonly page: number },
): Cell | null {
  const clamp = (at: number, end: number) => Math.min(Math.max(0, at), Math.max(0, end - 1));
  const to = (nextRow: number, nextColumn = column): Cell => ({
    row: clamp(nextRow, size.rows),
    column: clamp(nextColumn, size.columns),
  });
  switch (key) {
    case 'ArrowDown':
      return to(row + 1);
    case 'ArrowUp':
      return to(row - 1);
    case 'ArrowRight':
      return to(row, column + 1);
    case 'ArrowLeft':
      return to(row, column - 1);
    case 'PageDown':
      return to(row + size.page);
    case 'PageUp':
      return to(row - size.page);
    case 'Home':
      return ctrl ? to(0, 0) : to(row, 0);
    case 'End':
      return ctrl ? to(size.rows - 1, size.columns - 1) : to(row, size.columns - 1);
    default:
      return null;
  }
}
