/** Which rows of a long list are drawn. */
export interface Window {
  readonly first: number;
  /** One past the last. */
  readonly end: number;
}

const BEYOND = 8;

/** The rows in sight and a few beyond either edge, so that scrolling shows no gap. Heights in pixels. */
export function windowOf(scrollTop: number, viewHeight: number, rowHeight: number, rows: number): Window {
  const first = Math.max(0, Math.floor(scrollTop / rowHeight) - BEYOND);
  const end = Math.min(rows, Math.ceil((scrollTop + viewHeight) / rowHeight) + BEYOND);
  return { first: Math.min(first, end), end };
}
