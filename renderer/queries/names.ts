import { useQuery } from '@tanstack/react-query';
import { contract } from '../../core/contract/index.ts';
import { invoke } from './invoke.ts';
import { keys } from './keys.ts';

/** Names are looked for in so many of the newest finished operations. */
const NEWEST = 500;
const NONE: readonly string[] = [];

/** Who ran the newest finished operations, by the alphabet. */
export function useNamesUsed(): readonly string[] {
  const { data } = useQuery({
    queryKey: [...keys.records, 'names'],
    queryFn: async () => {
      const { records } = await invoke(contract.recordsRead, { before: null, limit: NEWEST });
      return [...new Set(records.flatMap(({ who }) => who))].sort((a, b) => a.localeCompare(b));
    },
  });
  return data ?? NONE;
}
