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
/** Beyond this a lane only grows while there are so few that they would leave the window empty. */
const MOST = 184;
const FEW = 4;
const BRACKET = 24;
const RAIL = 28;
/** What a strip under the bars takes, with its gap. */
const UNDER = { gap: 3, height: 13 };

/** @param under whether a strip with another plan stands under the bars */
export function geometryOf(height: number, lanes: number, under = false): Geometry {
  const most = lanes <= FEW ? Infinity : MOST;
  const laneHeight = Math.round(Math.min(most, Math.max(LEAST, height / Math.max(1, lanes))));
  return {
    laneHeight,
    bracketY: BRACKET - 6,
    barY: BRACKET,
    barHeight: laneHeight - BRACKET - RAIL - (under ? UNDER.gap + UNDER.height : 0),
    railY: laneHeight - RAIL,
  };
}

/** The strip under the bars, as a lane of its own height. */
export const underOf = (geometry: Geometry): Geometry => ({
  ...geometry,
  barY: geometry.railY - UNDER.height,
  barHeight: UNDER.height,
});
