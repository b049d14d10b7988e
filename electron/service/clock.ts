import { instant, type Instant } from '../../core/units/brand.ts';
import { Refused } from '../refused.ts';

/** The one clock of the host; everything below is told the time. */
export interface Clock {
  now(): Instant;
  /** It stands still, for tests and pictures. */
  readonly fixed: boolean;
}

/** @param fixedAt an ISO instant such as "2026-11-25T15:00:00Z" to stand still at; missing: the machine's clock */
export function makeClock(fixedAt?: string): Clock {
  if (!fixedAt) return { now: () => instant(Math.floor(Date.now() / 1000)), fixed: false };
  const at = Date.parse(fixedAt);
  if (Number.isNaN(at))
    throw new Refused('bad-input', `FOLDWEEK_NOW is "${fixedAt}"; write it like 2026-11-25T15:00:00Z.`);
  return { now: () => instant(Math.floor(at / 1000)), fixed: true };
}

/** An instant as part of a file name: "2026-11-25T15-00-00". */
export const fileStamp = (at: Instant): string =>
  new Date(at * 1000).toISOString().slice(0, 19).replaceAll(':', '-');
