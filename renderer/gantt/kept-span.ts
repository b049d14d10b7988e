import { HOUR } from '../../core/units/duration.ts';
import { FARTHEST_S, NEAREST_S } from './scale.ts';

/** How near one looks, kept in this browser or window: seconds across the board. */
const KEPT_AS = 'foldweek.board.span';
/** A shift. */
const USUAL_S = 12 * HOUR;

export const rememberSpan = (seconds: number): void =>
  localStorage.setItem(KEPT_AS, String(Math.round(seconds)));

export function usualSpan(): number {
  const kept = Number.parseInt(localStorage.getItem(KEPT_AS) ?? '', 10);
  return kept >= NEAREST_S && kept <= FARTHEST_S ? kept : USUAL_S;
}
