import { useSyncExternalStore } from 'react';
import { kept } from './kept.ts';

/** Figures are read from so far, and stand a two-hundredth of it high: 17 minutes of arc. Common practice, no source. */
const READ_FROM_MM = 3000;
export const FAR_MM = READ_FROM_MM / 200;
/** A figure's height as a share of its type size: of usual screen fonts 0.70 to 0.73. */
export const FIGURE_SHARE = 0.7;
const MM_PER_INCH = 25.4;

/** A screen in CSS pixels, and across the corners in inches. */
export interface ScreenSize {
  readonly width: number;
  readonly height: number;
  readonly inches: number;
}

/** Diagonals that screens at machines usually have. */
export const USUAL_INCHES = [8, 10, 13, 15, 19, 24, 32] as const;

/** Where nobody said how large the screen is: a short one is taken for a tablet of 10 inches, any other for 24. Our own figure. */
export const assumedInches = (width: number, height: number): number =>
  Math.min(width, height) <= 800 ? 10 : 24;

/** Millimetres of glass to a CSS pixel. */
export const mmPerPx = ({ width, height, inches }: ScreenSize): number =>
  (inches * MM_PER_INCH) / Math.hypot(width, height);

/** The type size in CSS pixels whose figures are read from three metres. */
export const farPx = (screen: ScreenSize): number => Math.ceil(FAR_MM / mmPerPx(screen) / FIGURE_SHARE);

/** How large this screen is, as someone said; kept here, since it is this screen's matter. */
const keptInches = kept('foldweek.floor.inches');

const subscribe = (changed: () => void) => {
  window.addEventListener('resize', changed);
  return () => window.removeEventListener('resize', changed);
};
const windowSize = (): string => `${window.innerWidth} ${window.innerHeight}`;

/** This screen, what it is taken for, and how to say otherwise (null: as assumed). */
export function useScreenSize(): ScreenSize & {
  readonly said: number | null;
  readonly say: (inches: number | null) => void;
} {
  const [width = 1, height = 1] = useSyncExternalStore(subscribe, windowSize).split(' ').map(Number);
  const kept = Number(keptInches.use());
  const said = (USUAL_INCHES as readonly number[]).includes(kept) ? kept : null;
  return {
    width,
    height,
    inches: said ?? assumedInches(width, height),
    said,
    say: (inches) => keptInches.write(inches === null ? null : String(inches)),
  };
}
