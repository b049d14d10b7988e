import type { Geometry } from './geometry.ts';
import { barsIn, type Bar, type Lane } from './lanes.ts';
import { endOf, xOf, type Scale } from './scale.ts';

/** Heights of a lane in a small picture of the plan: words above the bar, no rail. */
export const MINI: Geometry = { laneHeight: 36, bracketY: 0, barY: 14, barHeight: 18, railY: 36 };
/** Room for the machines' codes at the left. */
export const MINI_HEAD = 30;

/** A frame around a bar that matters, in pixels; never so thin that it cannot be seen. */
export interface Frame {
  readonly bar: Bar;
  readonly x: number;
  readonly width: number;
  /** Whether there is room over it for a mark, and for the line's number beside the mark ('' when not). */
  readonly mark: boolean;
  readonly words: string;
}

const LEAST_PX = 4;
const CHARACTER_PX = 7.8;
const MARK_PX = 10;

/** Frames of the bars that `matters` picks, as far as they are in the window; marks and words never overlap. */
export function framesOf(lane: Lane, scale: Scale, matters: (bar: Bar) => boolean): Frame[] {
  const bars = barsIn(lane, scale.from, endOf(scale)).filter(matters);
  const leftOf = (bar: Bar) => Math.max(0, xOf(scale, bar.start));
  let free = -Infinity;
  return bars.map((bar, i) => {
    const width = Math.max(LEAST_PX, Math.min(scale.width, xOf(scale, bar.end)) - leftOf(bar));
    const x = Math.min(leftOf(bar), scale.width - width);
    const next = bars[i + 1] ? leftOf(bars[i + 1]!) : scale.width;
    const mark = x >= free;
    const needs = MARK_PX + bar.lineId.length * CHARACTER_PX;
    const words = mark && x + needs <= next ? bar.lineId : '';
    if (mark) free = x + (words ? needs : MARK_PX);
    return { bar, x, width, mark, words };
  });
}
