import { Tag } from './tag.tsx';

/** From here on a promise is safe, and from there on doubtful (our own limits). */
const SAFE = 0.8;
const DOUBTFUL = 0.5;

/** Whole percent, but certain only where every run agreed. */
export function chanceWords(share: number): string {
  if (share > 0 && share < 0.01) return '< 1 %';
  if (share < 1 && share > 0.99) return '> 99 %';
  return `${Math.round(share * 100)} %`;
}

/** How likely a line is to be on time, from how finished work spread about its estimates; `short` under such a heading. */
export const ChanceTag = ({ share, short = false }: { share: number; short?: boolean }) => (
  <Tag look={share >= SAFE ? 'fine' : share >= DOUBTFUL ? 'warn' : 'late'}>
    {short ? chanceWords(share) : `on time ${chanceWords(share)}`}
  </Tag>
);
