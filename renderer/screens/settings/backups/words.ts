import { formatClock, formatWallDate, wallParts } from '../../../../core/time/wall.ts';
import { instant } from '../../../../core/units/brand.ts';

/** "Tue 24 Nov 2026 14:30": what is kept for a year needs its year. @param at epoch seconds */
export const formatMoment = (at: number, timeZone: string): string =>
  `${formatWallDate(instant(at), timeZone)} ${wallParts(instant(at), timeZone).year} ${formatClock(instant(at), timeZone)}`;

/** "640 kB", "3.2 MB" */
export const formatBytes = (bytes: number): string =>
  bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
