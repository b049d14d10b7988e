/** Heights inside the board, in pixels: all lanes are equally high and fill the window between a least and a most. */
export interface Geometry {
  readonly laneHeight: number;
  /** Inside a lane: the run's bracket above, the bar, the rail of due and late marks below. */
  readonly bracketY: number;
  readonly barY: number;
  readonly barHeight: number;
  readonly railY: number;
}

/** Top and height of a bar in its lane: all of the bar's room, or the share of its level. */
export const barBox = (
  { barY, barHeight }: Pick<Geometry, 'barY' | 'barHeight'>,
  { level, levels }: { readonly level: number; readonly levels: number },
): { readonly y: number; readonly height: number } => ({
  y: barY + (barHeight * level) / levels,
  height: barHeight / levels,
});

const LEAST = 96;
const MOST = 184;
const BRACKET = 24;
const RAIL = 28;

export function geometryOf(height: number, lanes: number): Geometry {
  const laneHeight = Math.round(Math.min(MOST, Math.max(LEAST, height / Math.max(1, lanes))));
  return {
    laneHeight,
    bracketY: BRACKET - 6,
    barY: BRACKET,
    barHeight: laneHeight - BRACKET - RAIL,
    railY: laneHeight - RAIL,
  };
}
