import type { Backup } from './backup.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;

/** One of each stretch is kept, for so many stretches back: of the last day each hour's, of the last year each month's. */
const kept = [
  { bucketOf: (at: number) => Math.floor(at / HOUR), reach: 24 * HOUR },
  { bucketOf: (at: number) => Math.floor(at / DAY), reach: 14 * DAY },
  { bucketOf: (at: number) => Math.floor(at / (7 * DAY)), reach: 56 * DAY },
  { bucketOf: (at: number) => monthOf(at), reach: 366 * DAY },
] as const;
/** What somebody asked for, and what was here before something took its place, is not thinned out for so long. */
const SPARED = 90 * DAY;
const spared: readonly Backup['reason'][] = ['asked', 'before-restore', 'before-update'];

/**
 * The backups that are old enough to go. The newest one always stays, and the newest of each hour, day, week and month of
 * its reach; besides, for three months, each that was asked for or made because another file took this one's place.
 * @param backups any order @param now epoch seconds
 */
export function tooOld(backups: readonly Backup[], now: number): Backup[] {
  const newestFirst = backups.toSorted((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
  const stays = new Set<Backup>(newestFirst.slice(0, 1));
  for (const { bucketOf, reach } of kept) {
    const seen = new Set<number>();
    for (const backup of newestFirst) {
      const bucket = bucketOf(backup.at);
      if (now - backup.at > reach || seen.has(bucket)) continue;
      seen.add(bucket);
      stays.add(backup);
    }
  }
  const isSpared = ({ reason, at }: Backup) => spared.includes(reason) && now - at <= SPARED;
  return newestFirst.filter((backup) => !stays.has(backup) && !isSpared(backup));
}

function monthOf(at: number): number {
  const date = new Date(at * 1000);
  return date.getUTCFullYear() * 12 + date.getUTCMonth();
}
