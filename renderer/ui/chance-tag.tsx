import { chanceWords } from '../../core/report/chance-words.ts';
import { Tag } from './tag.tsx';

/** From here on a promise is safe, and from there on doubtful (our own limits). */
const SAFE = 0.8;
const DOUBTFUL = 0.5;

/** How likely a line is to be on time, from how finished work spread about its estimates; `short` under such a heading. */
export const ChanceTag = ({ share, short = false }: { share: number; short?: boolean }) => (
  <Tag look={share >= SAFE ? 'fine' : share >= DOUBTFUL ? 'warn' : 'late'}>
    {short ? chanceWords(share) : `Chance on time ${chanceWords(share)}`}
  </Tag>
);
