import { formatClock, formatWallDate, wallParts } from '../../../../core/time/wall.ts';
import { instant } from '../../../../core/units/brand.ts';

/** "Mon 23 Nov 2026 06:09": years lie in the archive, so a day has its year. */
export function archiveDay(at: number, timeZone: string): string {
  const [year] = wallParts(instant(at), timeZone).date.split('-');
  return `${formatWallDate(instant(at), timeZone)} ${year} ${formatClock(instant(at), timeZone)}`;
}
