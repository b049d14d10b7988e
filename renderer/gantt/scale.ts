import { DAY } from '../../core/units/duration.ts';
/** The board's window on time: which instant stands at its left edge and how many seconds one pixel is. */
export interface Scale {
  readonly from: number;
  readonly perPixel: number;
  /** Pixels of the window. */
  readonly width: number;
}

/** The closest and the farthest look, in seconds across the window. */
export const NEAREST_S = 3600;
export const FARTHEST_S = 28 * DAY;

export const xOf = (scale: Scale, at: number): number => (at - scale.from) / scale.perPixel;
export const instantAt = (scale: Scale, x: number): number => scale.from + x * scale.perPixel;
export const spanOf = (scale: Scale): number => scale.width * scale.perPixel;
export const endOf = (scale: Scale): number => scale.from + spanOf(scale);

const within = (span: number): number => Math.min(FARTHEST_S, Math.max(NEAREST_S, span));

/** A window over [from, to), no nearer and no farther than the board goes; what it is short of is added at the end. */
export function fitted(from: number, to: number, width: number): Scale {
  return { from, perPixel: within(to - from) / Math.max(1, width), width };
}

/** Look `factor` times closer (below 1: farther) while the instant under pixel `x` stays where it is. */
export function zoomed(scale: Scale, factor: number, x: number): Scale {
  const perPixel = within(spanOf(scale) / factor) / Math.max(1, scale.width);
  return { ...scale, from: instantAt(scale, x) - x * perPixel, perPixel };
}

/** Slide the window `dx` pixels later. */
export const panned = (scale: Scale, dx: number): Scale => ({
  ...scale,
  from: scale.from + dx * scale.perPixel,
});

/** The same scale slid just so far that [start, end) comes into sight, with a margin; as it is when most of it is. */
export function revealing(scale: Scale, start: number, end: number): Scale {
  const seen = Math.min(end, endOf(scale)) - Math.max(start, scale.from);
  if (seen > 0 && seen >= 0.6 * Math.min(end - start, spanOf(scale))) return scale;
  const margin = spanOf(scale) * 0.08;
  const fits = end - start <= spanOf(scale) - 2 * margin;
  return { ...scale, from: start < scale.from || !fits ? start - margin : end + margin - spanOf(scale) };
}

/** The same scale with its window inside [start, end); a window longer than that begins where it begins. */
export function kept(scale: Scale, start: number, end: number): Scale {
  const latest = Math.max(start, end - spanOf(scale));
  return { ...scale, from: Math.min(latest, Math.max(start, scale.from)) };
}
