import { farChanceWords } from '../../core/report/chance-words.ts';
import { placeOf } from '../router.ts';

interface Props {
  /** Chance on time, 0 to 1. */
  share: number;
  /** Whether the plan shows the line late. */
  late: boolean;
  /** Whose finished work is told of; left out: the first machine's. */
  machineId?: string;
}

/** Why a chance is far from what the plan shows, and the way to what finished work says; nothing where they agree. */
export function FarChance({ share, late, machineId }: Props) {
  const words = farChanceWords(share, late);
  if (words === '') return null;
  return (
    <span>
      {words} <a href={placeOf('learning', ...(machineId ? [machineId] : []))}>Learning shows by how much.</a>
    </span>
  );
}
